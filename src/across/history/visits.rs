//! How the history tells of visits: "Ines wrote the note of the visit Dr Lind, 12 November 2026", and
//! of who should read it and said that she had.

use super::sentences::{Sentence, Words, new_text};
use crate::base::ids::MemberId;
use crate::platform::audit::read::Recorded;

const NO_MORE: &str = "took someone off the readers of the note of the visit";
const AGAIN: &str = "asked someone again to read the note of the visit";

/// The sentence of an entry about a note or a reader of it; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let changed = |field: &str| entry.values.iter().any(|it| it.field == field);
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str()) {
        ("visit", "added") => ("wrote the note of the visit".to_owned(), String::new()),
        ("visit", _) if changed("present") && entry.values.len() == 1 => {
            ("put right who was there at the visit".to_owned(), String::new())
        }
        ("visit_reader", "added") => {
            let id = new_text(entry, "member_id", words.zone).and_then(|it| it.parse::<i64>().ok());
            let whom = id.map_or("someone", |it| words.names.of(MemberId::from(it))).to_owned();
            (format!("asked {whom} to read the note of the visit"), String::new())
        }
        ("visit_reader", "removed") => (NO_MORE.to_owned(), String::new()),
        ("visit_reader", _) if changed("standing") => {
            let again = new_text(entry, "standing", words.zone).as_deref() == Some("yes");
            (if again { AGAIN } else { NO_MORE }.to_owned(), String::new())
        }
        ("visit_reader", _) => ("has read the note of the visit".to_owned(), String::new()),
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}
