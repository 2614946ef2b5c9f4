//! How the history tells of a decision: "Ines wrote down the decision on Whether the bedroom moves
//! downstairs: decided by Ottoline, it is the person's own decision".

use super::sentences::{Line, Sentence, Words, new_text};
use crate::{
    family::decisions::right::Right, platform::audit::read::Recorded, platform::web::form::Choice,
};

/// What is told beside the sentence, where it has just been written down.
const TOLD: [(&str, &str); 6] = [
    ("decided", "what was decided"),
    ("reasons", "why"),
    ("heard_others", "who else was heard"),
    ("her_words", "the person's own words"),
    ("not_asked", "why the person was not asked"),
    ("look_again_on", "day to look again"),
];

/// The sentence of an entry about a decision; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.kind != "decision" {
        return None;
    }
    let new = |field: &str| new_text(entry, field, words.zone);
    let changed = |field: &str| entry.values.iter().any(|it| it.field == field);
    let mut changes = Vec::new();
    let (does, rest) = match (entry.action.as_str(), new("state").as_deref()) {
        ("added", _) => ("put up to be decided:", String::new()),
        (_, Some("decided")) if changed("decided") => {
            let told = TOLD.into_iter().filter_map(|(field, label)| {
                Some(Line { label, old: None, new: Some(new(field)?) })
            });
            changes.extend(told);
            (
                "wrote down the decision on",
                decided(new("decider"), new("by_right"), new("right_words")),
            )
        }
        (_, Some("decided" | "open")) => ("brought back the decision on", String::new()),
        (_, Some("replaced")) => ("replaced the decision on", "by another".to_owned()),
        (_, Some("withdrawn")) => {
            let why = new("withdrawn_reason").unwrap_or_default();
            ("withdrew the decision on", format!("with the reason: {why}"))
        }
        _ if entry.values.len() == 1 && changed("place") => {
            ("moved in the order of the meeting:", String::new())
        }
        _ if entry.values.len() == 1 && changed("look_again_on") => match new("look_again_on") {
            Some(on) => ("left as it is", format!("until {on}")),
            None => ("left as it is", String::new()),
        },
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes })
}

/// "decided by Ines, by power of attorney for health care"
fn decided(by: Option<String>, right: Option<String>, other: Option<String>) -> String {
    let named = || right.as_deref().and_then(Right::named).map(|it| it.words().to_owned());
    let right = other.or_else(named).map(|it| format!(", {it}")).unwrap_or_default();
    by.map(|by| format!("decided by {by}{right}")).unwrap_or_default()
}
