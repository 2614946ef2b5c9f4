-- An appointment, once or again and again: when, where, with whom, who goes along. The time is the one on the wall of the zone
-- it was booked in; the rule is the text of RFC 5545, counted in days on that wall.
create table appointment (
    id                integer primary key,
    person_id         integer not null references person (id),
    title             text not null,
    kind              text not null constraint appointment_kind check (kind in ('routine', 'specialist', 'test', 'procedure',
        'therapy', 'other')),
    contact_id        integer references contact (id),  -- the clinician or service
    with_whom         text,             -- or a name that is typed
    place             text,
    on_day            text not null,    -- the first day, or the only one
    at_time           text,             -- "09:30"; a requested one may have none yet
    zone              text not null,    -- the person's, when it was booked
    minutes           integer not null constraint appointment_minutes check (minutes between 5 and 1440),
    repeats           text,             -- the value of an RRULE; empty: once
    transport         text,
    escort_id         integer references member (id),
    escort_contact_id integer references contact (id),
    alone             integer not null default 0 constraint appointment_alone check (alone in (0, 1)),
    interpreter       text,             -- for which language
    status            text not null constraint appointment_status check (status in ('requested', 'booked', 'confirmed', 'kept',
        'missed', 'cancelled')),
    reason            text,             -- why it was cancelled
    follows_id        integer references appointment (id),  -- the series that this one goes on with
    struck            integer not null default 0 constraint appointment_struck check (struck in (0, 1)),
    struck_reason     text,
    version           integer not null default 1,
    constraint appointment_timed check (at_time is not null or status in ('requested', 'cancelled') and repeats is null),
    constraint appointment_with check (contact_id is null or with_whom is null),
    constraint appointment_escort check ((escort_id is not null) + (escort_contact_id is not null) + alone <= 1),
    constraint appointment_series check (repeats is null or status not in ('kept', 'missed')),
    constraint appointment_cancelled check ((status = 'cancelled') = (reason is not null))
) strict;

create index appointment_of_person on appointment (person_id, on_day);

-- One of a series that differs from the others, by the day it would have been on.
create table occurrence (
    id                integer primary key,
    person_id         integer not null references person (id),
    appointment_id    integer not null references appointment (id),
    on_day            text not null,
    moved_on          text,             -- to this day
    moved_time        text,             -- at this time
    status            text constraint occurrence_status check (status in ('requested', 'booked', 'confirmed', 'kept', 'missed',
        'cancelled')),                  -- empty: as the series
    reason            text,
    own_escort        integer not null default 0 constraint occurrence_own check (own_escort in (0, 1)),
    escort_id         integer references member (id),
    escort_contact_id integer references contact (id),
    alone             integer not null default 0 constraint occurrence_alone check (alone in (0, 1)),
    apart             integer not null default 0 constraint occurrence_apart check (apart in (0, 1)),  -- kept by itself
    struck            integer not null default 0 constraint occurrence_struck check (struck in (0, 1)),  -- as the series again
    version           integer not null default 1,
    constraint occurrence_moved check ((moved_on is null) = (moved_time is null)),
    constraint occurrence_cancelled check ((status is 'cancelled') = (reason is not null)),
    constraint occurrence_escort check ((escort_id is not null) + (escort_contact_id is not null) + alone <= own_escort)
) strict;

create unique index occurrence_of_appointment on occurrence (appointment_id, on_day);

-- What is clinical about an appointment: in the area of the medicines and conditions, not of the calendar.
create table appointment_matter (
    id             integer primary key,
    person_id      integer not null references person (id),
    appointment_id integer not null references appointment (id),
    purpose        text,
    fasting        text,                -- from when, and what is allowed
    bring          text,
    referral       text,                -- its number
    referral_until text,                -- its last day
    version        integer not null default 1
) strict;

create unique index appointment_matter_of on appointment_matter (appointment_id);
