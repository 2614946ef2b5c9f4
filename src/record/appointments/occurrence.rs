//! One of a series that differs from the others: moved, cancelled, kept, missed, with another escort.
//!
//! It is named by the day it would have been on, and stays when the series changes. Where the series no longer has that
//! day, it stands there until someone says whether it is kept by itself (`apart`) or let go.

use super::{
    escort::Escort,
    model::{Appointment, Status},
};
use crate::audited;
use crate::base::{
    ids::{AppointmentId, ContactId, MemberId, OccurrenceId, PersonId},
    text::Line,
    time_of_day::TimeOfDay,
};
use crate::platform::error::{Error, Result};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Occurrence {
    pub id: OccurrenceId,
    pub person_id: PersonId,
    pub appointment_id: AppointmentId,
    /// The day it would have been on.
    pub on_day: Date,
    pub moved_on: Option<Date>,
    pub moved_time: Option<TimeOfDay>,
    /// `None`: as the series.
    pub status: Option<Status>,
    pub reason: Option<Line>,
    /// Whether the escort is its own and not the series'.
    pub own_escort: bool,
    pub escort_id: Option<MemberId>,
    pub escort_contact_id: Option<ContactId>,
    pub alone: bool,
    /// Kept by itself, though the series no longer has its day.
    pub apart: bool,
    /// As the series again, or let go with its day.
    pub struck: bool,
    pub version: i64,
}

audited!(Occurrence as "occurrence" {
    appointment_id: "", on_day: "", moved_on: "day", moved_time: "time", status: "status",
    reason: "reason", own_escort: "", escort_id: "", escort_contact_id: "", alone: "", apart: "",
    struck: "struck",
} skip { id, person_id, version });

impl Occurrence {
    /// As the series has it, until something is said of it.
    pub fn new(of: &Appointment, on_day: Date) -> Occurrence {
        Occurrence::as_series((of.person_id, of.id), on_day)
    }

    fn as_series((person_id, appointment_id): (PersonId, AppointmentId), on_day: Date) -> Self {
        Occurrence {
            id: OccurrenceId::default(),
            person_id,
            appointment_id,
            on_day,
            moved_on: None,
            moved_time: None,
            status: None,
            reason: None,
            own_escort: false,
            escort_id: None,
            escort_contact_id: None,
            alone: false,
            apart: false,
            struck: false,
            version: 0,
        }
    }

    /// Whether it is kept already.
    pub fn is_kept(&self) -> bool {
        self.version > 0
    }

    /// As it was when the form was opened, or `Stale`. Zero: it was as the series.
    pub fn opened_at(self, version: i64) -> Result<Occurrence> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// What was struck is as new.
    fn afresh(&self) -> Occurrence {
        if !self.struck {
            return self.clone();
        }
        let of = (self.person_id, self.appointment_id);
        let as_series = Occurrence::as_series(of, self.on_day);
        Occurrence { id: self.id, version: self.version, ..as_series }
    }

    pub fn moved(&self, day: Date, time: TimeOfDay) -> Occurrence {
        Occurrence { moved_on: Some(day), moved_time: Some(time), ..self.afresh() }
    }

    pub fn turned(&self, status: Status, reason: Option<Line>) -> Occurrence {
        let reason = reason.filter(|_| status == Status::Cancelled);
        Occurrence { status: Some(status), reason, ..self.afresh() }
    }

    /// As `turned`. What was kept or missed keeps the day and time it was on, whatever becomes of
    /// the series; said to be open again, it is as the series has it.
    pub fn became(&self, status: Status, of: &Appointment) -> Occurrence {
        let it = self.turned(status, None);
        let only_kept = it.moved_on == Some(it.on_day) && it.moved_time == of.at_time;
        match &of.at_time {
            Some(time) if !status.is_open() && it.moved_on.is_none() => {
                it.moved(it.on_day, time.clone())
            }
            _ if status.is_open() && only_kept => {
                Occurrence { moved_on: None, moved_time: None, ..it }
            }
            _ => it,
        }
    }

    pub fn escorted(&self, escort: Escort) -> Occurrence {
        let (escort_id, escort_contact_id, alone) = escort.columns();
        Occurrence { own_escort: true, escort_id, escort_contact_id, alone, ..self.afresh() }
    }

    /// Kept, though the series has another day now.
    pub fn kept_apart(&self) -> Occurrence {
        Occurrence { apart: true, ..self.clone() }
    }

    /// As the series again; with its day, where the series has that day no more.
    pub fn struck(&self) -> Occurrence {
        Occurrence { struck: true, ..self.clone() }
    }

    pub fn escort(&self) -> Option<Escort> {
        let own = Escort::of(self.escort_id, self.escort_contact_id, self.alone);
        self.own_escort.then_some(own)
    }
}
