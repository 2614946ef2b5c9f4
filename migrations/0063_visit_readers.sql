-- Who is asked no more to read the note of a visit stays as a row: a deleted row's number was given to
-- the next one, and the history then told of two rows as if they were one. `autoincrement`, beginning
-- after every number that the history knows, gives no number twice, also where rows were deleted before.
create table visit_reader_kept (
    id        integer primary key autoincrement,
    person_id integer not null references person (id),
    visit_id  integer not null references visit (id),
    member_id integer not null references member (id),
    read_at   text,
    standing  integer not null default 1 constraint visit_reader_standing check (standing in (0, 1)),
    version   integer not null default 1,
    constraint visit_reader_once unique (visit_id, member_id)
) strict;

insert into visit_reader_kept (id, person_id, visit_id, member_id, read_at, version)
select id, person_id, visit_id, member_id, read_at, version from visit_reader;

drop table visit_reader;
alter table visit_reader_kept rename to visit_reader;

delete from sqlite_sequence where name = 'visit_reader';
insert into sqlite_sequence (name, seq)
select 'visit_reader', max(coalesce((select max(item) from history where kind = 'visit_reader'), 0),
    coalesce((select max(id) from visit_reader), 0));
