-- A question can be for one of the contacts; then `clinician` is the contact's name as it was.
alter table question add column contact_id integer references contact (id);
-- Its place among the questions for the same clinician. None: that of its id; a press swaps two places.
alter table question add column ask_order integer;
-- The starter question that it came from, by its key in the list of starter questions.
alter table question add column starter text;

create index question_for_contact on question (contact_id);
