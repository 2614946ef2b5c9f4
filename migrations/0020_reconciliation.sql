-- A second list of medicines, as it lay on the table: a hospital's discharge list, a clinic's
-- printout, the bottles. It is kept as it was, and laid beside the record.
create table second_list (
    id          integer primary key,
    person_id   integer not null references person (id),
    paper       text not null constraint second_list_paper check (paper in ('discharge list', 'clinic printout', 'bottles', 'other list')),
    dated_on    text not null,
    source      text not null,      -- whose it is: the hospital, the clinic, who read the bottles
    entered_by  integer not null references member (id),
    entered_at  text not null,
    state       text not null constraint second_list_state check (state in ('open', 'finished', 'struck')),
    finished_on text,
    struck_reason text,
    version     integer not null default 1,
    constraint second_list_finished check ((state = 'finished') = (finished_on is not null)),
    constraint second_list_struck check ((state = 'struck') = (struck_reason is not null))
) strict;

create index second_list_of_person on second_list (person_id, id);

-- A line of it: its own words, which nobody changes, and how they were understood.
create table second_list_line (
    id         integer primary key,
    person_id  integer not null references person (id),
    list_id    integer not null references second_list (id),
    words      text not null,
    name       text not null,
    strength   text,
    form       text,
    directions text,
    stopped    integer not null constraint line_stopped check (stopped in (0, 1)),    -- the list says so
    left_out   integer not null constraint line_left_out check (left_out in (0, 1)),  -- a heading, a remark
    version    integer not null default 1
) strict;

create index line_of_list on second_list_line (person_id, list_id, id);

-- What was decided on one row of the comparison, with both sides as they stood. Of what was
-- accepted it keeps how the medicine was before, so that it can be taken back.
create table settled_row (
    id         integer primary key,
    person_id  integer not null references person (id),
    list_id    integer not null references second_list (id),
    line_id    integer references second_list_line (id),
    medicine_id integer references medicine (id),
    class      text not null constraint settled_class check (class in ('same', 'changed', 'new', 'stopped', 'not mentioned', 'possibly the same')),
    decision   text not null constraint settled_decision check (decision in ('accepted', 'kept', 'asked')),
    wrote      text not null constraint settled_wrote check (wrote in ('nothing', 'added', 'relabelled', 'stopped')),
    ours       text,
    differs    text,
    question_id integer references question (id),
    before     text,                -- JSON
    after_version integer,
    taken_back integer not null default 0 constraint settled_taken_back check (taken_back in (0, 1)),
    version    integer not null default 1,
    constraint settled_something check (line_id is not null or medicine_id is not null)
) strict;

create unique index settled_line on settled_row (list_id, line_id) where not taken_back and line_id is not null;
create unique index settled_medicine on settled_row (list_id, medicine_id) where not taken_back and medicine_id is not null;

-- Two names that someone of the family confirmed to be of one ingredient.
create table same_ingredient (
    id           integer primary key,
    person_id    integer not null references person (id),
    name         text not null,
    other_name   text not null,
    confirmed_by integer not null references member (id),
    confirmed_at text not null,
    standing     integer not null constraint same_ingredient_standing check (standing in (0, 1)),
    version      integer not null default 1
) strict;

create index same_ingredient_of_person on same_ingredient (person_id, standing);
