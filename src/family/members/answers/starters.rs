//! Questions to begin with, and what each area is called when one speaks with the person.

use crate::platform::auth::area::AreaName;

/// The areas that have pages, each in plain words. An area that gets pages is one line more.
pub const AREAS: [(AreaName, &str); 8] = [
    (AreaName::Essentials, "allergies, contacts, the usual self and the emergency sheet"),
    (AreaName::Clinical, "medicines, conditions and operations"),
    (AreaName::Directives, "the directives"),
    (AreaName::Log, "the notes of what happened"),
    (AreaName::Papers, "papers and cards, who pays for what, and where the originals are"),
    (AreaName::Tasks, "what is to be done, and the appointments"),
    (AreaName::Members, "who shares this record"),
    (AreaName::History, "the history: who wrote or changed what"),
];

/// What to ask, for those who share the record.
pub fn starters(members: &[String]) -> Vec<String> {
    let mut all: Vec<String> = members.iter().flat_map(|it| about_member(it)).collect();
    all.push("May we keep this record?".to_owned());
    all.extend(AREAS.map(|(_, what)| format!("Who should not see {what}?")));
    all
}

/// What to ask about one member.
pub fn about_member(name: &str) -> Vec<String> {
    AREAS.map(|(_, what)| format!("May {name} see {what}?")).to_vec()
}
