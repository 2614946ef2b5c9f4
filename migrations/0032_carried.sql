-- What someone did for the person: hours, a night, an errand, travel. Who does not sign in has a
-- name only, and a steward enters it.
create table carried (
    id            integer primary key,
    person_id     integer not null references person (id),
    member_id     integer references member (id),
    name          text,
    kind          text not null constraint carried_kind check (kind in ('hours', 'a night', 'an errand', 'travel')),
    day_on        text not null,
    minutes       integer constraint carried_minutes check (minutes between 1 and 1440),
    miles         integer constraint carried_miles check (miles between 1 and 9999),
    words         text,
    entered_by    integer not null references member (id),
    entered_at    text not null,
    struck        integer not null default 0 constraint carried_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1,
    constraint carried_whose check ((member_id is null) <> (name is null)),
    constraint carried_long check ((minutes is not null) = (kind in ('hours', 'travel'))),
    constraint carried_far check ((miles is not null) <= (kind = 'travel'))
) strict;

create index carried_of_person on carried (person_id, day_on);

-- Who wishes what of this to be shown. No member: the person's own wish, for all of it.
create table carried_wish (
    id         integer primary key,
    person_id  integer not null references person (id),
    member_id  integer references member (id),
    hides      integer not null constraint carried_wish_hides check (hides in (0, 1)),
    said_by    text not null,       -- who said so
    said_on    text not null,
    entered_by integer not null references member (id),
    version    integer not null default 1
) strict;

create unique index carried_wish_of on carried_wish (person_id, coalesce(member_id, 0));

-- Two more kinds of contacts. SQLite changes no check of a column, so the table is made anew;
-- what names a contact goes on naming it by its number, and is compared when all is there again.
pragma defer_foreign_keys = on;

create table contact_kept as select * from contact;

drop table contact;

create table contact (
    id              integer primary key,
    person_id       integer not null references person (id),
    name            text not null,
    kind            text not null constraint contact_kind check (kind in ('family', 'friend or neighbor', 'doctor',
        'nurse or therapist', 'aide or home care', 'pharmacy', 'hospital or clinic', 'insurer', 'lawyer or advisor', 'faith',
        'respite care', 'crisis line', 'other service', 'kind not said')),
    who             text,           -- daughter, clinic, neighbour with a key
    organization    text,
    phone           text,
    other_phone     text,
    email           text,
    address         text,           -- where letters go
    zone            text,           -- where its clocks are; empty: where the person's are
    hours           text,           -- when it answers, on its own clocks
    note            text,           -- how to phone
    source          text,           -- read off which paper, or said by whom
    call_order      integer not null,
    struck          integer not null default 0 constraint contact_struck check (struck in (0, 1)),
    struck_reason   text,
    checked_at      text,
    checked_by      integer references member (id),
    checked_against text,
    version         integer not null default 1,
    constraint contact_reachable check (phone is not null or email is not null or address is not null)
) strict;

insert into contact (id, person_id, name, kind, who, organization, phone, other_phone, email, address, zone, hours, note,
    source, call_order, struck, struck_reason, checked_at, checked_by, checked_against, version)
select id, person_id, name, kind, who, organization, phone, other_phone, email, address, zone, hours, note,
    source, call_order, struck, struck_reason, checked_at, checked_by, checked_against, version
from contact_kept;

drop table contact_kept;
create index contact_of_person on contact (person_id, call_order);
