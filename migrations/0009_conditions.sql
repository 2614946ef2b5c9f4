-- A condition as the family was told of it, and what the person wants to hear and let others hear of it.
create table condition (
    id              integer primary key,
    person_id       integer not null references person (id),
    name            text not null,
    since           text,           -- as it is remembered: a year is enough
    followed_by     text,           -- the clinician who looks after it
    note            text,
    source          text,           -- read off which paper, or said by whom
    who_may_know    text,           -- in the person's own words
    wants_told      text not null constraint condition_wants_told check (wants_told in ('everything', 'the outline', 'nothing for now', 'not asked')),
    told_on         text,
    told_by         text,
    over_on         text,
    over_said_by    text,
    struck          integer not null default 0 constraint condition_struck check (struck in (0, 1)),
    struck_reason   text,
    checked_at      text,
    checked_by      integer references member (id),
    checked_against text,
    version         integer not null default 1,
    constraint condition_over_is_said check ((over_on is null) = (over_said_by is null))
) strict;

create index condition_of_person on condition (person_id);

-- An operation, with what was put in.
create table operation (
    id              integer primary key,
    person_id       integer not null references person (id),
    name            text not null,  -- what was done
    done_when       text,           -- as it is remembered
    done_where      text,           -- where, and by whom
    implant         text,           -- what was put in, and stays
    implant_card    text,           -- the number on its card
    note            text,
    source          text,           -- read off which paper, or said by whom
    struck          integer not null default 0 constraint operation_struck check (struck in (0, 1)),
    struck_reason   text,
    checked_at      text,
    checked_by      integer references member (id),
    checked_against text,
    version         integer not null default 1,
    constraint operation_card_of_implant check (implant_card is null or implant is not null)
) strict;

create index operation_of_person on operation (person_id);

-- An answer to one of two questions, said by someone on a day. It is never concluded from what is listed.
create table statement (
    id          integer primary key,
    person_id   integer not null references person (id),
    question    text not null constraint statement_question check (question in ('blood thinner', 'implant')),
    answer      text not null constraint statement_answer check (answer in ('yes', 'none', 'not asked')),
    which       text,           -- to "yes": which one
    said_by     text,
    said_on     text,
    version     integer not null default 1,
    constraint statement_is_said check ((answer = 'not asked') = (said_by is null) and (said_by is null) = (said_on is null)),
    constraint statement_says_which check ((answer = 'yes') = (which is not null)),
    unique (person_id, question)
) strict;
