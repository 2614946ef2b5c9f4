-- A sheet that was printed: enough to tell later which paper came from which state of the record.
create table print (
    id        integer primary key,
    person_id integer not null references person (id),
    member_id integer not null references member (id),
    sheet     text not null,
    code      text not null unique,
    printed_at text not null,
    facts     text not null,        -- SHA-256 of the facts on it, as canonical JSON
    head      text not null         -- the newest hash of the record's history at that moment
) strict;
