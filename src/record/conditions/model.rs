//! What a condition is, and what may happen to it.

use super::wish::WantsTold;
use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    day,
    ids::{ConditionId, MemberId, PersonId},
    text::{Line, Note},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    pub id: ConditionId,
    pub person_id: PersonId,
    pub name: Line,
    /// As it is remembered: a year is enough.
    pub since: Option<Line>,
    /// The clinician who looks after it.
    pub followed_by: Option<Line>,
    pub note: Option<Note>,
    /// Read off which paper, or said by whom.
    pub source: Option<Line>,
    /// In the person's own words.
    pub who_may_know: Option<Line>,
    pub wants_told: WantsTold,
    /// The day she was told, and by whom.
    pub told_on: Option<Date>,
    pub told_by: Option<Line>,
    /// The day from which it is over, and who said so: both or none.
    pub over_on: Option<Date>,
    pub over_said_by: Option<Line>,
    /// Entered by mistake.
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub checked_at: Option<Instant>,
    pub checked_by: Option<MemberId>,
    pub checked_against: Option<Line>,
    pub version: i64,
}

audited!(Condition as "condition" {
    name: "name", since: "start", followed_by: "clinician", note: "note", source: "source",
    who_may_know: "list of who may know", wants_told: "wish to be told",
    told_on: "day it was told", told_by: "one who told it",
    over_on: "day it was over", over_said_by: "one who said it is over",
    struck: "struck", struck_reason: "reason",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// What is typed about a condition when it is added or edited.
#[derive(Clone, Debug)]
pub struct Entry {
    pub name: Line,
    pub since: Option<Line>,
    pub followed_by: Option<Line>,
    pub note: Option<Note>,
    pub source: Option<Line>,
    pub who_may_know: Option<Line>,
    pub wants_told: WantsTold,
    pub told_on: Option<Date>,
    pub told_by: Option<Line>,
}

impl Entry {
    /// She cannot have been told on a day to come.
    pub fn sound(self, today: Date) -> Result<Entry> {
        match self.told_on {
            Some(on) if on > today => Err(to_come("told_on")),
            _ => Ok(self),
        }
    }
}

fn to_come(field: &'static str) -> Error {
    FormErrors::at(field, "This day has not come yet.").into()
}

impl Condition {
    pub fn new(person_id: PersonId, entry: Entry) -> Condition {
        Condition {
            id: ConditionId::default(),
            person_id,
            name: entry.name,
            since: entry.since,
            followed_by: entry.followed_by,
            note: entry.note,
            source: entry.source,
            who_may_know: entry.who_may_know,
            wants_told: entry.wants_told,
            told_on: entry.told_on,
            told_by: entry.told_by,
            over_on: None,
            over_said_by: None,
            struck: false,
            struck_reason: None,
            checked_at: None,
            checked_by: None,
            checked_against: None,
            version: 1,
        }
    }

    /// With another entry, which has not been checked. The same again changes nothing, and
    /// leaves the check.
    pub fn edited(&self, entry: Entry) -> Condition {
        let unchecked =
            Condition { checked_at: None, checked_by: None, checked_against: None, ..self.clone() };
        let after = Condition {
            id: self.id,
            over_on: self.over_on,
            over_said_by: self.over_said_by.clone(),
            struck: self.struck,
            struck_reason: self.struck_reason.clone(),
            version: self.version,
            ..Condition::new(self.person_id, entry)
        };
        if after == unchecked { self.clone() } else { after }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Condition> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Over from a day that has come; it stays listed.
    pub fn over(&self, on: Date, said_by: Line, today: Date) -> Result<Condition> {
        if on > today {
            return Err(to_come("on"));
        }
        Ok(Condition { over_on: Some(on), over_said_by: Some(said_by), ..self.clone() })
    }

    /// Taken off the list because it was entered by mistake.
    pub fn struck(&self, reason: Line) -> Condition {
        Condition { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    /// After a mistaken striking it is as it was before; one that was over stands again.
    pub fn brought_back(&self) -> Condition {
        match self.struck {
            true => Condition { struck: false, struck_reason: None, ..self.clone() },
            false => Condition { over_on: None, over_said_by: None, ..self.clone() },
        }
    }

    pub fn checked(&self, check: Check) -> Condition {
        Condition {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    /// Whether she has it now, as far as is written down.
    pub fn is_standing(&self) -> bool {
        !self.struck && self.over_on.is_none()
    }

    /// "3 March 2026 by Dr Oyelaran": when and by whom she was told, as far as is known.
    pub fn told(&self) -> Option<String> {
        let by = self.told_by.as_ref();
        match (self.told_on.map(day::words), by) {
            (Some(on), Some(by)) => Some(format!("{on} by {by}")),
            (Some(on), None) => Some(on),
            (None, by) => by.map(|by| format!("by {by}")),
        }
    }

    pub fn ended(&self) -> Option<String> {
        self.over_on.map(day::words)
    }
}

#[cfg(test)]
mod tests;
