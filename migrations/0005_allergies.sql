-- An allergy or intolerance, with the reaction as it was seen.
create table allergy (
    id              integer primary key,
    person_id       integer not null references person (id),
    substance       text not null,
    nature          text not null constraint allergy_nature check (nature in ('allergy', 'intolerance', 'not known which')),
    reaction        text,
    since           text,           -- as it is remembered: a year is enough
    source          text,           -- read off which paper, or said by whom
    struck          integer not null default 0 constraint allergy_struck check (struck in (0, 1)),
    struck_reason   text,
    checked_at      text,
    checked_by      integer references member (id),
    checked_against text,
    version         integer not null default 1
) strict;

create index allergy_of_person on allergy (person_id);

-- The answer where nothing is listed: "no known allergies" is a dated statement by someone.
create table allergy_answer (
    id          integer primary key,
    person_id   integer not null unique references person (id),
    answer      text not null constraint allergy_answer_is check (answer in ('none known', 'not asked')),
    said_by     text,
    said_on     text,
    version     integer not null default 1
) strict;
