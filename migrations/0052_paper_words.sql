-- What was said of papers: whether the person is someone who has such a paper (served, drives, has Medicare), and, of a paper that
-- is expected, that it is there, does not apply, or that she would rather not. One row for each, changed and never removed.
create table paper_word (
    id        integer primary key,
    person_id integer not null references person (id),
    about     text not null,        -- by its name in the dated list of what is expected
    answer    text not null constraint paper_word_answer check (answer in ('yes', 'none', 'Original Medicare',
        'Medicare Advantage', 'it is there', 'it does not apply', 'would rather not', 'not asked')),
    detail    text,                 -- where it is, or why
    said_by   text,
    said_on   text,
    version   integer not null default 1,
    constraint paper_word_said check ((answer = 'not asked') = (said_by is null)
        and (said_by is null) = (said_on is null) and (said_by is not null or detail is null)),
    unique (person_id, about)
) strict;
