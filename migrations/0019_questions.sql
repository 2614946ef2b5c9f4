-- A question that waits to be put to a pharmacist, a prescriber or a clinician; who will ask it,
-- and what was answered.
create table question (
    id            integer primary key,
    person_id     integer not null references person (id),
    words         text not null,
    entered_by    integer not null references member (id),
    entered_at    text not null,
    for_whom      text not null constraint question_for check (for_whom in ('pharmacist', 'prescriber', 'clinician')),
    clinician     text,             -- the clinician's name
    about_kind    text,             -- the table of the item it is about
    about_item    integer,
    owner_id      integer references member (id),   -- who will ask
    state         text not null constraint question_state check (state in ('open', 'asked', 'answered', 'let go')),
    asked_on      text,             -- the day it was put
    answer        text,
    answered_by   text,             -- who gave the answer
    answered_on   text,
    let_go_reason text,
    version       integer not null default 1,
    constraint question_clinician check ((for_whom = 'clinician') = (clinician is not null)),
    constraint question_about check ((about_kind is null) = (about_item is null)),
    constraint question_asked check ((state = 'asked') <= (asked_on is not null)),
    constraint question_answered check ((state = 'answered') = (answer is not null)
        and (answer is null) = (answered_by is null) and (answer is null) = (answered_on is null)),
    constraint question_let_go check ((state = 'let go') = (let_go_reason is not null))
) strict;

create index question_of_person on question (person_id, state, id);
create index question_about_item on question (about_kind, about_item);
