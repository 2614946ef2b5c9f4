-- What was fetched from a pharmacy, as the label and the receipt say it.
create table fill (
    id              integer primary key,
    person_id       integer not null references person (id),
    medicine_id     integer not null references medicine (id),
    filled_on       text not null,
    amount          text not null,      -- with what is counted: "60 tablets"
    label_days      integer constraint fill_label_days check (label_days between 1 and 366),
    pharmacy        text,
    pharmacy_days   integer constraint fill_pharmacy_days check (pharmacy_days between 1 and 30),
    refills_left    integer constraint fill_refills_left check (refills_left between 0 and 99),
    written_on      text,               -- the day the prescription was written
    expires_on      text,               -- the prescription's own last day, where its label has one
    class           text not null constraint fill_class check (class in ('none known', 'II', 'III', 'IV', 'V')),
    earliest_refill text,               -- the first day it is filled again, as the pharmacy said
    entered_by      integer not null references member (id),
    entered_at      text not null,
    struck          integer not null default 0 constraint fill_struck check (struck in (0, 1)),
    version         integer not null default 1
) strict;

create index fill_of_medicine on fill (person_id, medicine_id);

-- How much was in the house on a day, counted by someone.
create table stock_count (
    id          integer primary key,
    person_id   integer not null references person (id),
    medicine_id integer not null references medicine (id),
    counted_on  text not null,
    amount      text not null,
    entered_by  integer not null references member (id),
    entered_at  text not null,
    struck      integer not null default 0 constraint stock_count_struck check (struck in (0, 1)),
    version     integer not null default 1
) strict;

create index stock_count_of_medicine on stock_count (person_id, medicine_id);

-- Days on which a medicine was not taken, between a hold or a stop and its being brought back.
create table pause (
    id          integer primary key,
    person_id   integer not null references person (id),
    medicine_id integer not null references medicine (id),
    from_on     text not null,
    until_on    text not null,          -- the last of them
    version     integer not null default 1,
    constraint pause_order check (until_on >= from_on)
) strict;

create index pause_of_medicine on pause (person_id, medicine_id);

-- How many working days a pharmacy needs, where no fill says it of its own.
create table supply_setting (
    id            integer primary key,
    person_id     integer not null unique references person (id),
    pharmacy_days integer not null constraint supply_setting_days check (pharmacy_days between 1 and 30),
    version       integer not null default 1
) strict;
