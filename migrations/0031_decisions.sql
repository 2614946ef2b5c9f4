-- What is to be decided for the person, and what was: why, who was heard, who decides by which
-- right as it was stated, and when to look again.
create table decision (
    id               integer primary key,
    person_id        integer not null references person (id),
    matter           text not null,
    background       text,
    decided          text,
    reasons          text,
    heard            text,          -- the members who were heard, as JSON: [2, 3]
    heard_others     text,
    her_words        text,          -- the person's own
    not_asked        text,          -- or why she was not asked
    decider          text,
    by_right         text constraint decision_right check (by_right in
        ('person', 'health care', 'financial', 'agreement', 'other')),
    right_words      text,
    decided_on       text,
    look_again_on    text,
    state            text not null constraint decision_state check (state in
        ('open', 'decided', 'replaced', 'withdrawn')),
    replaced_by      integer references decision (id),
    withdrawn_reason text,
    place            integer not null,  -- in the order of a meeting
    entered_by       integer not null references member (id),
    entered_at       text not null,
    version          integer not null default 1,
    constraint decision_whole check ((decided is null) = (reasons is null)
        and (decided is null) = (decider is null) and (decided is null) = (by_right is null)
        and (decided is null) = (decided_on is null)),
    constraint decision_open check ((state <> 'open' or decided is null)
        and (state not in ('decided', 'replaced') or decided is not null)),
    constraint decision_asked check ((decided is null) = (her_words is null and not_asked is null)
        and (her_words is null or not_asked is null)),
    constraint decision_other check ((by_right is 'other') = (right_words is not null)),
    constraint decision_replaced check ((state = 'replaced') = (replaced_by is not null)),
    constraint decision_withdrawn check ((state = 'withdrawn') = (withdrawn_reason is not null))
) strict;

create index decision_of_person on decision (person_id, state, place);
