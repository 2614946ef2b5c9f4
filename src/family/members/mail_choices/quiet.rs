//! Quiet hours: when a member gets no mail, on the clock where she is, and when what falls in them
//! goes instead.
//!
//! It goes at their end, unless what it is about would then be over or less than an hour away: then
//! a few minutes before they begin. Clocks that spring forward or fall back are left to `zone`.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{MemberId, QuietHoursId},
    zone::Zone,
};
use serde::Serialize;
use std::fmt;
use time::{Duration, Time};

/// A time on the wall, to the minute, kept as "21:00".
#[derive(Clone, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(transparent)]
#[sqlx(transparent)]
pub struct WallTime(String);

impl WallTime {
    /// Reads "21:00", "9 pm" and "9:30 PM".
    pub fn parse(typed: &str) -> Option<WallTime> {
        let typed = typed.trim().to_ascii_lowercase();
        let (clock, half) = match typed.strip_suffix("am") {
            Some(rest) => (rest, Some(0)),
            None => match typed.strip_suffix("pm") {
                Some(rest) => (rest, Some(12)),
                None => (typed.as_str(), None),
            },
        };
        let (hour, minute) = clock.trim().split_once(':').unwrap_or((clock.trim(), "00"));
        let plain = |it: &str| it.len() <= 2 && it.bytes().all(|byte| byte.is_ascii_digit());
        let number = |it: &str| if plain(it) { it.parse::<u8>().ok() } else { None };
        let (hour, minute) = (number(hour)?, number(minute)?);
        let hour = match half {
            Some(half) => (1..=12).contains(&hour).then(|| hour % 12 + half)?,
            None if typed.contains(':') => hour,
            None => return None,
        };
        Time::from_hms(hour, minute, 0).ok()?;
        Some(WallTime(format!("{hour:02}:{minute:02}")))
    }

    pub fn time(&self) -> Time {
        let read = self.0.split_once(':').and_then(|(hour, minute)| {
            Time::from_hms(hour.parse().ok()?, minute.parse().ok()?, 0).ok()
        });
        read.unwrap_or(Time::MIDNIGHT)
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// "9:00 pm"
impl fmt::Display for WallTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (hour, minute, _) = self.time().as_hms();
        let half = if hour < 12 { "am" } else { "pm" };
        let hour = if hour % 12 == 0 { 12 } else { hour % 12 };
        write!(f, "{hour}:{minute:02} {half}")
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct QuietHours {
    pub id: QuietHoursId,
    pub member_id: MemberId,
    pub starts: WallTime,
    pub ends: WallTime,
    pub version: i64,
}

audited!(QuietHours as "quiet_hours" {
    member_id: "", starts: "quiet from", ends: "quiet until",
} skip { id, version });

/// Less than this before what it is about, a reminder helps nobody any more.
const TOO_LATE: Duration = Duration::hours(1);
/// So long before the quiet hours goes what cannot wait for their end.
const JUST_BEFORE: Duration = Duration::minutes(5);

impl QuietHours {
    /// From nine in the evening to eight in the morning.
    pub fn usual(member_id: MemberId) -> QuietHours {
        let (starts, ends) = (WallTime("21:00".into()), WallTime("08:00".into()));
        QuietHours { id: QuietHoursId::default(), member_id, starts, ends, version: 0 }
    }

    pub fn any(&self) -> bool {
        self.starts != self.ends
    }

    /// The quiet hours that a moment falls in: when they began, and when they end.
    fn around(&self, at: Instant, zone: &Zone) -> Option<(Instant, Instant)> {
        let (starts, ends) = (self.starts.time(), self.ends.time());
        let today = zone.day(at);
        let days = [today.previous_day(), Some(today)];
        let each = days.into_iter().flatten().filter_map(|day| {
            let last = if ends > starts { day } else { day.next_day()? };
            Some((zone.instant(day, starts), zone.instant(last, ends)))
        });
        each.filter(|_| self.any()).find(|(from, until)| *from <= at && at < *until)
    }

    /// When a reminder goes that would go at `at`, about something that begins at `of`.
    pub fn shifted(&self, at: Instant, of: Option<Instant>, zone: &Zone) -> Instant {
        match self.around(at, zone) {
            None => at,
            Some((from, until)) => match of.is_some_and(|of| until.plus(TOO_LATE) > of) {
                true => from.minus(JUST_BEFORE),
                false => until,
            },
        }
    }

    pub fn says(&self) -> String {
        match self.any() {
            true => format!(
                "No mail from {} to {} on your clock. What falls in these hours goes at their end; where an appointment would then be over or less than an hour away, it goes five minutes before they begin.",
                self.starts, self.ends
            ),
            false => "At any hour.".into(),
        }
    }
}

#[cfg(test)]
mod tests;
