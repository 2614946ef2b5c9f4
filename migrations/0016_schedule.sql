-- A step of a medicine's schedule: what its label says in words, in numbers. Steps of one medicine
-- follow each other; what is as needed may stand beside what is regular.
create table step (
    id           integer primary key,
    person_id    integer not null references person (id),
    medicine_id  integer not null references medicine (id),
    from_on      text not null,
    until_on     text,
    rhythm       text not null constraint step_rhythm check (rhythm in ('days', 'weekdays', 'hours', 'as-needed')),
    every        integer not null constraint step_every check (every between 1 and 366),
    weekdays     text not null,     -- "mon wed fri"
    times        text not null,     -- "morning 1, 14:30 0.5"
    unit         text not null,     -- what is counted: tablet, drop, mL
    least_hours  integer,           -- in thousandths: the label's least hours between, as needed
    most_a_day   integer,           -- in thousandths: the label's most in 24 hours, as needed
    struck       integer not null default 0 constraint step_struck check (struck in (0, 1)),
    version      integer not null default 1,
    constraint step_order check (until_on is null or until_on >= from_on)
) strict;

create index step_of_medicine on step (person_id, medicine_id);
