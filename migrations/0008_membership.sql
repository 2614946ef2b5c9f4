-- A place stands, is paused until that is taken back, or has ended. An ended one stays, so that
-- its history has something to point at, and is filled again by a new invitation.
alter table membership add column state text not null default 'standing'
    constraint membership_state check (state in ('standing', 'paused', 'ended'));
-- When that last turned; empty as long as it never did.
alter table membership add column turned_at text;
-- Areas lowered for this one member: "clinical: see only, directives: nothing".
alter table membership add column lowered text not null default '';

-- An invitation to share one person's record. Its link holds a token; here is only the SHA-256,
-- and in a backup not even that: a link that was used or taken back must not work again after a
-- restore.
create table invitation (
    id          integer primary key,
    person_id   integer not null,
    name        text not null,      -- for whom, as the one who invites calls her
    email       text,
    role        text not null constraint invitation_role check (role in ('person', 'steward', 'relative', 'aide', 'reader')),
    invited_by  integer not null references member (id),
    expires_at  text not null,
    token       text unique,
    state       text not null constraint invitation_state check (state in ('open', 'accepted', 'taken back')),
    accepted_by integer references member (id),
    version     integer not null default 1,
    constraint invitation_accepted check ((state = 'accepted') = (accepted_by is not null))
) strict;
