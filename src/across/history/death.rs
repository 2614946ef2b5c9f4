//! How the history tells of a death: "Ines wrote down that Ottoline Varga died on 3 March 2026,
//! told by the hospice nurse". It has its own words, since no list of changed fields is fit to.

use super::sentences::{Sentence, Words, new_text, old_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about a death; none where it is about something else.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let about = entry.kind == "person" && entry.action == "edited";
    if !about || !entry.values.iter().any(|it| it.field == "died_on") {
        return None;
    }
    let [new, old] = [new_text, old_text].map(|it| it(entry, "died_on", words.zone));
    let (does, rest) = match (new, old) {
        (Some(day), _) => {
            let by = new_text(entry, "died_told_by", words.zone);
            let by = by.map(|it| format!(", told by {it}")).unwrap_or_default();
            ("wrote down that", format!("died on {day}{by}"))
        }
        (None, Some(day)) => {
            let why = new_text(entry, "died_undone", words.zone);
            let why = why.map(|it| format!(": {it}")).unwrap_or_default();
            ("took back that", format!("died on {day}{why}"))
        }
        // Both were erased.
        (None, None) => ("changed what is written of the death of", String::new()),
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
