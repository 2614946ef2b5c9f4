-- What happened, as it was noted by whoever was there: a few words, a photo, or both. It is kept
-- at once, and is given its place now or later, by anyone.
create table happening (
    id            integer primary key,
    person_id     integer not null references person (id),
    words         text,
    photo         text,             -- SHA-256 of the photo in the data folder's files
    happened      text,             -- when, in words, if not at the moment it was noted
    noted_by      integer not null references member (id),
    noted_at      text not null,
    place         text not null constraint happening_place check (place in ('waiting', 'about', 'alone')),
    about_kind    text,             -- the table of the item it is about
    about_item    integer,
    struck        integer not null default 0 constraint happening_struck check (struck in (0, 1)),
    struck_reason text,
    version       integer not null default 1,
    constraint happening_something check (words is not null or photo is not null),
    constraint happening_about check ((place = 'about') = (about_kind is not null)
        and (about_kind is null) = (about_item is null))
) strict;

create index happening_of_person on happening (person_id, place, id);
create index happening_about_item on happening (about_kind, about_item);

-- How far a member has confirmed having read what changed: up to which entry of the history.
create table read_mark (
    id        integer primary key,
    person_id integer not null references person (id),
    member_id integer not null references member (id),
    upto      integer not null,
    version   integer not null default 1,
    unique (person_id, member_id)
) strict;
