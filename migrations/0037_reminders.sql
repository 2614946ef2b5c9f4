-- What a member wants mailed about one record. No row: what is usual for her role. It is her own,
-- so it stands in the history of the house and not in that of the record.
create table mail_choice (
    id           integer primary key,
    record_id    integer not null,        -- the person whose record it is about
    member_id    integer not null references member (id),
    appointments text not null constraint mail_choice_appointments check (appointments in ('none', 'mine', 'all')),
    leads        text not null,           -- hours before, the longest first: "168 24 2"
    tasks        text not null constraint mail_choice_tasks check (tasks in ('none', 'mine', 'all')),
    supply       integer not null constraint mail_choice_supply check (supply in (0, 1)),
    trouble      integer not null constraint mail_choice_trouble check (trouble in (0, 1)),
    digest       text not null constraint mail_choice_digest check (digest in ('never', 'daily', 'weekly')),
    version      integer not null default 1,
    unique (record_id, member_id)
) strict;

-- When a member wants no mail, on the clock where she is. No row: what is usual.
create table quiet_hours (
    id        integer primary key,
    member_id integer not null unique references member (id),
    starts    text not null,              -- "21:00"
    ends      text not null,              -- the same as the start: no quiet hours
    version   integer not null default 1
) strict;

-- Machinery: up to when was looked for what has become due. One row.
create table reminder_mark (
    id        integer primary key constraint reminder_mark_one check (id = 1),
    looked_at text not null
) strict;
