-- The birth date that stands on a second list, where it has one: another one than the person's may
-- mean another person's paper.
alter table second_list add column born text;
