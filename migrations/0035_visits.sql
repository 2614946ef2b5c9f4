-- The note of one visit: on which day, with whom, who was present, what was said and decided.
create table visit (
    id             integer primary key,
    person_id      integer not null references person (id),
    appointment_id integer references appointment (id),
    occurrence_on  text,            -- the day by which that time of the appointment is named
    held_on        text not null,
    contact_id     integer references contact (id),
    with_whom      text not null,   -- the contact's name as it was, or a typed one
    present        text not null,   -- JSON: the ids of the members who were there
    others         text,            -- and who else
    said           text,
    decisions      text,
    next_id        integer references appointment (id),
    entered_by     integer not null references member (id),
    entered_at     text not null,
    struck         integer not null default 0 constraint visit_struck check (struck in (0, 1)),
    struck_reason  text,
    version        integer not null default 1,
    constraint visit_meeting check ((appointment_id is null) = (occurrence_on is null)),
    constraint visit_mistake check ((struck = 1) = (struck_reason is not null))
) strict;

create index visit_of_person on visit (person_id, held_on);

-- What came of a visit: a question that stood at it, a medicine that was changed, a test, a follow-up.
-- What each became is a row of its own kind.
create table visit_item (
    id          integer primary key,
    person_id   integer not null references person (id),
    visit_id    integer not null references visit (id),
    what        text not null constraint visit_item_what check (what in ('answered', 'asked', 'not reached', 'medicine', 'test',
        'follow-up')),
    words       text,               -- the answer, the test, what is to be done
    place       text,               -- where the test is done
    question_id integer references question (id),
    turn_id     integer references turn (id),
    medicine_id integer references medicine (id),
    task_id     integer references task (id),
    version     integer not null default 1,
    constraint visit_item_question check ((what in ('answered', 'asked', 'not reached')) = (question_id is not null)),
    constraint visit_item_medicine check ((what = 'medicine') = (turn_id is not null)
        and (turn_id is null) = (medicine_id is null)),
    constraint visit_item_words check ((what in ('answered', 'test', 'follow-up')) = (words is not null))
) strict;

create index visit_item_of on visit_item (visit_id);
create index visit_item_question on visit_item (question_id);

-- Who should read the note, and when she said that she had.
create table visit_reader (
    id        integer primary key,
    person_id integer not null references person (id),
    visit_id  integer not null references visit (id),
    member_id integer not null references member (id),
    read_at   text,
    version   integer not null default 1,
    constraint visit_reader_once unique (visit_id, member_id)
) strict;

-- A note that one member is typing, as the form stands: machinery, no part of the record.
create table visit_draft (
    id             integer primary key,
    person_id      integer not null references person (id),
    member_id      integer not null references member (id),
    appointment_id integer,         -- the visit it is of, where it is of one in the calendar
    occurrence_on  text,
    token          text not null unique,    -- made by the page it was begun on
    page           text not null,   -- the page that kept it last
    count          integer not null,        -- of what that page sent
    fields         text not null,   -- as a form sends them
    kept_at        text not null,
    version        integer not null default 1
) strict;

create unique index visit_draft_of_meeting on visit_draft (person_id, member_id, appointment_id, occurrence_on)
    where appointment_id is not null;
