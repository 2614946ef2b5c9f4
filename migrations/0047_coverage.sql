-- What pays for the person's care and medicines: one row for each cover. The numbers are shown
-- masked, and the history keeps only that one was changed.
create table cover (
    id             integer primary key,
    person_id      integer not null references person (id),
    payer          text not null,
    plan           text,
    kind           text not null constraint cover_kind check (kind in
        ('Original Medicare', 'Medicare Advantage', 'drug plan', 'supplement', 'long-term care',
            'veterans', 'Medicaid', 'other')),
    calendar_year  integer not null default 0 constraint cover_calendar_year check (calendar_year in (0, 1)),
    member_number  text,
    group_number   text,
    rx_bin         text,            -- what a pharmacy routes a claim by: six digits
    rx_pcn         text,
    rx_group       text,
    phone          text,            -- the customer line
    hours          text,            -- when it answers, in words
    talks          text,            -- who may talk to them
    talks_until    text,
    from_on        text,
    until_on       text,            -- the last day
    struck         integer not null default 0 constraint cover_struck check (struck in (0, 1)),
    struck_reason  text,
    version        integer not null default 1,
    constraint cover_order check (from_on is null or until_on is null or until_on >= from_on)
) strict;

create index cover_of_person on cover (person_id);
