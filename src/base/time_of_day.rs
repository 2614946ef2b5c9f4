//! A time on a wall: how people say and type it, and how it is kept ("09:30").
//!
//! It has no zone and no day; which moment it is on a day in a place is answered by `zone`.

use serde::Serialize;
use std::fmt;
use time::Time;

/// A time of the day, kept as "09:30".
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, sqlx::Type)]
#[serde(transparent)]
#[sqlx(transparent)]
pub struct TimeOfDay(String);

impl TimeOfDay {
    pub fn of(time: Time) -> TimeOfDay {
        TimeOfDay(format!("{:02}:{:02}", time.hour(), time.minute()))
    }

    /// Reads what `read` reads.
    pub fn parse(typed: &str) -> Option<TimeOfDay> {
        read(typed).map(TimeOfDay::of)
    }

    /// A kept text that is no time counts as midnight: no row of ours holds one.
    pub fn time(&self) -> Time {
        read(&self.0).unwrap_or(Time::MIDNIGHT)
    }

    /// "9:30 am"
    pub fn words(&self) -> String {
        words(self.time())
    }
}

impl fmt::Display for TimeOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words())
    }
}

impl From<String> for TimeOfDay {
    fn from(kept: String) -> TimeOfDay {
        TimeOfDay(kept)
    }
}

/// "2:30 pm", "8 am", "midnight"
pub fn words(time: Time) -> String {
    let (hour, minute) = (time.hour(), time.minute());
    match (hour, minute) {
        (0, 0) => return "midnight".into(),
        (12, 0) => return "12 noon".into(),
        _ => {}
    }
    let half = if hour < 12 { "am" } else { "pm" };
    let hour = (hour + 11) % 12 + 1;
    if minute == 0 { format!("{hour} {half}") } else { format!("{hour}:{minute:02} {half}") }
}

/// Reads "8:30", "8 am", "2:30pm", "14:30", "noon", "midnight".
pub fn read(typed: &str) -> Option<Time> {
    let typed = typed.trim().to_lowercase().replace('.', "");
    match typed.as_str() {
        "midnight" => return Some(Time::MIDNIGHT),
        "noon" | "12 noon" => return Time::from_hms(12, 0, 0).ok(),
        _ => {}
    }
    let (digits, half) = match typed.strip_suffix("am").or(typed.strip_suffix("pm")) {
        Some(digits) => (digits.trim_end(), Some(typed.ends_with("pm"))),
        None => (typed.as_str(), None),
    };
    let (hour, minute) = digits.split_once(':').unwrap_or((digits, "00"));
    let number = |it: &str| (1..=2).contains(&it.len()).then(|| it.parse::<u8>().ok()).flatten();
    let (hour, minute) = (number(hour)?, number(minute).filter(|_| minute.len() == 2)?);
    let hour = match half {
        None if !digits.contains(':') => return None,
        None => hour,
        Some(_) if !(1..=12).contains(&hour) => return None,
        Some(late) => hour % 12 + if late { 12 } else { 0 },
    };
    Time::from_hms(hour, minute, 0).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn is_read_as_it_is_said() {
        for minute in 0..24 * 60_u16 {
            let [hour, minute] =
                [minute / 60, minute % 60].map(|it| u8::try_from(it).expect("fits"));
            let time = Time::from_hms(hour, minute, 0).expect("a time");
            let kept = TimeOfDay::of(time);
            assert_eq!(TimeOfDay::parse(&kept.words()), Some(kept.clone()), "{kept}");
            assert_eq!(kept.time(), time);
        }
        for typed in ["", "9", "25:00", "13 pm", "9:5", "half past nine"] {
            assert_eq!(TimeOfDay::parse(typed), None, "{typed}");
        }
    }
}
