-- What a question names beside what it is about, as JSON: [["allergy", 3], ["medicine", 7]]. Whoever
-- may not see one of these does not see the question.
alter table question add column names text;
