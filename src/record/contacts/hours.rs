//! When a contact answers: days of the week and hours, on the contact's own clocks.
//!
//! `Hours` is what is kept: one spelling in words ("Mon–Fri 8:30 am–5 pm; Sat 9 am–noon"), which
//! reads back as the same `Week`. `read` takes what people type. A span may pass midnight, and is
//! never longer than a day. Holidays are not known: nobody should rely on an office for that.

mod read;
#[cfg(test)]
mod tests;

use crate::base::zone::Zone;
use std::fmt;
use time::{Date, Duration, Time};

/// The minutes of a day.
pub const DAY: u16 = 24 * 60;
const NAMES: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/// The hours in words, as they are kept.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[sqlx(transparent)]
#[serde(transparent)]
pub struct Hours(String);

/// From one minute of a day to another, which may lie after midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// 0 is Monday.
    pub day: u8,
    pub from: u16,
    /// At most a day after `from`.
    pub to: u16,
}

/// From and to of the spans of one day.
type Stretches = Vec<(u16, u16)>;

/// All spans of a week, in order; those of one day do not touch.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Week(Vec<Span>);

impl Hours {
    /// Reads what was typed; the error says what could not be read.
    pub fn parse(typed: &str) -> Result<Hours, String> {
        read::week(typed).map(|week| Hours(week.words()))
    }

    /// With the place whose clocks they are on; any time is any time everywhere.
    pub fn at(&self, place: &Zone) -> String {
        match self.week().is_always() {
            true => self.to_string(),
            false => format!("{self}, {} time", place.place()),
        }
    }

    /// Words that no reader of today knows are no hours: better unknown than wrong.
    pub fn week(&self) -> Week {
        read::week(&self.0).unwrap_or(Week(Vec::new()))
    }
}

impl fmt::Display for Hours {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<String> for Hours {
    fn from(kept: String) -> Hours {
        Hours(kept)
    }
}

impl Week {
    pub fn of(spans: impl IntoIterator<Item = Span>) -> Week {
        let mut spans: Vec<Span> = spans.into_iter().collect();
        if is_all(&spans) {
            return Week((0..7).map(|day| Span { day, from: 0, to: DAY }).collect());
        }
        spans.sort_unstable();
        let mut joined: Vec<Span> = Vec::new();
        for span in spans {
            match joined.last_mut() {
                Some(last) if last.day == span.day && joins(*last, span) => {
                    last.to = last.to.max(span.to);
                }
                _ => joined.push(span),
            }
        }
        Week(joined)
    }

    pub fn spans(&self) -> &[Span] {
        &self.0
    }

    fn is_always(&self) -> bool {
        is_all(&self.0)
    }

    /// The same hours on the clocks of another place, in the seven days from `today` on: clocks
    /// that change on different days move the hours against each other.
    pub fn shown_in(&self, own: &Zone, there: &Zone, today: Date) -> Week {
        if self.is_always() {
            return self.clone();
        }
        Week::of(self.0.iter().map(|span| {
            let first = today.weekday().number_days_from_monday();
            let ahead = i64::from((span.day + 7 - first) % 7);
            let date = today.saturating_add(Duration::days(ahead));
            let from = there.wall(own.instant(date, clock_time(span.from)));
            let minute = u16::from(from.hour()) * 60 + u16::from(from.minute());
            let day = from.weekday().number_days_from_monday();
            Span { day, from: minute, to: minute + (span.to - span.from) }
        }))
    }

    /// "Mon–Fri 8:30 am–5 pm; Sat 9 am–noon"
    pub fn words(&self) -> String {
        if self.is_always() {
            return "any time".into();
        }
        let mut groups: Vec<(Vec<u8>, Stretches)> = Vec::new();
        for day in 0..7 {
            let own = self.0.iter().filter(|it| it.day == day);
            let own: Stretches = own.map(|it| (it.from, it.to)).collect();
            match groups.iter_mut().find(|(_, spans)| *spans == own) {
                _ if own.is_empty() => {}
                Some((days, _)) => days.push(day),
                None => groups.push((vec![day], own)),
            }
        }
        let group = |(days, spans): &(Vec<u8>, Stretches)| {
            let spans: Vec<String> = spans.iter().map(|it| span_words(*it)).collect();
            format!("{} {}", days_words(days), spans.join(" and "))
        };
        groups.iter().map(group).collect::<Vec<_>>().join("; ")
    }
}

/// Whether every minute of the week lies in a span.
fn is_all(spans: &[Span]) -> bool {
    let week = usize::from(DAY) * 7;
    let mut open = vec![false; week];
    for span in spans {
        let start = usize::from(span.day) * usize::from(DAY);
        (span.from..span.to).for_each(|it| open[(start + usize::from(it)) % week] = true);
    }
    open.into_iter().all(|it| it)
}

/// Two spans of a day are one where they touch and make no more than a day.
fn joins(one: Span, next: Span) -> bool {
    next.from <= one.to && one.to.max(next.to) - one.from <= DAY
}

fn days_words(days: &[u8]) -> String {
    if days.len() == 7 {
        return "every day".into();
    }
    let mut runs: Vec<(u8, u8)> = Vec::new();
    for day in days {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == *day => *last = *day,
            _ => runs.push((*day, *day)),
        }
    }
    let name = |day: u8| NAMES[usize::from(day)];
    let run = |(first, last): &(u8, u8)| match last - first {
        0 => name(*first).to_owned(),
        1 => format!("{}, {}", name(*first), name(*last)),
        _ => format!("{}–{}", name(*first), name(*last)),
    };
    runs.iter().map(run).collect::<Vec<_>>().join(", ")
}

fn span_words((from, to): (u16, u16)) -> String {
    match (from, to) {
        (0, DAY) => "all day".into(),
        _ => format!("{}–{}", clock_words(from), clock_words(to)),
    }
}

/// "8:30 am", "noon", "midnight": of a minute counted from midnight.
pub fn clock_words(minute: u16) -> String {
    let minute = minute % DAY;
    let (hour, rest) = (minute / 60, minute % 60);
    let (twelve, half) = (if hour % 12 == 0 { 12 } else { hour % 12 }, ["am", "pm"]);
    let half = half[usize::from(hour >= 12)];
    match (hour, rest) {
        (0, 0) => "midnight".into(),
        (12, 0) => "noon".into(),
        (_, 0) => format!("{twelve} {half}"),
        _ => format!("{twelve}:{rest:02} {half}"),
    }
}

/// "Thu", of a day counted from Monday.
pub fn day_name(day: u8) -> &'static str {
    NAMES[usize::from(day % 7)]
}

/// The time on the wall at a minute counted from midnight.
pub fn clock_time(minute: u16) -> Time {
    let minute = minute % DAY;
    let hour = u8::try_from(minute / 60).unwrap_or(0);
    Time::from_hms(hour, u8::try_from(minute % 60).unwrap_or(0), 0).unwrap_or(Time::MIDNIGHT)
}
