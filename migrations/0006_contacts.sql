-- Whom to phone, in order.
create table contact (
    id              integer primary key,
    person_id       integer not null references person (id),
    name            text not null,
    who             text,           -- daughter, clinic, neighbour with a key
    phone           text not null,
    other_phone     text,
    note            text,           -- when to phone, and how
    source          text,           -- read off which paper, or said by whom
    call_order      integer not null,
    struck          integer not null default 0 constraint contact_struck check (struck in (0, 1)),
    struck_reason   text,
    checked_at      text,
    checked_by      integer references member (id),
    checked_against text,
    version         integer not null default 1
) strict;

create index contact_of_person on contact (person_id, call_order);
