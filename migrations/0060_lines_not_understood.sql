-- Why a line of another list is not understood: a number that may be one or two, a unit without its
-- number. Such a line is never accepted.
alter table second_list_line add column unclear text;

-- Its row is a class of its own; so is what the list says to hold, and what agrees as far as the
-- list says. SQLite changes no check, so the table is made anew.
create table settled_row_anew (
    id         integer primary key,
    person_id  integer not null references person (id),
    list_id    integer not null references second_list (id),
    line_id    integer references second_list_line (id),
    medicine_id integer references medicine (id),
    class      text not null constraint settled_class check (class in ('same', 'agrees so far', 'changed', 'new', 'stopped', 'on hold',
        'not mentioned', 'possibly the same', 'not understood')),
    decision   text not null constraint settled_decision check (decision in ('accepted', 'kept', 'asked')),
    wrote      text not null constraint settled_wrote check (wrote in ('nothing', 'added', 'relabelled', 'stopped', 'held')),
    ours       text,
    differs    text,
    question_id integer references question (id),
    before     text,                -- JSON
    after_version integer,
    taken_back integer not null default 0 constraint settled_taken_back check (taken_back in (0, 1)),
    version    integer not null default 1,
    turn_id    integer references turn (id),
    constraint settled_something check (line_id is not null or medicine_id is not null)
) strict;

insert into settled_row_anew (id, person_id, list_id, line_id, medicine_id, class, decision, wrote, ours, differs, question_id, before,
    after_version, taken_back, version, turn_id)
select id, person_id, list_id, line_id, medicine_id, class, decision, wrote, ours, differs, question_id, before,
    after_version, taken_back, version, turn_id
from settled_row;

drop table settled_row;
alter table settled_row_anew rename to settled_row;
create unique index settled_line on settled_row (list_id, line_id) where not taken_back and line_id is not null;
create unique index settled_medicine on settled_row (list_id, medicine_id) where not taken_back and medicine_id is not null;
