//! One time of an appointment: the moment it begins, how it stands, who goes along.
//!
//! The series gives the days, the zone it was booked in the moments, and an occurrence what differs. One whose day the
//! series no longer has is told as well (`orphan`): it is never lost.

use super::{
    escort::Escort,
    model::{Appointment, Status},
    occurrence::Occurrence,
};
use crate::base::{clock::Instant, ids::AppointmentId, time_of_day::TimeOfDay, zone::Zone};
use std::collections::BTreeSet;
use time::{Date, Duration, Time};

#[derive(Clone, Debug, PartialEq)]
pub struct Meeting {
    pub appointment: Appointment,
    /// What differs from the series.
    pub occurrence: Option<Occurrence>,
    /// The day by which others name it: the original one.
    pub on: Date,
    pub starts: Instant,
    pub status: Status,
    pub escort: Escort,
    /// The series no longer has its day, and nobody has said what becomes of it.
    pub orphan: bool,
    /// What a form about this one is opened on: the version of what differs; zero, where nothing
    /// ever did. Of one that is no series, its own version.
    pub version: i64,
}

impl Meeting {
    /// One time of it, by its original day.
    pub fn of(appointment: &Appointment, on: Date, occurrence: Option<&Occurrence>) -> Meeting {
        Meeting::laid(appointment, on, occurrence, || appointment.falls_on(on))
    }

    /// Whether the series has its day is asked only where it matters: it takes an expansion.
    fn laid(
        appointment: &Appointment,
        on: Date,
        occurrence: Option<&Occurrence>,
        has_day: impl FnOnce() -> bool,
    ) -> Meeting {
        let own = occurrence.filter(|it| !it.struck);
        let day = own.and_then(|it| it.moved_on).unwrap_or(on);
        let time = own.and_then(|it| it.moved_time.as_ref()).or(appointment.at_time.as_ref());
        let time = time.map_or(Time::MIDNIGHT, TimeOfDay::time);
        let cancelled = appointment.status == Status::Cancelled;
        let own_status = own.and_then(|it| it.status);
        // What has been kept or missed stays so when the series is cancelled.
        let own_status = own_status.filter(|it| !cancelled || !it.is_open());
        let status = own_status.unwrap_or(appointment.status);
        let apart = own.is_some_and(|it| it.apart);
        Meeting {
            on,
            starts: appointment.zone.instant(day, time),
            status,
            escort: own.and_then(Occurrence::escort).unwrap_or(appointment.escort()),
            orphan: !apart && own.is_some() && status.is_open() && !has_day(),
            version: match appointment.is_series() {
                true => occurrence.map_or(0, |it| it.version),
                false => appointment.version,
            },
            occurrence: own.cloned(),
            appointment: appointment.clone(),
        }
    }

    /// Those that begin from one moment on and before another, in order.
    pub fn all(
        appointments: &[Appointment],
        occurrences: &[Occurrence],
        (from, to): (Instant, Instant),
    ) -> Vec<Meeting> {
        let of = |it: &Appointment| {
            let own: Vec<_> =
                occurrences.iter().filter(|own| own.appointment_id == it.id).collect();
            Meeting::each(it, &own, (from, to))
        };
        let mut all: Vec<_> = appointments.iter().flat_map(of).collect();
        all.sort_by_key(|it| (it.starts, it.appointment.id));
        all
    }

    fn each(
        appointment: &Appointment,
        own: &[&Occurrence],
        (from, to): (Instant, Instant),
    ) -> Vec<Meeting> {
        let day = |at: Instant, days| appointment.zone.day(at).saturating_add(Duration::days(days));
        let given: BTreeSet<Date> =
            appointment.days(day(from, -1), day(to, 1)).into_iter().collect();
        let mut days = given.clone();
        if appointment.is_series() {
            days.extend(own.iter().filter(|it| !it.struck).map(|it| it.on_day));
        }
        let meeting = |on: Date| {
            let own = own.iter().find(|it| it.on_day == on).copied();
            let has_day = || given.contains(&on) || appointment.falls_on(on);
            Meeting::laid(appointment, on, own, has_day)
        };
        let all = days.into_iter().map(meeting);
        all.filter(|it| from <= it.starts && it.starts < to).collect()
    }

    pub fn id(&self) -> AppointmentId {
        self.appointment.id
    }

    pub fn ends(&self) -> Instant {
        self.starts.plus(Duration::minutes(self.appointment.minutes))
    }

    /// Whether its time is known, and not only its day.
    pub fn is_timed(&self) -> bool {
        self.appointment.at_time.is_some()
    }

    /// The day on the wall of a zone; of one without a time, the day that was said.
    pub fn day(&self, zone: &Zone) -> Date {
        if self.is_timed() { zone.day(self.starts) } else { self.on }
    }

    pub fn is_moved(&self) -> bool {
        let own = self.occurrence.as_ref();
        own.is_some_and(|it| match it.moved_on {
            None => false,
            // What is over keeps its own day and time: only another day says that it was moved.
            Some(day) if !self.status.is_open() => day != it.on_day,
            Some(_) => true,
        })
    }

    /// Whether nobody has said that she goes along, nor that the person goes alone.
    pub fn needs_escort(&self) -> bool {
        self.status.is_open() && self.escort == Escort::Nobody
    }

    /// Whether both take place and lie over each other.
    pub fn overlaps(&self, other: &Meeting) -> bool {
        let known = self.is_timed() && other.is_timed();
        let open = self.status.is_open() && other.status.is_open();
        known && open && self.starts < other.ends() && other.starts < self.ends()
    }
}
