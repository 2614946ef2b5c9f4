-- What was read off a file is laid on the pages of papers that the file is, where the search finds it. A PDF has a form feed
-- between its pages: as JSON that is the mark \f, at which the text is taken apart.
create trigger paper_text_read after update of state on paper_text when new.state = 'read' begin
    insert into page_text (person_id, paper, page, place, text)
    select g.person_id, g.paper_id, g.id, g.place + part.key, trim(part.value, ' ' || char(10))
    from paper_page g, json_each('[' || replace(replace(json_quote(new.words), '\\', '\u005c'), '\f', '","') || ']') part
    where g.person_id = new.person_id and g.file = new.file;
end;

-- A page that goes to another place, or to another paper, takes its words along.
create trigger paper_page_moved after update of paper_id, place on paper_page begin
    update page_text set paper = new.paper_id, place = place - old.place + new.place where page = new.id;
end;

-- A file that was read already comes again as a page.
create trigger paper_page_added after insert on paper_page begin
    insert into page_text (person_id, paper, page, place, text)
    select new.person_id, new.paper_id, new.id, new.place + part.key, trim(part.value, ' ' || char(10))
    from paper_text t, json_each('[' || replace(replace(json_quote(t.words), '\\', '\u005c'), '\f', '","') || ']') part
    where t.person_id = new.person_id and t.file = new.file and t.state = 'read';
end;
