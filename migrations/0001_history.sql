-- The history: who did what, when, and what it was before. One chain for each person's record
-- (chain = the person's id) and one for the house itself (chain 0). Each entry holds the hash of
-- the one before, so an edited, deleted, reordered or inserted entry is found by `verify`.
create table history (
    id       integer primary key,
    chain    integer not null,
    seq      integer not null,
    at       text not null,
    actor    integer not null,      -- the member; 0 where it was none
    door     text not null constraint history_door check (door in ('member', 'visitor', 'system', 'operator')),
    area     text not null,
    action   text not null,
    kind     text not null,         -- the table of the thing
    item     integer not null,      -- its id there
    previous text not null,
    hash     text not null,
    unique (chain, seq)
) strict;

create index history_of_item on history (kind, item);

-- What changed, one row a field. What is chained is the digest of a value together with its own
-- random salt; so a value (and its salt) can be blanked by a lawful erasure and the chain still holds.
create table history_value (
    id         integer primary key,
    history_id integer not null references history (id),
    field      text not null,
    old        text,                -- JSON
    new        text,
    salt       text,
    digest     text not null
) strict;

create index history_value_of on history_value (history_id);

create trigger history_is_not_edited before update on history
begin
    select raise(abort, 'the history is append-only');
end;

create trigger history_is_not_deleted before delete on history
begin
    select raise(abort, 'the history is append-only');
end;

-- Also stops `insert or replace`, which would pass by the two above.
create trigger history_comes_in_order before insert on history
when new.seq <> (select coalesce(max(seq), 0) + 1 from history where chain = new.chain)
  or new.id is not null and exists (select 1 from history where id = new.id)
begin
    select raise(abort, 'the history is append-only: out of order');
end;

create trigger history_value_is_only_blanked before update on history_value
when new.old is not null or new.new is not null or new.salt is not null
  or (new.id, new.history_id, new.field, new.digest) is not (old.id, old.history_id, old.field, old.digest)
begin
    select raise(abort, 'the history is append-only');
end;

create trigger history_value_is_not_deleted before delete on history_value
begin
    select raise(abort, 'the history is append-only');
end;

create trigger history_value_joins_the_newest before insert on history_value
when new.history_id <> (select max(id) from history)
  or new.id is not null and exists (select 1 from history_value where id = new.id)
begin
    select raise(abort, 'the history is append-only: out of order');
end;
