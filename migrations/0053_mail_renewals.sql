-- Whether a member wants mail about papers that are to be renewed.
alter table mail_choice add column renewal integer not null default 1 constraint mail_choice_renewal check (renewal in (0, 1));
