//! What is clinical about an appointment: what it is for, how to prepare, the referral.
//!
//! It stands in a row of its own, in the area of the medicines and conditions, so that neither the calendar nor its
//! history tells it to whom that area is closed.

use crate::audited;
use crate::base::{
    day,
    ids::{AppointmentId, PersonId},
    text::{Line, Note},
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Matter {
    pub id: i64,
    pub person_id: PersonId,
    pub appointment_id: AppointmentId,
    pub purpose: Option<Note>,
    /// From when, and what is allowed.
    pub fasting: Option<Line>,
    pub bring: Option<Note>,
    /// Its number.
    pub referral: Option<Line>,
    /// Its last day.
    pub referral_until: Option<Date>,
    pub version: i64,
}

audited!(Matter as "appointment_matter" {
    appointment_id: "", purpose: "purpose", fasting: "fasting", bring: "things to bring",
    referral: "referral number", referral_until: "last day of the referral",
} skip { id, person_id, version });

/// What is typed of it.
#[derive(Clone, Debug, Default)]
pub struct MatterEntry {
    pub purpose: Option<Note>,
    pub fasting: Option<Line>,
    pub bring: Option<Note>,
    pub referral: Option<Line>,
    pub referral_until: Option<Date>,
}

impl Matter {
    /// Nothing of it is written yet.
    pub fn none(person_id: PersonId, appointment_id: AppointmentId) -> Matter {
        Matter {
            id: 0,
            person_id,
            appointment_id,
            purpose: None,
            fasting: None,
            bring: None,
            referral: None,
            referral_until: None,
            version: 0,
        }
    }

    pub fn with(&self, entry: MatterEntry) -> Matter {
        let MatterEntry { purpose, fasting, bring, referral, referral_until } = entry;
        Matter { purpose, fasting, bring, referral, referral_until, ..self.clone() }
    }

    pub fn is_empty(&self) -> bool {
        self.with(MatterEntry::default()) == *self
    }

    /// "The referral ends on 3 March 2026, before this day."
    pub fn referral_ends(&self, before: Date) -> Option<String> {
        let until = self.referral_until.filter(|it| *it < before)?;
        Some(format!("The referral ends on {}, before this day.", day::words(until)))
    }
}
