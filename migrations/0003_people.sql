-- The person cared for, and what stands at the top of every sheet.
create table person (
    id               integer primary key,
    name             text not null,
    born             text not null,
    zone             text not null,
    address          text,
    language         text,
    hearing          text,
    vision           text,
    mobility         text,
    emergency_number text not null,
    poison_line      text,
    -- Whom to phone first, when a clinician or a hospice has told the family so.
    first_whom       text,
    first_number     text,
    first_said_by    text,
    source           text,          -- read off which paper, or said by whom
    paper            text not null constraint person_paper check (paper in ('us-letter', 'a4')),
    checked_at       text,
    checked_by       integer references member (id),
    checked_against  text,
    version          integer not null default 1,
    constraint first_complete check ((first_whom is null) = (first_number is null) and (first_whom is null) = (first_said_by is null))
) strict;
