-- For which medicines the family keeps a log of each dose: for one, or (no medicine) for all.
create table log_keeping (
    id          integer primary key,
    person_id   integer not null references person (id),
    medicine_id integer references medicine (id),
    standing    integer not null constraint log_keeping_standing check (standing in (0, 1)),
    turned_by   integer not null references member (id),
    turned_at   text not null,
    version     integer not null default 1
) strict;

create unique index log_keeping_once on log_keeping (person_id, coalesce(medicine_id, 0));

-- One dose as someone entered it: given, or not given and why.
create table given (
    id            integer primary key,
    person_id     integer not null references person (id),
    medicine_id   integer not null references medicine (id),
    day           text not null,    -- on the person's calendar
    time_of_day   text,             -- "morning", "14:30", as the schedule calls it; none: as needed
    at            text,             -- as needed: the moment
    amount        integer not null, -- in thousandths
    unit          text not null,    -- what was counted then
    outcome       text not null constraint given_outcome check (outcome in ('given', 'refused', 'held', 'asleep', 'away', 'none left', 'other')),
    note          text,
    given_by      integer references member (id),   -- if it was a member
    given_name    text not null,
    entered_by    integer not null references member (id),
    entered_at    text not null,
    struck        integer not null default 0 constraint given_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1,
    constraint given_when check ((time_of_day is null) = (at is not null))
) strict;

-- Two people who tick the same dose make one entry.
create unique index given_once on given (medicine_id, day, time_of_day) where struck = 0;
create index given_of_day on given (person_id, day);
create index given_of_medicine on given (person_id, medicine_id, day);
