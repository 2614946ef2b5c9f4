//! What is told of the person's answers: "Ines wrote down the answer to May Bram see the history?
//! (no, asked by Ines in person on 3 March 2026)".

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about an answer; none for any other kind.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.kind != "answer" {
        return None;
    }
    let new = |field: &str| new_text(entry, field, words.zone);
    let (does, rest) = match (entry.action.as_str(), new("state").as_deref()) {
        ("added", _) => ("wrote down the answer to", said(words, entry)),
        (_, Some("replaced")) => ("put a newer answer in place of the one to", String::new()),
        (_, Some("struck")) => {
            let why = new("struck_reason").unwrap_or_default();
            ("struck as a mistake the answer to", format!("with the reason: {why}"))
        }
        _ => ("brought back the answer to", String::new()),
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who, does) = (entry.at, words.who(entry), does.to_owned());
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}

/// "(hide Sertraline from Bram, asked by Ines in person on 3 March 2026)"
fn said(words: &Words, entry: &Recorded) -> String {
    let new = |field: &str| new_text(entry, field, words.zone);
    let said = match (new("hide_what"), new("hide_from")) {
        (Some(what), Some(from)) => format!("hide {what} from {from}"),
        _ => new("said").unwrap_or_default(),
    };
    let on = new("asked_on").unwrap_or_default();
    let by = new("asked_by").and_then(|it| it.parse::<i64>().ok());
    match (by, new("how")) {
        (Some(by), Some(how)) => {
            format!("({said}, asked by {} {how} on {on})", words.names.of(by.into()))
        }
        _ => format!("({said}, not asked, on {on})"),
    }
}
