//! All appointments of a record with what differs at one of a series: read once, asked often.

use super::{meeting::Meeting, model::Appointment, occurrence::Occurrence};
use crate::base::clock::Instant;

pub struct Calendar {
    pub appointments: Vec<Appointment>,
    pub occurrences: Vec<Occurrence>,
}

impl Calendar {
    /// Those that begin from one moment on and before another, in order; with those whose day the
    /// series no longer has.
    pub fn meetings(&self, from: Instant, to: Instant) -> Vec<Meeting> {
        Meeting::all(&self.appointments, &self.occurrences, (from, to))
    }

    /// Those whose day the series no longer has, and of which nobody has said what becomes of them.
    pub fn orphans(&self) -> Vec<Meeting> {
        let of = |it: &Occurrence| {
            self.appointments.iter().find(|of| of.id == it.appointment_id && of.is_series())
        };
        let laid = |it: &Occurrence| Some(Meeting::of(of(it)?, it.on_day, Some(it)));
        let mut orphans: Vec<_> =
            self.occurrences.iter().filter_map(laid).filter(|it| it.orphan).collect();
        orphans.sort_by_key(|it| it.starts);
        orphans
    }
}
