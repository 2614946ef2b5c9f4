//! How the history tells of what is to be renewed: "Bram renews Passport since 25 November 2026".

use super::sentences::{Sentence, Words, new_text};
use crate::{across::renewals::item::WINDOW, base::ids::MemberId, platform::audit::read::Recorded};

/// What is told by one of the sentences below, and by no line of its own.
const TURNS: [&str; 6] =
    ["last_on", "held_on", "renewer_id", "renewing_since", "lapsed_on", "lapsed_reason"];

/// The sentence of an entry about it; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.kind != "renewal" {
        return None;
    }
    let new = |field: &str| new_text(entry, field, words.zone);
    let turned = entry.values.iter().all(|it| TURNS.contains(&it.field.as_str()));
    let added = entry.action == "added";
    let (does, rest) = if let Some(why) = new("lapsed_reason") {
        ("let lapse".to_owned(), format!("with the reason: {why}"))
    } else if let Some(by) = new("renewer_id") {
        renewer(words, entry, &by, &new("renewing_since").unwrap_or_default())
    } else if added && new("about_kind").as_deref() == Some(WINDOW) && new("last_on").is_some() {
        ("said that nothing more is to be done:".into(), String::new())
    } else if added && new("title").is_some() {
        let last = new("last_on").unwrap_or_default();
        ("wrote down to be renewed:".into(), format!("with the last day {last}"))
    } else if let Some(until) = new("last_on").filter(|_| turned) {
        ("noted as renewed or done:".into(), format!("with the last day {until}"))
    } else if turned {
        ("said that it stands again:".into(), String::new())
    } else {
        return None;
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}

fn renewer(words: &Words, entry: &Recorded, by: &str, since: &str) -> (String, String) {
    let by = MemberId::from(by.parse::<i64>().unwrap_or_default());
    match by == entry.actor {
        true => ("renews".into(), format!("since {since}")),
        false => (format!("said that {} renews", words.names.of(by)), format!("since {since}")),
    }
}
