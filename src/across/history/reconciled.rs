//! How the history tells of second lists: one sentence for all rows that were settled alike.

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about a list, a line, a settled row or a pair; none where the plain
/// words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let state = new("state").unwrap_or_default();
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str(), state.as_str()) {
        ("second_list", "added", _) => ("took in the", String::new()),
        ("second_list", _, "finished") => ("finished comparing the", String::new()),
        ("second_list", _, "open") => ("opened again the comparison with the", String::new()),
        ("second_list", _, "struck") => {
            let why = new("struck_reason").map(|it| format!("with the reason: {it}"));
            ("struck as a mistake the", why.unwrap_or_default())
        }
        ("second_list_line", "added", _) => ("copied from the paper", String::new()),
        ("settled_row", "added", _) => (settled(new("decision").as_deref()), String::new()),
        ("settled_row", ..) => ("took back what was accepted of", String::new()),
        ("same_ingredient", "added", _) => ("confirmed", "to be of one ingredient".to_owned()),
        ("same_ingredient", ..) => ("took back that", "are of one ingredient".to_owned()),
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes: Vec::new() })
}

fn settled(decision: Option<&str>) -> &'static str {
    match decision {
        Some("accepted") => "accepted from the list",
        Some("asked") => "made a question of",
        _ => "compared with the list and left as it is",
    }
}
