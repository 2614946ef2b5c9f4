//! What an appointment is, and what may happen to it.
//!
//! A row is an appointment once, or a series of them. The time is the one on the wall of the zone it was booked in. What
//! differs at one of a series is an `Occurrence`; what is clinical about it is its `Matter`. Words: requested, booked,
//! confirmed, kept, missed, cancelled; "struck" is a mistake.

use super::{
    escort::Escort,
    repeat::{Ends, Repeat},
};
use crate::audited;
use crate::base::{
    ids::{AppointmentId, ContactId, MemberId, PersonId},
    recurrence::Rule,
    text::Line,
    time_of_day::TimeOfDay,
    zone::Zone,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::Date;

/// What kind of visit it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum VisitKind {
    Routine,
    Specialist,
    Test,
    Procedure,
    Therapy,
    Other,
}

impl Choice for VisitKind {
    const ALL: &'static [VisitKind] = &[
        VisitKind::Routine,
        VisitKind::Specialist,
        VisitKind::Test,
        VisitKind::Procedure,
        VisitKind::Therapy,
        VisitKind::Other,
    ];

    fn words(self) -> &'static str {
        match self {
            VisitKind::Routine => "routine visit",
            VisitKind::Specialist => "specialist",
            VisitKind::Test => "test",
            VisitKind::Procedure => "surgery or procedure",
            VisitKind::Therapy => "therapy",
            VisitKind::Other => "something else",
        }
    }
}

impl fmt::Display for VisitKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Status {
    /// Asked for; the day may be a guess, the time not known.
    Requested,
    Booked,
    /// Confirmed by the clinic or service.
    Confirmed,
    Kept,
    Missed,
    Cancelled,
}

impl Choice for Status {
    const ALL: &'static [Status] = &[
        Status::Requested,
        Status::Booked,
        Status::Confirmed,
        Status::Kept,
        Status::Missed,
        Status::Cancelled,
    ];

    fn words(self) -> &'static str {
        match self {
            Status::Requested => "requested",
            Status::Booked => "booked",
            Status::Confirmed => "confirmed",
            Status::Kept => "kept",
            Status::Missed => "missed",
            Status::Cancelled => "cancelled",
        }
    }
}

