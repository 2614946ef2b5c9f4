-- What is to be renewed: an entry of the family's own, or what was said of something that is kept elsewhere and has a last day
-- (a prescription, a yearly window). When to begin is reckoned at each look, and never stored.
create table renewal (
    id             integer primary key,
    person_id      integer not null references person (id),
    about_kind     text,            -- of something kept elsewhere: its kind and its number
    about_item     integer,
    title          text,            -- of an entry of the family's own
    rule           text not null,   -- by its words in the dated list of rules
    last_on        text,            -- the last day on which it holds; of something kept elsewhere: the new one
    every_months   integer constraint renewal_every check (every_months between 1 and 240),
    issuer_days    integer constraint renewal_issuer_days check (issuer_days between 0 and 730),
    form_days      integer constraint renewal_form_days check (form_days between 0 and 250),
    note           text,
    held_on        text,            -- the last day that what follows was said of: a newer one, and it is said no more
    renewer_id     integer references member (id),
    renewing_since text,
    lapsed_on      text,            -- someone said that it is let lapse
    lapsed_reason  text,
    struck         integer not null default 0 constraint renewal_struck check (struck in (0, 1)),
    struck_reason  text,
    version        integer not null default 1,
    constraint renewal_whose check ((about_kind is null) = (about_item is null)
        and (about_kind is null) = (title is not null) and (title is null or last_on is not null)),
    constraint renewal_renewing check ((renewer_id is null) = (renewing_since is null)),
    constraint renewal_lapsed check ((lapsed_on is null) = (lapsed_reason is null)),
    unique (person_id, about_kind, about_item)
) strict;
