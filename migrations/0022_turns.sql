-- Why a medicine was started, stopped, held, resumed or taken differently: who said so, from when,
-- in whose place. The medicine's own row says how it stands; this says how it came to that.
create table turn (
    id          integer primary key,
    person_id   integer not null references person (id),
    medicine_id integer not null references medicine (id),
    what        text not null constraint turn_what check (what in ('started', 'stopped', 'held', 'resumed', 'changed')),
    from_on     text not null,
    said_by     text not null,
    reason      text not null,
    replaces_id integer references medicine (id),   -- started: in whose place
    resume_on   text,                               -- held: the day to resume, as a clinician gave it
    resume_by   text,                               -- who gave that day
    planned     integer not null constraint turn_planned check (planned in (0, 1)),  -- nobody has said that it was done
    was         text,               -- JSON: how the medicine was before it
    left_at     integer not null,   -- the medicine's version after it
    question_id integer references question (id),   -- held: the question when to resume
    entered_by  integer not null references member (id),
    entered_at  text not null,
    struck      integer not null default 0 constraint turn_struck check (struck in (0, 1)),
    version     integer not null default 1,
    constraint turn_resume check ((resume_on is null) = (resume_by is null) and (resume_on is null or what = 'held'))
) strict;

create index turn_of_medicine on turn (person_id, medicine_id, id);

-- Who was told of it: by whom, on which day.
create table telling (
    id          integer primary key,
    person_id   integer not null references person (id),
    turn_id     integer not null references turn (id),
    medicine_id integer not null references medicine (id),
    contact_id  integer references contact (id),
    whom        text not null,      -- the name, as it was then
    told_on     text not null,
    told_by     integer not null references member (id),
    how         text,               -- by phone, the slip handed over
    struck      integer not null default 0 constraint telling_struck check (struck in (0, 1)),
    version     integer not null default 1
) strict;

create index telling_of_turn on telling (person_id, turn_id);

-- Accepting from another list is a turn as well.
alter table settled_row add column turn_id integer references turn (id);
