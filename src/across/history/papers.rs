//! How the history tells of papers: "Ines put in the tray scan.pdf", "Bram filed Medicare card as insurance
//! card". That a page was turned or moved is recorded, and not told.

use super::sentences::{Sentence, Words, new_text};
use crate::{platform::audit::read::Recorded, record::papers::model::about};

/// The sentence of an entry about a paper; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let new = |field: &str| new_text(entry, field, words.zone);
    if entry.kind == "paper_pair" {
        return Some(pair(words, entry, new("answer")));
    }
    if entry.kind != "paper" {
        return None;
    }
    let changed = |field: &str| entry.values.iter().any(|it| it.field == field);
    if entry.action == "edited" && entry.values.iter().all(|it| it.field == "about") {
        return Some(belongs(words, entry));
    }
    let (does, rest) = match (entry.action.as_str(), new("state").as_deref()) {
        ("added", _) => ("put in the tray", String::new()),
        (_, Some("filed")) => ("filed", format!("as {}", new("kind").unwrap_or_default())),
        (_, Some("joined")) => ("joined", "to another paper, as pages of that".to_owned()),
        _ if changed("replaced_by") => match new("replaced_by") {
            Some(_) => ("said that a newer version is in the place of", String::new()),
            None => ("said that there is no newer version of", String::new()),
        },
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes: Vec::new() })
}

/// "Ines said what Letter is about: Visit of 3 March 2026"; what the reader does not see is not named.
fn belongs(words: &Words, entry: &Recorded) -> Sentence {
    let new = new_text(entry, "about", words.zone);
    let of = new.as_deref().and_then(about).and_then(|(kind, item)| words.titles.of(kind, item));
    let rest = of.map(|it| format!("to {it}")).unwrap_or_default();
    let does = "said what a paper belongs to:".to_owned();
    let (at, who, things) = (entry.at, words.who(entry), Vec::from_iter(words.thing(entry)));
    Sentence { at, who, does, things, rest, changes: Vec::new() }
}

/// "Ines said of Letter and scan.jpg that they are two papers"
fn pair(words: &Words, entry: &Recorded, answer: Option<String>) -> Sentence {
    let (does, rest) = match answer.as_deref() {
        Some("not said") | None => ("took back what was said of", String::new()),
        Some(answer) => ("said of", format!("that they are {answer}")),
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who, does) = (entry.at, words.who(entry), does.to_owned());
    Sentence { at, who, does, things, rest, changes: Vec::new() }
}
