-- What mail and calendar feeds may say of this record: nothing but what kind of thing and when, or
-- titles and clinicians' names as well. Never a diagnosis, a medicine or a directive.
alter table person add column mail_says text not null default 'nothing'
    constraint person_mail_says check (mail_says in ('nothing', 'names'));

-- The outbox, made anew: each message with what it is about, whether it is waiting, sent, given up
-- or withdrawn, and what the mail server said last. What was written is forgotten when it is
-- settled; the row stays, so that nothing is mailed twice.
create table outbox_made_anew (
    id         integer primary key,
    message_id text not null unique,      -- with its domain, and the same on every try
    -- Of a reminder these six are its key; a letter (an invitation, a new password) has none.
    kind       text not null,
    item_kind  text not null default '',
    item       integer not null default 0,
    occurrence text not null default '',
    member_id  integer references member (id),  -- none: she does not sign in here yet
    person_id  integer,                   -- none: it is about the house itself
    -- What its reader must reach at the moment of sending; empty: nothing.
    area       text not null default '',
    recipient  text not null,
    subject    text not null,
    body       text not null,
    html       text,
    stop_link  text,                      -- leads to the page that stops such mail
    stop_token text unique,               -- the SHA-256 of the token in it
    made_at    text not null,
    due_at     text not null,             -- when it is tried next
    until_at   text,                      -- when it is of no more use
    tries      integer not null default 0,
    state      text not null default 'waiting'
        constraint outbox_state check (state in ('waiting', 'sent', 'given up', 'withdrawn')),
    settled_at text,
    trouble    text,
    constraint outbox_settled check ((state = 'waiting') = (settled_at is null))
) strict;

insert into outbox_made_anew (id, message_id, kind, recipient, subject, body, made_at, due_at, tries, state, settled_at, trouble)
select id, message_id || '@kinsheaf', 'letter', recipient, subject, case when sent_at is null then body else '' end,
    made_at, due_at, tries, case when sent_at is null then 'waiting' else 'sent' end, sent_at, trouble
from outbox;

drop table outbox;
alter table outbox_made_anew rename to outbox;

create unique index outbox_key on outbox (kind, item_kind, item, occurrence, member_id, person_id) where kind <> 'letter';
create index outbox_waiting on outbox (due_at) where state = 'waiting';
create index outbox_settled on outbox (state, settled_at);
