-- Directives: the papers in which the person said beforehand what is to be done, or who decides for
-- her. The text stays on the paper; here stands which one is in force as far as the family knows,
-- and where its original is. Who is named in one is a contact, and gets no place in this record by it.
create table directive (
    id                  integer primary key,
    person_id           integer not null references person (id),
    kind                text not null constraint directive_kind check (kind in ('living will', 'health care power',
        'combined', 'medical order', 'no resuscitation', 'organ donation', 'release', 'financial power')),
    form_of             text,           -- the state whose form it is, or elsewhere in words
    signed_on           text,
    witnesses           text,           -- names as typed
    notary              text,
    agent_id            integer references contact (id),
    alternate_id        integer references contact (id),
    second_alternate_id integer references contact (id),
    starts              text not null constraint directive_starts check (starts in
        ('not written down', 'at once', 'cannot decide', 'as the paper says')),
    starts_words        text,
    kept_where          text,           -- where the original is
    holder_id           integer references contact (id),    -- and who holds it
    note                text,
    source              text,           -- read off which paper, or said by whom
    state               text not null constraint directive_state check (state in
        ('draft', 'in force', 'superseded', 'void')),
    superseded_by       integer references directive (id),
    voided_on           text,
    voided_by           text,
    voided_how          text,           -- line through, VOID, signed; torn up; said aloud to whom
    reviewed_on         text,
    reviewed_by         text,
    reviewed_why        text,
    differs_from        integer references directive (id),  -- marked by the family: says something else than that one
    differs_in          text,
    struck              integer not null default 0 constraint directive_struck check (struck in (0, 1)),
    struck_reason       text,
    version             integer not null default 1,
    constraint directive_unsigned check (state <> 'draft' or signed_on is null),
    constraint directive_superseded check ((state = 'superseded') = (superseded_by is not null) and superseded_by is not id),
    constraint directive_void check ((state = 'void') = (voided_on is not null) and (voided_on is null) = (voided_by is null)
        and (voided_on is null) = (voided_how is null)),
    constraint directive_reviewed check ((reviewed_on is null) = (reviewed_by is null)
        and (reviewed_on is null) = (reviewed_why is null)),
    constraint directive_differs check ((differs_from is null) = (differs_in is null) and differs_from is not id),
    constraint directive_starts_so check ((starts = 'as the paper says') = (starts_words is not null)),
    constraint directive_alternates check ((alternate_id is not null) <= (agent_id is not null)
        and (second_alternate_id is not null) <= (alternate_id is not null))
) strict;

create index directive_of_person on directive (person_id);

-- A copy that was given away: whoever has it must hear when the directive does not hold any more.
create table directive_copy (
    id            integer primary key,
    person_id     integer not null references person (id),
    directive_id  integer not null references directive (id),
    contact_id    integer references contact (id),
    given_to      text,             -- or in words
    given_on      text,
    told_on       text,             -- that it is void or superseded
    told_how      text,
    struck        integer not null default 0 constraint directive_copy_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1,
    constraint directive_copy_holder check ((contact_id is null) <> (given_to is null)),
    constraint directive_copy_told check ((told_on is null) = (told_how is null))
) strict;

create index directive_copy_of_person on directive_copy (person_id, directive_id);

-- What happened after which a directive is looked at again: to the person herself, or to someone
-- who is named in one.
create table directive_event (
    id            integer primary key,
    person_id     integer not null references person (id),
    kind          text not null constraint directive_event_kind check (kind in
        ('decade', 'death', 'divorce', 'diagnosis', 'decline', 'move', 'stay', 'wishes')),
    contact_id    integer references contact (id),  -- to whom; empty: to the person herself
    happened_on   text not null,
    words         text,
    struck        integer not null default 0 constraint directive_event_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1,
    constraint directive_event_whose check (contact_id is not null or kind <> 'death')
) strict;

create index directive_event_of_person on directive_event (person_id);

-- After one event one directive need not be looked at, with the reason.
create table directive_aside (
    id           integer primary key,
    person_id    integer not null references person (id),
    event_id     integer not null references directive_event (id),
    directive_id integer not null references directive (id),
    reason       text not null,
    standing     integer not null constraint directive_aside_standing check (standing in (0, 1)),
    version      integer not null default 1,
    constraint directive_aside_once unique (event_id, directive_id)
) strict;

create index directive_aside_of_person on directive_aside (person_id);

-- The answer that counts where nothing is listed: "no directives" is said by someone, on a day.
create table directive_answer (
    id        integer primary key,
    person_id integer not null unique references person (id),
    answer    text not null constraint directive_answer_known check (answer in ('none', 'not asked')),
    said_by   text,
    said_on   text,
    version   integer not null default 1,
    constraint directive_answer_said check ((answer = 'none') = (said_by is not null)
        and (said_by is null) = (said_on is null))
) strict;
