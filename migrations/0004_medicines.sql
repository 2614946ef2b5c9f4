-- A medicine as its label and the family tell it. Nothing here is computed.
create table medicine (
    id              integer primary key,
    person_id       integer not null references person (id),
    name            text not null,
    strength        text,
    form            text,
    dose            text,           -- as written on the label
    route           text,
    times           text,           -- when it is taken
    purpose         text,
    prescriber      text,
    started_on      text,
    as_needed       integer not null constraint medicine_as_needed check (as_needed in (0, 1)),
    label_limit     text,           -- the label's own limit for as-needed use
    supply          text not null constraint medicine_supply check (supply in ('prescription', 'over the counter', 'supplement')),
    source          text,           -- read off which paper, or said by whom
    status          text not null constraint medicine_status check (status in ('taking', 'on hold', 'stopped', 'struck')),
    status_since    text,           -- the day of the hold, the stop or the striking
    status_reason   text,
    checked_at      text,
    checked_by      integer references member (id),
    checked_against text,
    version         integer not null default 1
) strict;

create index medicine_of_person on medicine (person_id, status);
