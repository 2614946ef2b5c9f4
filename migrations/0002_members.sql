-- Someone who signs in. One member may share in several people's records.
create table member (
    id       integer primary key,
    name     text not null,
    email    text not null unique,
    phone    text,
    zone     text not null,
    password text,                  -- Argon2id, PHC string; none until the member has chosen one
    version  integer not null default 1
) strict;

-- A member's place in one person's record: the role decides what is seen and changed.
create table membership (
    id        integer primary key,
    person_id integer not null,
    member_id integer not null references member (id),
    role      text not null constraint membership_role check (role in ('person', 'steward', 'relative', 'aide', 'reader')),
    version   integer not null default 1,
    unique (person_id, member_id)
) strict;

-- One item of a record kept from one member's eyes, decided by the person or on her behalf.
-- A row stays when the item is shown again: what happened meanwhile stays untold.
create table hidden (
    id         integer primary key,
    person_id  integer not null,
    member_id  integer not null references member (id),
    kind       text not null,       -- the table of the item
    item       integer not null,
    on_behalf  integer not null constraint hidden_on_behalf check (on_behalf in (0, 1)),
    standing   integer not null constraint hidden_standing check (standing in (0, 1)),
    version    integer not null default 1,
    unique (member_id, kind, item)
) strict;

-- Machinery from here on: not part of anyone's record, so not in the history.

-- A device that is signed in. The token is kept only as its SHA-256.
create table session (
    id         integer primary key,
    token      text not null unique,
    member_id  integer not null references member (id),
    own_device integer not null constraint session_own_device check (own_device in (0, 1)),
    device     text not null,
    began_at   text not null,
    seen_at    text not null
) strict;

-- A device that has signed in to this account before: it is not slowed by a stranger's guesses.
create table known_device (
    token     text primary key,
    member_id integer not null references member (id),
    since     text not null
) strict;

-- A link that does one thing until it expires: set up, choose a new password, or enter the demo.
create table link (
    token      text primary key,
    purpose    text not null constraint link_purpose check (purpose in ('setup', 'reset', 'demo')),
    member_id  integer references member (id),
    expires_at text not null,
    used_at    text
) strict;

-- A form that was kept, and what was answered: sent again, it has no second effect.
create table form_key (
    key    text primary key,
    at     text not null,
    place  text,
    saying text
) strict;

create index form_key_at on form_key (at);

-- Mail written in the change's own transaction, and sent afterwards.
create table outbox (
    id         integer primary key,
    message_id text not null unique,
    recipient  text not null,
    subject    text not null,
    body       text not null,
    made_at    text not null,
    due_at     text not null,
    tries      integer not null default 0,
    sent_at    text,
    trouble    text
) strict;
