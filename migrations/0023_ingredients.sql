-- What is in a medicine, read off its label: one row for each ingredient of each product. Amounts
-- are in thousandths.
create table ingredient (
    id          integer primary key,
    person_id   integer not null references person (id),
    medicine_id integer not null references medicine (id),
    name        text not null,
    amount      integer constraint ingredient_some check (amount > 0),
    unit        text,               -- mg, mcg, g, mL, units
    per         integer not null constraint ingredient_per check (per > 0),    -- in how much of the product
    counted     text not null,      -- what of the product is counted: tablet, mL
    most        integer constraint ingredient_most_some check (most > 0),      -- the label's most in 24 hours
    most_unit   text,
    entered_by  integer not null references member (id),
    entered_at  text not null,
    struck      integer not null default 0 constraint ingredient_struck check (struck in (0, 1)),
    version     integer not null default 1,
    constraint ingredient_amount check ((amount is null) = (unit is null)),
    constraint ingredient_most check ((most is null) = (most_unit is null))
) strict;

create index ingredient_of_medicine on ingredient (person_id, medicine_id);
