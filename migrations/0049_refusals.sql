-- A prescription that was refused at the pharmacy counter: what the refusal said, whose move it is
-- and since when, and what came of it.
create table refusal (
    id             integer primary key,
    person_id      integer not null references person (id),
    medicine_id    integer not null references medicine (id),
    cover_id       integer references cover (id),
    refused_on     text not null,
    pharmacy       text,
    words          text not null,       -- what was said or printed
    code           text,
    mover          text not null constraint refusal_mover check (mover in
        ('prescriber', 'plan', 'pharmacy', 'family')),
    mover_since    text not null,
    statement_at   text,                -- when the plan received the prescriber's statement
    expedited      integer not null default 0 constraint refusal_expedited check (expedited in (0, 1)),
    decision       text constraint refusal_decision check (decision in ('covered', 'not covered')),
    decided_on     text,
    decision_words text,
    next_step      text,                -- as the notice says it
    next_by        text,                -- the date that is printed there
    settled_on     text,
    settled_how    text,
    entered_by     integer not null references member (id),
    entered_at     text not null,
    struck         integer not null default 0 constraint refusal_struck check (struck in (0, 1)),
    struck_reason  text,
    version        integer not null default 1,
    constraint refusal_decided check ((decision is null) = (decided_on is null)),
    constraint refusal_settled check ((settled_on is null) = (settled_how is null)),
    constraint refusal_hurried check (statement_at is not null or expedited = 0)
) strict;

create index refusal_of_person on refusal (person_id);
create index refusal_of_medicine on refusal (medicine_id);

-- A call about it: when, with whom, and what was said.
create table refusal_call (
    id            integer primary key,
    person_id     integer not null references person (id),
    refusal_id    integer not null references refusal (id),
    called_on     text not null,
    called_time   text,
    with_whom     text not null,
    said          text not null,
    entered_by    integer not null references member (id),
    entered_at    text not null,
    struck        integer not null default 0 constraint refusal_call_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1
) strict;

create index refusal_call_of_refusal on refusal_call (refusal_id);
