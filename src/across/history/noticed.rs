//! How the history tells of what was noticed: "Delia noticed Ate half a slice of toast". On which
//! sheet it stands is told without the visit, which may be hidden from the reader.

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about an observation; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.kind != "observation" {
        return None;
    }
    let new = |field: &str| new_text(entry, field, words.zone);
    let changed = |field: &str| entry.values.iter().any(|it| it.field == field);
    let name = words.titles.person().unwrap_or("the person");
    let (does, rest) = if entry.action == "added" {
        ("noticed".to_owned(), format!("on {}", new("seen_on").unwrap_or_default()))
    } else if changed("answer") {
        answered(name, new("answer"), new("answer_for_her").as_deref())
    } else if changed("clinician_only") {
        kept(name, new("clinician_only").as_deref(), new("on_behalf").as_deref())
    } else if changed("off_sheets") || changed("appointment_id") || changed("occurrence_on") {
        ticked(name, new("off_sheets").as_deref(), new("appointment_id").is_some())
    } else {
        return None;
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}

fn answered(name: &str, answer: Option<String>, for_her: Option<&str>) -> (String, String) {
    let Some(answer) = answer else { return ("took away the answer to".into(), String::new()) };
    let does = match for_her {
        Some("yes") => format!("wrote down what {name} says of"),
        Some(_) => "answered".to_owned(),
        None => "wrote anew the answer to".to_owned(),
    };
    (does, format!("with “{answer}”"))
}

fn kept(name: &str, only: Option<&str>, behalf: Option<&str>) -> (String, String) {
    let behalf = match behalf {
        Some("yes") => format!(", on {name}'s behalf"),
        _ => String::new(),
    };
    match only {
        Some("yes") => ("kept".into(), format!("for the clinician only{behalf}")),
        _ => ("showed".into(), "to the family again".into()),
    }
}

fn ticked(name: &str, off: Option<&str>, on_sheet: bool) -> (String, String) {
    match (off, on_sheet) {
        (Some("yes"), _) => ("took".into(), format!("off the sheets, as {name} wishes")),
        (_, true) => ("put".into(), "on the sheet of a visit".into()),
        (_, false) => ("took".into(), "off the sheet of a visit".into()),
    }
}
