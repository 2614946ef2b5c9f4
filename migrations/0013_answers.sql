-- What the person was asked about her own record, and what she answered. It is written down by
-- whoever asked her, or by herself; it changes nothing else by itself.
create table answer (
    id            integer primary key,
    person_id     integer not null references person (id),
    question      text not null,    -- as it was put to her, in words
    said          text not null constraint answer_said check (said in ('yes', 'no', 'hide', 'would not say', 'ask again')),
    hide_what     text,             -- to "hide": what, and from whom
    hide_from     text,
    own_words     text,
    asked_by      integer references member (id),    -- none: she wrote it down herself, unasked
    how           text constraint answer_how check (how in ('in person', 'by phone', 'by video')),
    asked_on      text not null,
    about_kind    text,             -- the table of the item or place it is about, if it is about one
    about_item    integer,
    state         text not null constraint answer_state check (state in ('standing', 'replaced', 'struck')),
    struck_reason text,
    version       integer not null default 1,
    constraint answer_asked check ((asked_by is null) = (how is null)),
    constraint answer_about check ((about_kind is null) = (about_item is null))
) strict;

-- Who shares the record may be decided for a person who does not sign in. This is the version of
-- the row that was, the newest such: so that each decision tells it, and not the first alone.
alter table membership add column on_behalf integer;
alter table invitation add column on_behalf integer;
