-- What the history is asked for, newest first, without reading all of it: of a whole record, of one
-- member, of one area, of one item. (An index ends with the entry's id, so each comes in its order.)
create index history_of_chain on history (chain);
create index history_of_actor on history (chain, actor);
create index history_of_area on history (chain, area);
drop index history_of_item;
create index history_of_item on history (chain, kind, item);

-- Whether a refusal was told within the hour.
create index history_refused on history (chain, actor, area, at) where action = 'refused';

create index print_of_person on print (person_id);
