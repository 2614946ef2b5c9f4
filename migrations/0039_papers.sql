-- A paper: pictures of its pages, or one PDF. It waits in the tray until someone has said what it is. The files themselves lie
-- in the data folder under the SHA-256 of their bytes.
create table paper (
    id             integer primary key,
    person_id      integer not null references person (id),
    state          text not null constraint paper_state check (state in ('waiting', 'filed', 'joined')),
    sent_as        text,            -- the name that the file had where it came from
    sent_by        integer not null references member (id),
    sent_at        text not null,
    kind           text constraint paper_kind check (kind in ('medical order', 'directive', 'release of information',
        'insurance card', 'identity card', 'test result', 'discharge paper', 'prescription', 'letter', 'bill or receipt',
        'insurance policy', 'warranty', 'military record', 'vital record', 'funeral contract', 'tax paper', 'deed or title',
        'other')),
    title          text,
    dated_on       text,            -- the date on the paper
    contact_id     integer references contact (id),  -- from whom
    from_name      text,            -- or a name that is typed
    original       text constraint paper_original check (original in ('at home', 'with the lawyer', 'with the person',
        'elsewhere', 'there is none')),
    original_where text,            -- in words
    stewards_only  integer not null default 0 constraint paper_stewards check (stewards_only in (0, 1)),
    expires_on     text,            -- the last day on which it holds
    note           text,
    filed_by       integer references member (id),
    filed_at       text,
    joined_to      integer references paper (id),    -- its pages went there
    replaced_by    integer references paper (id),    -- a newer version
    struck         integer not null default 0 constraint paper_struck check (struck in (0, 1)),
    struck_reason  text,
    version        integer not null default 1,
    constraint paper_filed check ((state = 'filed') = (kind is not null) and (kind is null) = (title is null)
        and (kind is null) = (filed_by is null) and (kind is null) = (filed_at is null)),
    constraint paper_joined check ((state = 'joined') = (joined_to is not null)),
    constraint paper_from check (contact_id is null or from_name is null),
    constraint paper_replaced check (replaced_by is null or state = 'filed')
) strict;

create index paper_of_person on paper (person_id, state, id);

-- A page of a paper: a picture, or all of a PDF. Turned when it is shown; the file stays as it was sent.
create table paper_page (
    id        integer primary key,
    person_id integer not null references person (id),
    paper_id  integer not null references paper (id),
    place     integer not null,     -- among the pages of its paper
    file      text not null,        -- SHA-256 of the file
    media     text not null constraint paper_page_media check (media in ('jpeg', 'png', 'webp', 'pdf')),
    bytes     integer not null,
    turned    integer not null default 0 constraint paper_page_turned check (turned in (0, 90, 180, 270)),
    version   integer not null default 1
) strict;

create index paper_page_of_paper on paper_page (paper_id, place);
create index paper_page_of_file on paper_page (person_id, file);

-- What became of each file of a pile that one member sent, for her to read afterwards.
create table tray_arrival (
    id        integer primary key,
    person_id integer not null references person (id),
    member_id integer not null references member (id),
    at        text not null,
    told      text not null         -- each file's name and what became of it, as JSON
) strict;

create index tray_arrival_of_member on tray_arrival (person_id, member_id);
