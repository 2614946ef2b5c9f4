-- The words of a file that is a page of a paper, as a program made them out, and what is still to be read: the queue is here,
-- so that a kill loses nothing of it. Machinery: read again from the file the words would be the same. Nobody comes to them
-- but through a page of a paper that she sees.
create table paper_text (
    id         integer primary key,
    person_id  integer not null references person (id),
    file       text not null,            -- SHA-256 of the file
    form       text not null constraint paper_text_form check (form in ('picture', 'pdf')),
    state      text not null constraint paper_text_state check (state in ('waiting', 'read', 'not read')),
    tries      integer not null default 0,
    due_at     text not null,            -- not before this
    settled_at text,
    words      text,
    recognized integer constraint paper_text_recognized check (recognized in (0, 1)),  -- made out from a picture
    goes_on    integer constraint paper_text_goes_on check (goes_on in (0, 1)),        -- has more pages than were read
    reason     text,                     -- why it was not read, so far or for good
    constraint paper_text_file unique (person_id, file),
    constraint paper_text_read check ((state = 'read') = (words is not null)),
    constraint paper_text_not check (state <> 'not read' or reason is not null)
) strict;

create index paper_text_due on paper_text (state, due_at);
