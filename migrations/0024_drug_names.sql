-- Names of medicines from a list that the one who runs the server brought in (`import-names`): for
-- completing and proposing, and nobody's record. No history tells of them, and a backup leaves
-- them out.
create table drug_name (
    id   integer primary key,
    name text not null collate nocase,
    kind text not null constraint drug_name_kind check (kind in ('ingredient', 'brand'))
) strict;

create unique index drug_name_once on drug_name (name, kind);

-- A brand, and one ingredient of what is sold under it.
create table drug_brand (
    id         integer primary key,
    brand      text not null collate nocase,
    ingredient text not null collate nocase
) strict;

create unique index drug_brand_once on drug_brand (brand, ingredient);
