-- What was noticed, in plain words: on which day, what it is about, what was seen. The person answers
-- each in her own words, or keeps it for the clinician only.
create table observation (
    id             integer primary key,
    person_id      integer not null references person (id),
    about          text not null constraint observation_about check (about in
        ('eating', 'sleep', 'fall', 'mood', 'memory', 'driving', 'money', 'walking', 'other')),
    seen_on        text not null,
    seen_time      text,            -- the time of day, in words
    words          text not null,
    fall_where     text,
    fall_up        text constraint observation_up check (fall_up in ('alone', 'helped', 'not known')),
    fall_head      text constraint observation_head check (fall_head in ('yes', 'no', 'not known')),
    fall_hurt      text constraint observation_hurt check (fall_hurt in ('yes', 'no', 'not known')),
    noted_by       integer not null references member (id),
    noted_at       text not null,
    worded_at      text not null,   -- when it last got the words it has
    answer         text,            -- the person's own words
    answered_at    text,
    answer_by      integer references member (id),  -- who entered them
    answer_for_her integer constraint observation_for_her check (answer_for_her in (0, 1)),
    clinician_only integer not null default 0 constraint observation_clinician check (clinician_only in (0, 1)),
    on_behalf      integer not null default 0 constraint observation_behalf check (on_behalf in (0, 1)),
    appointment_id integer references appointment (id),  -- the visit on whose sheet it stands
    occurrence_on  text,
    off_sheets     integer not null default 0 constraint observation_off check (off_sheets in (0, 1)),
    struck         integer not null default 0 constraint observation_struck check (struck in (0, 1)),
    struck_reason  text,
    version        integer not null default 1,
    constraint observation_fall check ((about = 'fall') = (fall_up is not null)
        and (fall_up is null) = (fall_head is null) and (fall_up is null) = (fall_hurt is null)
        and (fall_where is null or about = 'fall')),
    constraint observation_answered check ((answer is null) = (answered_at is null)
        and (answer is null) = (answer_by is null) and (answer is null) = (answer_for_her is null)),
    constraint observation_ticked check ((appointment_id is null) = (occurrence_on is null)
        and (appointment_id is null or not off_sheets))
) strict;

create index observation_of_person on observation (person_id, seen_on, id);
create index observation_on_sheet on observation (appointment_id, occurrence_on);
