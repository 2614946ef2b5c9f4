//! How the history tells of doses: "Delia entered a dose of Warfarin, 25 November 2026, in the
//! evening: given, by Delia", and that the log was turned on or off.

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of a dose that was entered, or of the log turned; none where it is something else.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str()) {
        ("log_keeping", _) => match new("standing")?.as_str() {
            "yes" => ("turned on the log of doses for", String::new()),
            _ => ("turned off the log of doses for", String::new()),
        },
        ("given", "added") => ("entered the dose", said(&new)),
        _ => return None,
    };
    Some(Sentence {
        at: entry.at,
        who: words.who(entry),
        does: does.to_owned(),
        things: Vec::from_iter(words.thing(entry)),
        rest,
        changes: Vec::new(),
    })
}

/// "as given, 1 tablet, by Emeric, at Wed 25 Nov 2026, 3:05 pm"
fn said(new: &impl Fn(&str) -> Option<String>) -> String {
    let outcome = new("outcome").unwrap_or_else(|| "erased".into());
    let outcome = match outcome.as_str() {
        "given" => "as given".to_owned(),
        "other" => "as not given".to_owned(),
        other => format!("as not given, {other}"),
    };
    let amount = new("amount").zip(new("unit")).map(|(amount, unit)| format!("{amount} {unit}"));
    let by = new("given_name").map(|it| format!("by {it}"));
    let (at, note) = (new("at").map(|it| format!("at {it}")), new("note"));
    [Some(outcome), amount, by, at, note].into_iter().flatten().collect::<Vec<_>>().join(", ")
}
