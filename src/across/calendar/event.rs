//! One component of a calendar as IETF RFC 5545 (2009) writes it, and the calendar around them (with RFC 7986 (2016)).
//!
//! The writer is our own, as that of the vCards is: the crates for it bring another way to count days, a maker of random
//! marks and no zones. Two other people's programs read what it writes (`tests/outside/calendars.py`).

use crate::base::{
    clock::Instant,
    content_line::{folded, part},
    zone::Zone,
};
use time::{Date, PrimitiveDateTime, Time, macros::format_description};

/// When something begins.
#[derive(Clone, Debug, PartialEq)]
pub enum Starts {
    /// A moment: it stays itself, whatever the clocks do.
    At(Instant),
    /// A time on a wall: a series stays at its hour when the clocks are changed.
    On(Zone, Date, Time),
    /// Only the day is known.
    Day(Date),
}

impl Starts {
    /// "DTSTART;TZID=America/Chicago:20261201T140000"
    fn line(&self, name: &str) -> String {
        match self {
            Starts::At(at) => format!("{name}:{}", moment(*at)),
            Starts::On(zone, day, time) => {
                format!("{name};TZID={}:{}", zone.name(), wall(PrimitiveDateTime::new(*day, *time)))
            }
            Starts::Day(day) => format!("{name};VALUE=DATE:{}", date(*day)),
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    Tentative,
    Confirmed,
    Cancelled,
}

#[derive(Clone, Debug)]
pub struct Event {
    pub uid: String,
    pub sequence: i64,
    /// When it was last changed.
    pub stamp: Instant,
    pub starts: Starts,
    pub minutes: i64,
    pub rule: Option<String>,
    /// Of one of a series that differs: where it would have been.
    pub instead_of: Option<Starts>,
    pub state: State,
    pub summary: String,
    pub place: Option<String>,
    pub more: Option<String>,
    /// Its page, behind sign-in.
    pub page: String,
}

impl Event {
    fn lines(&self) -> Vec<String> {
        let mut lines = vec!["BEGIN:VEVENT".to_owned(), format!("UID:{}", self.uid)];
        lines.push(format!("DTSTAMP:{}", moment(self.stamp)));
        lines.push(format!("SEQUENCE:{}", self.sequence));
        lines.extend(self.instead_of.iter().map(|it| it.line("RECURRENCE-ID")));
        lines.push(self.starts.line("DTSTART"));
        if !matches!(self.starts, Starts::Day(_)) {
            lines.push(format!("DURATION:PT{}M", self.minutes));
        }
        lines.extend(self.rule.iter().map(|it| format!("RRULE:{it}")));
        lines.push(format!("SUMMARY:{}", part(&self.summary)));
        lines.extend(self.place.iter().map(|it| format!("LOCATION:{}", part(it))));
        lines.extend(self.more.iter().map(|it| format!("DESCRIPTION:{}", part(it))));
        lines.push(format!("URL:{}", self.page));
        let state = match self.state {
            State::Tentative => "TENTATIVE",
            State::Confirmed => "CONFIRMED",
            State::Cancelled => "CANCELLED",
        };
        lines.push(format!("STATUS:{state}"));
        lines.push("CLASS:PRIVATE".into());
        lines.push("END:VEVENT".into());
        lines
    }
}

/// The whole text. A calendar has one component at least (RFC 5545, 3.6): an empty one has the zone of the one who reads.
pub fn calendar(name: &str, events: &[Event], zones: &[Vec<String>]) -> String {
    let mut lines = vec![
        "BEGIN:VCALENDAR".to_owned(),
        "VERSION:2.0".into(),
        "PRODID:-//Kinsheaf//Calendar//EN".into(),
        "CALSCALE:GREGORIAN".into(),
        format!("NAME:{}", part(name)),
        // The older name of the same, which more programs read (common practice, no source).
        format!("X-WR-CALNAME:{}", part(name)),
        "REFRESH-INTERVAL;VALUE=DURATION:PT1H".into(),
    ];
    lines.extend(zones.iter().flatten().cloned());
    lines.extend(events.iter().flat_map(Event::lines));
    lines.push("END:VCALENDAR".into());
    lines.iter().map(|it| folded(it)).collect()
}

/// "20261125T151200Z"
pub fn moment(at: Instant) -> String {
    let form = format_description!("[year][month][day]T[hour][minute][second]Z");
    at.utc().format(form).unwrap_or_else(|_| at.to_string())
}

/// "20261125T091200"
pub fn wall(at: PrimitiveDateTime) -> String {
    let form = format_description!("[year][month][day]T[hour][minute][second]");
    at.format(form).unwrap_or_else(|_| at.to_string())
}

fn date(day: Date) -> String {
    day.format(format_description!("[year][month][day]")).unwrap_or_else(|_| day.to_string())
}
