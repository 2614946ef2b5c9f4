-- What a paper is about, besides the contact it came from: the directive whose scan it is, the visit or the appointment that it
-- belongs to, as `visit/7`. It says where the paper is found, and nothing more.
alter table paper add column about text constraint paper_about
    check (about glob 'directive/[0-9]*' or about glob 'visit/[0-9]*' or about glob 'appointment/[0-9]*');
