//! What a decision is, and what may happen to it.

use super::right::{Right, State};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{DecisionId, MemberId, PersonId},
    text::{Line, Note},
};
use crate::platform::{
    audit::Names,
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Decision {
    pub id: DecisionId,
    pub person_id: PersonId,
    /// What is to be decided.
    pub matter: Line,
    /// What is known so far.
    pub background: Option<Note>,
    pub decided: Option<Note>,
    pub reasons: Option<Note>,
    /// The members who were heard, as JSON.
    pub heard: Option<String>,
    pub heard_others: Option<Line>,
    /// What the person said, or why she was not asked: one of the two.
    pub her_words: Option<Note>,
    pub not_asked: Option<Line>,
    pub decider: Option<Line>,
    pub by_right: Option<Right>,
    pub right_words: Option<Line>,
    pub decided_on: Option<Date>,
    pub look_again_on: Option<Date>,
    pub state: State,
    pub replaced_by: Option<DecisionId>,
    pub withdrawn_reason: Option<Line>,
    /// In the order of a meeting.
    pub place: i64,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub version: i64,
}

audited!(Decision as "decision" {
    matter: "what is to be decided", background: "what is known", decided: "what was decided",
    reasons: "why", heard: "", heard_others: "who else was heard",
    her_words: "the person's own words", not_asked: "why the person was not asked",
    decider: "who decides", by_right: "by which right", right_words: "which other right",
    decided_on: "day it was decided", look_again_on: "day to look again", state: "",
    replaced_by: "", withdrawn_reason: "reason", place: "", entered_by: "", entered_at: "",
} skip { id, person_id, version });

/// What was decided, as it was typed.
#[derive(Clone, Debug)]
pub struct Outcome {
    pub decided: Note,
    pub reasons: Note,
    pub heard: Vec<MemberId>,
    pub heard_others: Option<Line>,
    pub asked: Asked,
    pub decider: Line,
    pub right: Right,
    pub right_words: Option<Line>,
    pub on: Date,
    pub look_again_on: Option<Date>,
}

/// Whether the person was asked.
#[derive(Clone, Debug)]
pub enum Asked {
    Said(Note),
    Not(Line),
}

impl Decision {
    pub fn new(
        person_id: PersonId,
        (matter, background): (Line, Option<Note>),
        (entered_by, entered_at): (MemberId, Instant),
        place: i64,
    ) -> Decision {
        Decision {
            id: DecisionId::default(),
            person_id,
            matter,
            background,
            decided: None,
            reasons: None,
            heard: None,
            heard_others: None,
            her_words: None,
            not_asked: None,
            decider: None,
            by_right: None,
            right_words: None,
            decided_on: None,
            look_again_on: None,
            state: State::Open,
            replaced_by: None,
            withdrawn_reason: None,
            place,
            entered_by,
            entered_at,
            version: 1,
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Decision> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn reworded(&self, (matter, background): (Line, Option<Note>)) -> Decision {
        Decision { matter, background, ..self.clone() }
    }

    /// Decided, or what was decided put right.
    pub fn decided(&self, new: Outcome, today: Date) -> Result<Decision> {
        FormErrors::unless_come("decided_on", new.on, today)?;
        if new.look_again_on.is_some_and(|it| it <= new.on) {
            let says = "This is not after the day it was decided.";
            return Err(FormErrors::at("look_again_on", says).into());
        }
        let (her_words, not_asked) = match new.asked {
            Asked::Said(words) => (Some(words), None),
            Asked::Not(because) => (None, Some(because)),
        };
        Ok(Decision {
            decided: Some(new.decided),
            reasons: Some(new.reasons),
            heard: ids(&new.heard),
            heard_others: new.heard_others,
            her_words,
            not_asked,
            decider: Some(new.decider),
            by_right: Some(new.right),
            right_words: new.right_words,
            decided_on: Some(new.on),
            look_again_on: new.look_again_on,
            state: State::Decided,
            ..self.clone()
        })
    }

    /// Looked at again, and left as it is until another day, or for good.
    pub fn left_until(&self, on: Option<Date>, today: Date) -> Result<Decision> {
        if on.is_some_and(|it| it <= today) {
            let says = "This day is not ahead. Leave it empty to look again at no set day.";
            return Err(FormErrors::at("look_again_on", says).into());
        }
        Ok(Decision { look_again_on: on, ..self.clone() })
    }

    pub fn replaced(&self, by: DecisionId) -> Decision {
        let state = State::Replaced;
        Decision { state, replaced_by: Some(by), look_again_on: None, ..self.clone() }
    }

    pub fn withdrawn(&self, reason: Line) -> Decision {
        let state = State::Withdrawn;
        Decision { state, withdrawn_reason: Some(reason), look_again_on: None, ..self.clone() }
    }

    /// As it stood: decided, where something was, and else to be decided.
    pub fn brought_back(&self) -> Decision {
        let state = if self.decided.is_some() { State::Decided } else { State::Open };
        Decision { state, replaced_by: None, withdrawn_reason: None, ..self.clone() }
    }

    pub fn moved_to(&self, other: &Decision) -> Decision {
        Decision { place: other.place, ..self.clone() }
    }

    pub fn is_open(&self) -> bool {
        self.state == State::Open
    }

    pub fn is_decided(&self) -> bool {
        self.state == State::Decided
    }

    pub fn stands(&self) -> bool {
        self.is_open() || self.is_decided()
    }

    /// Whether the day to look again has come.
    pub fn is_due(&self, today: Date) -> bool {
        self.is_decided() && self.look_again_on.is_some_and(|it| it <= today)
    }

    /// Whether a meeting goes through it.
    pub fn is_for_meeting(&self, today: Date) -> bool {
        self.is_open() || self.is_due(today)
    }

    pub fn heard_ids(&self) -> Vec<MemberId> {
        let all: Vec<i64> =
            self.heard.as_deref().and_then(|it| serde_json::from_str(it).ok()).unwrap_or_default();
        all.into_iter().map(MemberId::from).collect()
    }

    /// "Ines, Bram; the pastor"; none where nobody is named.
    pub fn heard_names(&self, names: &Names) -> Option<String> {
        let members: Vec<_> = self.heard_ids().iter().map(|it| names.of(*it).to_owned()).collect();
        let others = self.heard_others.as_ref().map(ToString::to_string);
        let parts: Vec<_> = Some(members.join(", "))
            .filter(|it| !it.is_empty())
            .into_iter()
            .chain(others)
            .collect();
        (!parts.is_empty()).then(|| parts.join("; "))
    }

    /// "Ines, by power of attorney for health care"
    pub fn by_whom(&self) -> Option<String> {
        let (decider, right) = (self.decider.as_ref()?, self.by_right?);
        let right = self.right_words.as_ref().map_or(right.words(), Line::as_str);
        Some(format!("{decider}, {right}"))
    }

    pub fn decided_day(&self) -> Option<String> {
        self.decided_on.map(day::words)
    }

    pub fn look_again_day(&self) -> Option<String> {
        self.look_again_on.map(day::words)
    }
}

fn ids(all: &[MemberId]) -> Option<String> {
    let all: Vec<i64> = all.iter().map(|it| i64::from(*it)).collect();
    (!all.is_empty()).then(|| serde_json::json!(all).to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn open() -> Decision {
        let what = (line("Whether the bedroom moves downstairs"), None);
        Decision::new(1.into(), what, (2.into(), Instant::from_unix(0)), 1)
    }

    fn outcome(on: Date, again: Option<Date>) -> Outcome {
        Outcome {
            decided: Note::from("It moves.".to_owned()),
            reasons: Note::from("The stairs.".to_owned()),
            heard: vec![2.into(), 3.into()],
            heard_others: Some(line("Halvard")),
            asked: Asked::Said(Note::from("Leave me my window.".to_owned())),
            decider: line("Ottoline"),
            right: Right::Person,
            right_words: None,
            on,
            look_again_on: again,
        }
    }

    #[test]
    fn it_is_decided_on_a_day_that_has_come_and_looked_at_again_later() {
        assert!(open().decided(outcome(date!(2026 - 11 - 26), None), TODAY).is_err());
        assert!(open().decided(outcome(TODAY, Some(TODAY)), TODAY).is_err());
        let decided = open().decided(outcome(TODAY, Some(date!(2027 - 02 - 01))), TODAY).unwrap();
        assert!(!decided.is_for_meeting(TODAY) && decided.is_due(date!(2027 - 02 - 01)));
        assert!(decided.left_until(Some(TODAY), TODAY).is_err());
        assert!(!decided.left_until(None, TODAY).unwrap().is_due(date!(2030 - 01 - 01)));
        assert!(!decided.withdrawn(line("moot")).is_due(date!(2027 - 02 - 01)));
    }

    #[test]
    fn it_comes_back_as_it_stood() {
        assert_eq!(open().withdrawn(line("x")).brought_back(), open());
        let decided = open().decided(outcome(TODAY, None), TODAY).unwrap();
        assert_eq!(decided.withdrawn(line("x")).brought_back(), decided);
        assert_eq!(decided.replaced(9.into()).brought_back(), decided);
    }

    #[test]
    fn who_decides_is_said_as_it_was_stated() {
        let decided = open().decided(outcome(TODAY, None), TODAY).unwrap();
        assert_eq!(decided.by_whom().unwrap(), "Ottoline, it is the person’s own decision");
        assert_eq!(decided.heard_ids(), [2.into(), 3.into()]);
        let other = Decision {
            by_right: Some(Right::Other),
            right_words: Some(line("as the trustee")),
            ..decided
        };
        assert_eq!(other.by_whom().unwrap(), "Ottoline, as the trustee");
        assert_eq!(open().by_whom(), None);
    }
}
