//! What is told of places in a record and of invitations: "Ines invited Juno as relative".
//!
//! A place has turns of its own (paused, ended), and its lowered areas are told one by one.

use super::{
    sentences::{Sentence, Words, new_text, old_text},
    titles::Thing,
};
use crate::platform::{
    audit::read::Recorded,
    auth::{area::AreaName, lowered::Lowered},
};

/// The sentence of an entry about a place or an invitation; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    let thing = words.thing(entry)?;
    let new = |field: &str| new_text(entry, field, words.zone);
    let as_role = || new("role").map(|it| format!("as {it}")).unwrap_or_default();
    let state = new("state").unwrap_or_default();
    let own = new("member_id") == Some(entry.actor.to_string());
    let (does, thing, rest) = match (entry.kind.as_str(), entry.action.as_str(), state.as_str()) {
        ("invitation", "added", _) => ("invited".to_owned(), Some(thing), as_role()),
        ("invitation", _, "accepted") => ("accepted the invitation".into(), None, String::new()),
        ("invitation", _, _) => ("took back the invitation for".into(), Some(thing), String::new()),
        ("membership", "added", _) if own => ("took a place".into(), None, as_role()),
        ("membership", "added", _) => {
            ("gave".into(), Some(thing), format!("a place {}", as_role()))
        }
        ("membership", _, "paused") => ("paused".into(), Some(place_of(thing)), String::new()),
        ("membership", _, "ended") => ("ended".into(), Some(place_of(thing)), String::new()),
        ("membership", _, "standing")
            if old_text(entry, "state", words.zone).as_deref() == Some("ended") =>
        {
            ("took a place again".into(), None, as_role())
        }
        ("membership", _, "standing") => {
            ("took back the pause of".into(), Some(place_of(thing)), String::new())
        }
        ("membership", "edited", _) if entry.values.iter().any(|it| it.field == "lowered") => {
            let (does, rest) = lowered(
                &old_text(entry, "lowered", words.zone).unwrap_or_default().into(),
                &new("lowered").unwrap_or_default().into(),
            );
            (does, Some(thing), rest)
        }
        _ => return None,
    };
    let things = Vec::from_iter(thing);
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does, things, rest, changes: Vec::new() })
}

fn place_of(thing: Thing) -> Thing {
    Thing { title: format!("{}'s place", thing.title), ..thing }
}

/// "lowered directives for", "to nothing"; several areas to several levels one after the other.
fn lowered(old: &Lowered, new: &Lowered) -> (String, String) {
    let said = |lowered: &Lowered, area| {
        lowered.each().find(|(it, _)| *it == area).map_or("as the role has it", |it| it.1)
    };
    let turned = AreaName::ALL.into_iter().filter(|it| old.level(*it) != new.level(*it));
    let turned: Vec<_> = turned.map(|it| (it.name(), said(new, it))).collect();
    match turned.as_slice() {
        [(area, "as the role has it")] => (format!("gave back {area} to"), String::new()),
        [(area, to)] => (format!("lowered {area} for"), format!("to {to}")),
        several => {
            let each = several.iter().map(|(area, to)| format!("{area} {to}"));
            ("changed the areas of".into(), format!("to {}", each.collect::<Vec<_>>().join(", ")))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(old: &str, new: &str) -> String {
        let read = |text: &str| Lowered::from(text.to_owned());
        let (does, rest) = lowered(&read(old), &read(new));
        format!("{does} Bram {rest}").trim().to_owned()
    }

    #[test]
    fn what_is_lowered_is_told_area_by_area() {
        assert_eq!(told("", "directives: nothing"), "lowered directives for Bram to nothing");
        let less = "clinical: see only, directives: nothing";
        assert_eq!(told(less, "directives: nothing"), "gave back clinical to Bram");
        assert_eq!(
            told("clinical: see only", "directives: nothing"),
            "changed the areas of Bram to clinical as the role has it, directives nothing"
        );
    }
}
