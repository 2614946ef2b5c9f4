//! How the history tells of cards and of what was refused at the counter: "Ines photographed anew ..",
//! "Bram wrote down that it is the plan's move: ..". Covers are told in the plain words.

use super::sentences::{Line, Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about a card or a refusal; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.action != "edited" {
        return None;
    }
    let new = |field: &str| new_text(entry, field, words.zone);
    let (does, rest, told) = match entry.kind.as_str() {
        "card" => card(&new)?,
        "refusal" => refusal(&new)?,
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let told = told
        .iter()
        .filter_map(|(field, label)| Some(Line { label, old: None, new: Some(new(field)?) }));
    let changes = told.collect();
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes })
}

/// The verb, what follows the thing, and the fields that are told beside the sentence.
type Said = (&'static str, String, &'static [(&'static str, &'static str)]);

fn card(new: &impl Fn(&str) -> Option<String>) -> Option<Said> {
    if let Some(year) = new("same_for") {
        return Some(("said that it stays the same:", format!("in {year}"), &[]));
    }
    let told: &[_] = &[("expires_on", "expires")];
    (new("front").is_some() || new("photographed_on").is_some())
        .then(|| ("photographed anew", String::new(), told))
}

fn refusal(new: &impl Fn(&str) -> Option<String>) -> Option<Said> {
    if let Some(how) = new("settled_how") {
        return Some(("settled", format!("as follows: {how}"), &[("settled_on", "settled")]));
    }
    if let Some(decision) = new("decision") {
        let told: &[_] = &[
            ("decided_on", "day of the decision"),
            ("decision_words", "words of the decision"),
            ("next_step", "next step by the notice"),
            ("next_by", "date printed on the notice"),
            ("mover", "who must act next"),
        ];
        return Some(("wrote down the plan’s answer about", format!("which is: {decision}"), told));
    }
    if let Some(at) = new("statement_at") {
        let does = "wrote down the prescriber’s statement about";
        return Some((does, format!("which the plan has since {at}"), &[]));
    }
    let mover = new("mover")?;
    let told: &[_] = &[("mover_since", "since when it is their move")];
    Some(("handed on", format!("to: the {mover}"), told))
}