impl Status {
    /// Whether it is still to come, or nobody has said what became of it.
    pub fn is_open(self) -> bool {
        matches!(self, Status::Requested | Status::Booked | Status::Confirmed)
    }
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Appointment {
    pub id: AppointmentId,
    pub person_id: PersonId,
    pub title: Line,
    pub kind: VisitKind,
    /// The clinician or service, of the contacts or typed.
    pub contact_id: Option<ContactId>,
    pub with_whom: Option<Line>,
    pub place: Option<Line>,
    /// The first day, or the only one.
    pub on_day: Date,
    pub at_time: Option<TimeOfDay>,
    /// Whose wall shows that time: the person's zone when it was booked.
    pub zone: Zone,
    pub minutes: i64,
    pub repeats: Option<Rule>,
    pub transport: Option<Line>,
    pub escort_id: Option<MemberId>,
    pub escort_contact_id: Option<ContactId>,
    /// It was said that she goes alone.
    pub alone: bool,
    /// For which language.
    pub interpreter: Option<Line>,
    pub status: Status,
    pub reason: Option<Line>,
    /// The series that this one goes on with.
    pub follows_id: Option<AppointmentId>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Appointment as "appointment" {
    title: "name", kind: "kind of visit", contact_id: "", with_whom: "clinician or service",
    place: "place", on_day: "day", at_time: "time", zone: "time zone", minutes: "minutes",
    repeats: "", transport: "transport", escort_id: "", escort_contact_id: "",
    alone: "", interpreter: "interpreter", status: "status", reason: "reason", follows_id: "",
    struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What is typed about an appointment when it is booked or edited.
#[derive(Clone, Debug)]
pub struct Entry {
    pub title: Line,
    pub kind: VisitKind,
    pub contact_id: Option<ContactId>,
    pub with_whom: Option<Line>,
    pub place: Option<Line>,
    pub on_day: Date,
    pub at_time: Option<TimeOfDay>,
    pub minutes: i64,
    pub repeat: Option<Repeat>,
    pub transport: Option<Line>,
    pub escort: Escort,
    pub interpreter: Option<Line>,
    pub status: Status,
}

impl Entry {
    /// What, when, and nothing else yet.
    pub fn new(title: Line, kind: VisitKind, on_day: Date, at_time: Option<TimeOfDay>) -> Entry {
        Entry {
            title,
            kind,
            contact_id: None,
            with_whom: None,
            place: None,
            on_day,
            at_time,
            minutes: 60,
            repeat: None,
            transport: None,
            escort: Escort::Nobody,
            interpreter: None,
            status: Status::Booked,
        }
    }

    /// The rules that join several fields, at the field each is about.
    pub fn sound(self) -> Result<Entry> {
        let wrong = |field, says: &str| Err(Error::from(FormErrors::at(field, says)));
        let is_series = self.repeat.is_some();
        if self.at_time.is_none() && (self.status != Status::Requested || is_series) {
            return wrong(
                "at_time",
                "Enter the time, like 9:30 am. Only one that is requested may have none yet.",
            );
        }
        if is_series && matches!(self.status, Status::Kept | Status::Missed) {
            return wrong("status", "This is said of each one of a series, on its own page.");
        }
        let Some(repeat) = &self.repeat else { return Ok(self) };
        if !repeat.rule(self.on_day).falls_on(self.on_day, self.on_day) {
            let says = format!(
                "It is to be {}, and its first day, {}, is none of these days. Choose another first day, or another way to repeat.",
                repeat.words(self.on_day),
                crate::base::day::short_words(self.on_day)
            );
            return wrong("repeats", &says);
        }
        if matches!(repeat.ends, Ends::On(day) if day < self.on_day) {
            return wrong("until", "This is before the first day.");
        }
        Ok(self)
    }
}

impl Appointment {
    pub fn new(person_id: PersonId, entry: Entry, zone: Zone) -> Appointment {
        let (escort_id, escort_contact_id, alone) = entry.escort.columns();
        Appointment {
            id: AppointmentId::default(),
            person_id,
            title: entry.title,
            kind: entry.kind,
            contact_id: entry.contact_id,
            with_whom: entry.with_whom,
            place: entry.place,
            on_day: entry.on_day,
            at_time: entry.at_time,
            zone,
            minutes: entry.minutes,
            repeats: entry.repeat.map(|it| it.rule(entry.on_day)),
            transport: entry.transport,
            escort_id,
            escort_contact_id,
            alone,
            interpreter: entry.interpreter,
            status: entry.status,
            reason: None,
            follows_id: None,
            struck: false,
            struck_reason: None,
            version: 1,
        }
    }

    /// With what was typed, in a zone. One that was cancelled and is edited stands again.
    pub fn edited(&self, entry: Entry, zone: Zone) -> Appointment {
        Appointment {
            id: self.id,
            follows_id: self.follows_id,
            struck: self.struck,
            struck_reason: self.struck_reason.clone(),
            version: self.version,
            ..Appointment::new(self.person_id, entry, zone)
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Appointment> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn is_series(&self) -> bool {
        self.repeats.is_some()
    }

    pub fn repeat(&self) -> Option<Repeat> {
        Repeat::of(self.repeats.as_ref()?)
    }

    pub fn escort(&self) -> Escort {
        Escort::of(self.escort_id, self.escort_contact_id, self.alone)
    }

    pub fn escorted(&self, escort: Escort) -> Appointment {
        let (escort_id, escort_contact_id, alone) = escort.columns();
        Appointment { escort_id, escort_contact_id, alone, ..self.clone() }
    }

    /// How it stands now. A reason is kept where it is cancelled, and only there.
    pub fn turned(&self, status: Status, reason: Option<Line>) -> Appointment {
        let reason = reason.filter(|_| status == Status::Cancelled);
        Appointment { status, reason, ..self.clone() }
    }

    /// On another day, or at another time.
    pub fn moved(&self, on_day: Date, at_time: TimeOfDay) -> Appointment {
        Appointment { on_day, at_time: Some(at_time), ..self.clone() }
    }

    /// A mistake.
    pub fn struck(&self, reason: Line) -> Appointment {
        Appointment { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Appointment {
        Appointment { struck: false, struck_reason: None, ..self.clone() }
    }

    /// Booked again, after it was cancelled; requested, where it has no time.
    pub fn stands_again(&self) -> Appointment {
        let status = match self.at_time {
            Some(_) => Status::Booked,
            None => Status::Requested,
        };
        match self.status {
            Status::Cancelled => self.turned(status, None),
            _ => self.clone(),
        }
    }

    /// Ended the day before another one; `None` where nothing of the series is left.
    pub fn ended_before(&self, day: Date) -> Option<Appointment> {
        let repeat = self.repeat()?.ended_before(self.on_day, day)?;
        Some(Appointment { repeats: Some(repeat.rule(self.on_day)), ..self.clone() })
    }

    /// The one that goes on from a day: with what was typed.
    pub fn followed_by(&self, entry: Entry, zone: Zone) -> Appointment {
        let next = Appointment::new(self.person_id, entry, zone);
        Appointment { follows_id: Some(self.id), ..next }
    }

    /// Whether the rule gives this day, or it is the only one.
    pub fn falls_on(&self, day: Date) -> bool {
        match &self.repeats {
            Some(rule) => rule.falls_on(self.on_day, day),
            None => day == self.on_day,
        }
    }

    /// The days from one to another.
    pub fn days(&self, from: Date, to: Date) -> Vec<Date> {
        match &self.repeats {
            Some(rule) => rule.days(self.on_day, from, to),
            None if from <= self.on_day && self.on_day <= to => vec![self.on_day],
            None => Vec::new(),
        }
    }
}
