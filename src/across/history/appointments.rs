//! How the history tells of appointments: "Ines booked Eye test for 3 March 2026, 9:30 am", "Bram will go along to", "moved".

use super::sentences::{Sentence, Words, new_text};
use crate::{
    base::{ids::MemberId, recurrence::Rule, time_of_day::TimeOfDay},
    platform::audit::read::Recorded,
    record::appointments::repeat::Repeat,
};
use time::Date;

/// The sentence of an entry about an appointment; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let (does, rest) = match (entry.kind.as_str(), entry.action.as_str()) {
        ("appointment", "added") => added(words, entry),
        ("appointment" | "occurrence", _) => changed(words, entry)?,
        ("appointment_matter", "added") => {
            ("wrote down what is clinical about".to_owned(), String::new())
        }
        _ => return None,
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}

fn added(words: &Words, entry: &Recorded) -> (String, String) {
    let new = |field: &str| new_text(entry, field, words.zone);
    let verb = match new("status").as_deref() {
        Some("requested") => "asked for",
        _ => "booked",
    };
    let when = when(words, entry, ("on_day", "at_time")).map(|it| format!("for {it}"));
    let repeats = repeats(entry).map(|it| format!(", {it}")).unwrap_or_default();
    let with = new("with_whom").map(|it| format!(", with {it}")).unwrap_or_default();
    (verb.to_owned(), format!("{}{repeats}{with}", when.unwrap_or_default()))
}

/// "3 March 2026, 9:30 am"
fn when(words: &Words, entry: &Recorded, (day, time): (&str, &str)) -> Option<String> {
    let day = new_text(entry, day, words.zone);
    let time = new_text(entry, time, words.zone).map(|it| TimeOfDay::from(it).words());
    match (day, time) {
        (Some(day), Some(time)) => Some(format!("{day}, {time}")),
        (day, time) => day.or(time),
    }
}

fn json<'a>(entry: &'a Recorded, field: &str) -> Option<&'a str> {
    entry.values.iter().find(|it| it.field == field)?.new.as_deref()
}

fn repeats(entry: &Recorded) -> Option<String> {
    let rule: String = serde_json::from_str(json(entry, "repeats")?).ok()?;
    let day: Date = serde_json::from_str(json(entry, "on_day")?).ok()?;
    Some(Repeat::of(&Rule::from(rule))?.words(day))
}

fn changed(words: &Words, entry: &Recorded) -> Option<(String, String)> {
    let new = |field: &str| new_text(entry, field, words.zone);
    let has = |field: &str| entry.values.iter().any(|it| it.field == field);
    let said = |does: &str, rest: String| Some((does.to_owned(), rest));
    let added = entry.action == "added";
    if let Some(status) = new("status") {
        return match status.as_str() {
            "cancelled" => said(
                "cancelled",
                new("reason").map(|it| format!("with the reason: {it}")).unwrap_or_default(),
            ),
            "kept" => said("said that it was kept:", String::new()),
            "missed" => said("said that it was missed:", String::new()),
            "confirmed" => said("said that it is confirmed:", String::new()),
            _ if has("reason") && !added => said("put back into the calendar:", String::new()),
            other => said("said how it stands:", other.to_owned()),
        };
    }
    if entry.kind == "occurrence" {
        return one_of_series(words, entry);
    }
    let only = |fields: &[&str]| entry.values.iter().all(|it| fields.contains(&it.field.as_str()));
    if only(&["escort_id", "escort_contact_id", "alone"]) {
        return Some(escort(words, entry));
    }
    if only(&["on_day", "at_time"]) {
        return said("moved", format!("to {}", when(words, entry, ("on_day", "at_time"))?));
    }
    if only(&["repeats"]) {
        return said("changed how it repeats:", String::new());
    }
    None
}

fn one_of_series(words: &Words, entry: &Recorded) -> Option<(String, String)> {
    let is = |field: &str, text: &str| new_text(entry, field, words.zone).as_deref() == Some(text);
    let has = |field: &str| entry.values.iter().any(|it| it.field == field);
    let moved = when(words, entry, ("moved_on", "moved_time"));
    if is("struck", "yes") {
        return Some(("took back what was said of".into(), String::new()));
    }
    if let Some(to) = moved {
        return Some(("moved".into(), format!("to {to}")));
    }
    if is("apart", "yes") {
        return Some(("kept beside its series:".into(), String::new()));
    }
    if is("own_escort", "yes") || has("escort_id") || has("escort_contact_id") || has("alone") {
        return Some(escort(words, entry));
    }
    None
}

fn escort(words: &Words, entry: &Recorded) -> (String, String) {
    let member = new_text(entry, "escort_id", words.zone).and_then(|it| it.parse::<i64>().ok());
    let contact =
        new_text(entry, "escort_contact_id", words.zone).and_then(|it| it.parse::<i64>().ok());
    let alone = new_text(entry, "alone", words.zone).as_deref() == Some("yes");
    match (member.map(MemberId::from), contact) {
        (Some(it), _) if it == entry.actor => ("will go along to".into(), String::new()),
        (Some(it), _) => {
            ("wrote down who goes along to".into(), format!(": {}", words.names.of(it)))
        }
        (None, Some(it)) => {
            let name = words.titles.of("contact", it).unwrap_or("one of the contacts");
            ("wrote down who goes along to".into(), format!(": {name}"))
        }
        (None, None) if alone => {
            let name = words.titles.person().unwrap_or("the person");
            (format!("wrote down that {name} goes alone to"), String::new())
        }
        (None, None) => ("said that nobody goes along yet to".into(), String::new()),
    }
}
