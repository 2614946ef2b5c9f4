-- Cards of insurance and identity, as they were photographed: both sides, to be shown at a desk.
create table card (
    id              integer primary key,
    person_id       integer not null references person (id),
    title           text not null,
    kind            text not null constraint card_kind check (kind in ('insurance', 'identity')),
    cover_id        integer references cover (id),
    front           text not null,      -- SHA-256 of the photo in the data folder's files
    back            text,
    photographed_on text not null,
    photographed_by integer not null references member (id),
    same_for        integer,            -- the year for which someone said that it stays the same
    expires_on      text,
    struck          integer not null default 0 constraint card_struck check (struck in (0, 1)),
    struck_reason   text,
    version         integer not null default 1,
    constraint card_cover check (cover_id is null or kind = 'insurance')
) strict;

create index card_of_person on card (person_id);
create index card_of_cover on card (cover_id);
