//! How the history tells of directives: "Ines wrote down as voided: Living will of 3 May 2022", "gave a
//! copy". Only who reads the directives is told; who is named in one only where she is shown.

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about a directive; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str()) {
        ("directive", "edited") => changed(words, entry)?,
        ("directive_copy", "added") => ("wrote down a copy given:".to_owned(), String::new()),
        ("directive_copy", "edited") => told(words, entry)?,
        ("directive_event", "added") => ("wrote down what happened:".to_owned(), String::new()),
        ("directive_aside", _) => aside(words, entry),
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}

fn changed(words: &Words, entry: &Recorded) -> Option<(String, String)> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let has = |field: &str| entry.values.iter().any(|it| it.field == field);
    let said = |does: &str, rest: String| Some((does.to_owned(), rest));
    match new("state").as_deref() {
        Some("void") => {
            let (on, by) = (new("voided_on")?, new("voided_by")?);
            let how = new("voided_how").unwrap_or_default();
            return said("wrote down as voided:", format!("on {on} by {by}: {how}"));
        }
        Some("superseded") => return said("wrote down as superseded by another:", String::new()),
        Some("in force") => {
            return match new("signed_on") {
                Some(on) => said("wrote down as signed:", format!("on {on}")),
                None => said("wrote down that it stands after all:", String::new()),
            };
        }
        _ => {}
    }
    if has("reviewed_on") || has("reviewed_by") || has("reviewed_why") {
        let why = new("reviewed_why").map(|it| format!("with the reason: {it}"));
        return said("looked again at", why.unwrap_or_default());
    }
    if has("differs_from") || has("differs_in") {
        return match new("differs_in") {
            Some(what) => {
                said("marked as saying something else than another:", format!("in {what}"))
            }
            None => said("took off the mark that it says something else:", String::new()),
        };
    }
    let named = ["agent_id", "alternate_id", "second_alternate_id", "holder_id"];
    if entry.values.iter().all(|it| named.contains(&it.field.as_str())) {
        return said("changed who is named in", who_is_named(words, entry));
    }
    None
}

/// "agent: Ines Varga; holder: nobody"
fn who_is_named(words: &Words, entry: &Recorded) -> String {
    let fields = [
        ("agent_id", "agent"),
        ("alternate_id", "alternate agent"),
        ("second_alternate_id", "second alternate agent"),
        ("holder_id", "who holds the original"),
    ];
    let said = fields.into_iter().filter_map(|(field, what)| {
        entry.values.iter().find(|it| it.field == field)?;
        let id = new_text(entry, field, words.zone).and_then(|it| it.parse::<i64>().ok());
        let name = id
            .map_or("nobody", |it| words.titles.of("contact", it).unwrap_or("one of the contacts"));
        Some(format!("{what}: {name}"))
    });
    said.collect::<Vec<_>>().join("; ")
}

fn told(words: &Words, entry: &Recorded) -> Option<(String, String)> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let how = new("told_how").map(|it| format!("with the words: {it}"));
    let heard = entry.values.iter().any(|it| matches!(it.field.as_str(), "told_on" | "told_how"));
    heard.then(|| {
        let does = "wrote down who was told that it does not hold any more:".to_owned();
        (does, how.unwrap_or_default())
    })
}

fn aside(words: &Words, entry: &Recorded) -> (String, String) {
    let new = |field: &str| new_text(entry, field, words.zone);
    match new("standing").as_deref() {
        Some("no") => ("said that it is to be looked at after all:".to_owned(), String::new()),
        _ => {
            let why = new("reason").map(|it| format!("with the reason: {it}"));
            ("put aside".to_owned(), why.unwrap_or_default())
        }
    }
}
