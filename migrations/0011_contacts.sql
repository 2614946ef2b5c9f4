-- What a contact is, where and when it answers, and other ways to reach it than by phone. A number
-- is no longer needed, so the table is made anew: SQLite takes no "not null" off a column.
create table contact_anew (
    id              integer primary key,
    person_id       integer not null references person (id),
    name            text not null,
    kind            text not null constraint contact_kind check (kind in ('family', 'friend or neighbor', 'doctor',
        'nurse or therapist', 'aide or home care', 'pharmacy', 'hospital or clinic', 'insurer', 'lawyer or advisor', 'faith',
        'other service', 'kind not said')),
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

insert into contact_anew (id, person_id, name, kind, who, phone, other_phone, note, source, call_order, struck, struck_reason,
    checked_at, checked_by, checked_against, version)
select id, person_id, name, 'kind not said', who, phone, other_phone, note, source, call_order, struck, struck_reason,
    checked_at, checked_by, checked_against, version
from contact;

drop table contact;
alter table contact_anew rename to contact;
create index contact_of_person on contact (person_id, call_order);
