-- What a file that is a page of a paper looks like from afar, and what is still to be looked at, as the words of papers are kept.
-- Machinery: looked at again it would be the same. Nobody comes to it but through a page of a paper that she sees.
create table paper_look (
    id         integer primary key,
    person_id  integer not null references person (id),
    file       text not null,            -- SHA-256 of the file
    form       text not null constraint paper_look_form check (form in ('picture', 'pdf')),
    state      text not null constraint paper_look_state check (state in ('waiting', 'seen', 'not seen')),
    tries      integer not null default 0,
    due_at     text not null,            -- not before this
    settled_at text,
    look       text,                     -- 256 bits for each of the four ways in which it can be turned, in hexadecimal
    reason     text,                     -- why it was not seen, so far or for good
    constraint paper_look_file unique (person_id, file),
    constraint paper_look_seen check ((state = 'seen') = (look is not null)),
    constraint paper_look_not check (state <> 'not seen' or reason is not null)
) strict;

create index paper_look_due on paper_look (state, due_at);

-- What someone said of two papers that look alike, for all of the family: it is not asked again. One row for each two, the one
-- that came first first; changed and never removed.
create table paper_pair (
    id        integer primary key,
    person_id integer not null references person (id),
    first_id  integer not null references paper (id),
    second_id integer not null references paper (id),
    answer    text not null constraint paper_pair_answer check (answer in ('two papers', 'the same paper', 'not said')),
    said_by   integer not null references member (id),
    said_at   text not null,
    version   integer not null default 1,
    constraint paper_pair_order check (first_id < second_id),
    constraint paper_pair_once unique (person_id, first_id, second_id)
) strict;
