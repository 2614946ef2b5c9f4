-- The secret address of a member's calendar: whoever has it sees what she may see. The house's own, in no record. Only the
-- SHA-256 of the secret is kept; a backup holds none, so it opens nothing.
create table feed (
    id        integer primary key,
    member_id integer not null references member (id),
    record_id integer references person (id),   -- of this record alone; empty: of all she shares
    secret    text unique,
    made_at   text not null,
    ended_at  text,
    version   integer not null default 1
) strict;

create index feed_of_member on feed (member_id, id);
