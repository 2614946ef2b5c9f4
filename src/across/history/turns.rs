//! How the history tells of turns and of who was told: "Ines wrote down the change Warfarin, put on
//! hold from 9 March 2026, said Dr Oyelaran: low pulse".

use super::sentences::{Sentence, Words, new_text};
use crate::platform::audit::read::Recorded;

/// The sentence of an entry about a turn or a telling; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let changed = |field: &str| entry.values.iter().any(|it| it.field == field);
    let said = |by: Option<String>| by.map(|it| format!("said {it}"));
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str()) {
        ("turn", "added") => {
            let planned = new("planned").as_deref() == Some("yes");
            let verb = if planned { "planned" } else { "wrote down the change" };
            let resume = new("resume_on").map(|it| format!("; to resume on {it}"));
            let said = said(new("said_by")).unwrap_or_default();
            let reason = new("reason").map(|it| format!(": {it}")).unwrap_or_default();
            (verb, format!("{said}{reason}{}", resume.unwrap_or_default()))
        }
        ("turn", _) if new("planned").as_deref() == Some("no") => {
            ("said that it was done:", "".into())
        }
        ("turn", _) if changed("question_id") => ("will ask when to resume:", "".into()),
        ("turn", _) if changed("resume_on") || changed("resume_by") => {
            let said = said(new("resume_by")).map(|it| format!(", {it}")).unwrap_or_default();
            let day = new("resume_on").map(|it| format!("to {it}")).unwrap_or_default();
            ("set the day to resume", format!("{day}{said}"))
        }
        ("telling", "added") => {
            let how = new("how").map(|it| format!(", {it}")).unwrap_or_default();
            ("told", format!("on {}{how}", new("told_on").unwrap_or_default()))
        }
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes: Vec::new() })
}
