-- What is to be done for the person: who does it, by when, what it waits for, and what shows that
-- it is done. One that repeats is a row for each time; the row that is done names the next.
create table task (
    id            integer primary key,
    person_id     integer not null references person (id),
    title         text not null,
    why           text,
    entered_by    integer not null references member (id),
    entered_at    text not null,
    about_kind    text,             -- the table of the item it is about
    about_item    integer,
    due_on        text,
    firm          integer not null constraint task_firm check (firm in (0, 1)),   -- must be by then, not only best
    from_afar     integer not null constraint task_from_afar check (from_afar in (0, 1)),
    every         integer constraint task_every check (every between 1 and 99),
    unit          text constraint task_unit check (unit in ('days', 'weeks', 'months', 'years')),
    counted_from  text,             -- the day that the repeats are counted from
    state         text not null constraint task_state check (state in ('open', 'taken', 'waiting', 'done', 'let go')),
    owner_id      integer references member (id),
    offered_to    integer references member (id),   -- asked to take it; it stays where it is until she says yes
    offered_by    integer references member (id),
    declined_by   integer references member (id),   -- who said no when it was last offered
    declined_why  text,
    waiting_on    text,
    waiting_until text,
    off_until     text,             -- put off until that day
    off_reason    text,
    closed_on     text,             -- the day it was done, or let go
    closed_by     integer references member (id),
    proof         text,
    photo         text,             -- SHA-256 of the photo in the data folder's files
    let_go_reason text,
    next_id       integer references task (id),
    struck        integer not null default 0 constraint task_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1,
    constraint task_about check ((about_kind is null) = (about_item is null)),
    constraint task_repeats check ((every is null) = (unit is null) and (every is null) = (counted_from is null)
        and (every is not null) <= (due_on is not null)),
    constraint task_owned check (case state when 'open' then owner_id is null when 'taken' then owner_id is not null
        when 'waiting' then owner_id is not null else 1 end),
    constraint task_offered check ((offered_to is null) = (offered_by is null)),
    constraint task_declined check ((declined_by is null) = (declined_why is null)),
    constraint task_waits check ((state = 'waiting') = (waiting_on is not null)
        and (waiting_on is null) = (waiting_until is null)),
    constraint task_off check ((off_reason is not null) <= (off_until is not null)),
    constraint task_closed check ((state in ('done', 'let go')) = (closed_on is not null)
        and (closed_on is null) = (closed_by is null)),
    constraint task_proof check ((proof is not null or photo is not null) <= (state = 'done')),
    constraint task_let_go check ((state = 'let go') = (let_go_reason is not null))
) strict;

create index task_of_person on task (person_id, state, id);
create index task_about_item on task (about_kind, about_item);
