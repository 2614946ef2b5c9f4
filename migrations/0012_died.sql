-- The day the person died, who entered it, and who told of it: all three or none.
alter table person add column died_on text;
alter table person add column died_by integer references member (id);
alter table person add column died_told_by text
    constraint died_complete check ((died_on is null) = (died_by is null) and (died_on is null) = (died_told_by is null));
-- Why it was taken back, where it was.
alter table person add column died_undone text;
