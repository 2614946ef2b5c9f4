//! How the history tells of a question: "Bram will ask Is it taken with food?". Who will ask and
//! what became of it have words of their own.

use super::sentences::{Sentence, Words, new_text};
use crate::base::ids::MemberId;
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about a question; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.kind != "question" {
        return None;
    }
    let new = |field: &str| new_text(entry, field, words.zone);
    let changed = |field: &str| entry.values.iter().any(|it| it.field == field);
    let (does, rest) = match (entry.action.as_str(), new("state").as_deref()) {
        ("added", _) => {
            let whom = new("clinician").or_else(|| new("for_whom").map(|it| format!("the {it}")));
            ("wrote down the question", whom.map(|it| format!("for {it}")).unwrap_or_default())
        }
        (_, Some("asked")) => ("asked", new("asked_on").map(on).unwrap_or_default()),
        (_, Some("answered")) => {
            let by = new("answered_by").map(|it| format!(", by {it}")).unwrap_or_default();
            let answer = new("answer").unwrap_or_default();
            (
                "wrote down the answer to",
                format!("{}{by}: {answer}", new("answered_on").map(on).unwrap_or_default()),
            )
        }
        (_, Some("let go")) => {
            let why = new("let_go_reason").map(|it| format!("with the reason: {it}"));
            ("let go of the question", why.unwrap_or_default())
        }
        (_, Some("open")) => ("opened again", String::new()),
        _ if changed("ask_order") => ("moved in the order of asking:", String::new()),
        _ if changed("owner_id") => return Some(owner(words, entry)),
        _ => return None,
    };
    Some(sentence(words, entry, (does, rest)))
}

fn on(day: String) -> String {
    format!("on {day}")
}

fn owner(words: &Words, entry: &Recorded) -> Sentence {
    let owner = new_text(entry, "owner_id", words.zone).and_then(|it| it.parse::<i64>().ok());
    let said = match owner.map(MemberId::from) {
        None => ("said that nobody will ask yet", String::new()),
        Some(owner) if owner == entry.actor => ("will ask", String::new()),
        Some(owner) => ("handed on", format!("to {}", words.names.of(owner))),
    };
    sentence(words, entry, said)
}

fn sentence(words: &Words, entry: &Recorded, (does, rest): (&str, String)) -> Sentence {
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Sentence { at, who, does: does.to_owned(), things, rest, changes: Vec::new() }
}
