-- What stands on the pages of papers, word by word, so that it is found again. The text is read off the files of the
-- papers; nobody enters it, so no history tells of it.
create table page_text (
    id        integer primary key,
    person_id integer not null references person (id),
    paper     integer not null,
    page      integer,              -- the row of paper_page that it was read off
    place     integer not null,     -- which page of the paper
    text      text not null
) strict;

create index page_text_of_paper on page_text (person_id, paper, place);
create index page_text_of_page on page_text (page);

-- The index of those words. Accents are folded: "metoprolol" finds "métoprolol". Beginnings of two and three letters
-- have an index of their own.
create virtual table page_word using fts5(text, content = 'page_text', content_rowid = 'id',
    tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3');

-- Every word there is, for one that was mistyped.
create virtual table page_vocabulary using fts5vocab('page_word', 'row');

-- How often a page was changed, and whether the index is whole: a backup leaves the index out.
create table page_mark (
    id      integer primary key constraint page_mark_one check (id = 1),
    changes integer not null,
    whole   integer not null constraint page_mark_whole check (whole in (0, 1))
) strict;
insert into page_mark (id, changes, whole) values (1, 0, 1);

-- The index follows the pages by itself, in the same transaction, whoever writes them.
create trigger page_text_added after insert on page_text begin
    insert into page_word (rowid, text) values (new.id, new.text);
    update page_mark set changes = changes + 1;
end;

create trigger page_text_removed after delete on page_text begin
    insert into page_word (page_word, rowid, text) values ('delete', old.id, old.text);
    update page_mark set changes = changes + 1;
end;

create trigger page_text_changed after update on page_text begin
    insert into page_word (page_word, rowid, text) values ('delete', old.id, old.text);
    insert into page_word (rowid, text) values (new.id, new.text);
    update page_mark set changes = changes + 1;
end;
