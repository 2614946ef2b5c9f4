//! How the history tells of what each carries, and of who wishes to be shown. It is told only to
//! those who see the entry itself: the titles are the store's.

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about it; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str()) {
        ("carried", "added") => {
            let of = new("name").map(|it| format!("of {it}, who does not sign in"));
            ("wrote down", of.unwrap_or_default())
        }
        ("carried_wish", "added" | "edited") => wish(words, entry)?,
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes: Vec::new() })
}

fn wish(words: &Words, entry: &Recorded) -> Option<(&'static str, String)> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let rest = match new("hides")?.as_str() {
        "yes" => "that it is not to be shown",
        _ => "that it may be shown",
    };
    let by = new("said_by").map(|it| format!(", said by {it}")).unwrap_or_default();
    let on = new("said_on").map(|it| format!(" on {it}")).unwrap_or_default();
    Some(("wrote down about", format!("{rest}{by}{on}")))
}
