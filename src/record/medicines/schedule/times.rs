//! At which times of a day how much is taken: by the four standard times and by the clock.
//!
//! The four are those of the universal medication schedule (Institute of Medicine, 2008): morning
//! 6–9, noon 11–1, evening 4–6, bedtime 9–11. Kept as people read it: "morning 1, 14:30 0.5".

pub use crate::base::time_of_day::{read as clock, words as clock_words};

use crate::base::quantity::Quantity;
use serde::Serialize;
use std::fmt;
use time::Time;

/// A time of the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum When {
    Morning,
    Noon,
    Evening,
    Bedtime,
    /// By the clock.
    At(Time),
}

impl When {
    /// The four, each with its name: in a form, and as it is kept.
    pub const STANDARD: [(When, &str); 4] = [
        (When::Morning, "morning"),
        (When::Noon, "noon"),
        (When::Evening, "evening"),
        (When::Bedtime, "bedtime"),
    ];

    /// Its name in a form, and as it is kept.
    pub fn name(self) -> String {
        if let When::At(time) = self {
            return format!("{:02}:{:02}", time.hour(), time.minute());
        }
        let standard = When::STANDARD.iter().find(|(when, _)| *when == self);
        standard.map_or_else(String::new, |(_, name)| (*name).to_owned())
    }

    /// As a heading says it: "morning", "2:30 pm".
    pub fn title(self) -> String {
        match self {
            When::At(time) => clock_words(time),
            standard => standard.name(),
        }
    }

    pub fn of(name: &str) -> Option<When> {
        let standard = When::STANDARD.iter().find(|(_, it)| *it == name);
        standard.map(|(when, _)| *when).or_else(|| {
            let (hour, minute) = name.split_once(':')?;
            Some(When::At(Time::from_hms(hour.parse().ok()?, minute.parse().ok()?, 0).ok()?))
        })
    }

    /// As directions say it: "in the morning", "at 2:30 pm".
    pub fn words(self) -> String {
        match self {
            When::Morning => "in the morning".into(),
            When::Noon => "at noon".into(),
            When::Evening => "in the evening".into(),
            When::Bedtime => "at bedtime".into(),
            When::At(time) => format!("at {}", clock_words(time)),
        }
    }

    /// The hours it stands for.
    pub fn window(self) -> Option<&'static str> {
        match self {
            When::Morning => Some("6–9 am"),
            When::Noon => Some("11 am–1 pm"),
            When::Evening => Some("4–6 pm"),
            When::Bedtime => Some("9–11 pm"),
            When::At(_) => None,
        }
    }

    /// The time of the day by which it is over.
    pub fn ends(self) -> Time {
        let hour = match self {
            When::Morning => 9,
            When::Noon => 13,
            When::Evening => 18,
            When::Bedtime => 23,
            When::At(time) => return time,
        };
        Time::from_hms(hour, 0, 0).unwrap_or(Time::MIDNIGHT)
    }

    /// The minute of the day at which it begins: the order of a day.
    pub fn begins(self) -> u16 {
        match self {
            When::Morning => 6 * 60,
            When::Noon => 11 * 60,
            When::Evening => 16 * 60,
            When::Bedtime => 21 * 60,
            When::At(time) => u16::from(time.hour()) * 60 + u16::from(time.minute()),
        }
    }
}

/// How much at which times, in the order of the day.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(into = "String")]
#[sqlx(transparent)]
pub struct Times(String);

impl Times {
    pub fn of(all: impl IntoIterator<Item = (When, Quantity)>) -> Times {
        let mut all: Vec<_> = all.into_iter().collect();
        all.sort_by_key(|(when, _)| when.begins());
        let each = all.iter().map(|(when, amount)| format!("{} {}", when.name(), plain(*amount)));
        Times(each.collect::<Vec<_>>().join(", "))
    }

    pub fn each(&self) -> impl Iterator<Item = (When, Quantity)> {
        self.0.split(", ").filter_map(|it| {
            let (when, amount) = it.split_once(' ')?;
            Some((When::of(when)?, Quantity::parse(amount).ok()??))
        })
    }

    pub fn is_empty(&self) -> bool {
        self.each().next().is_none()
    }

    /// What a day takes in all.
    pub fn a_day(&self) -> Quantity {
        self.each().map(|(_, amount)| amount).sum()
    }

    /// Reads the times by the clock: "8:30 am 1; 2 pm 1/2".
    pub fn read_clock(typed: &str) -> Result<Vec<(When, Quantity)>, String> {
        let parts = typed.split([';', '\n']).map(str::trim).filter(|it| !it.is_empty());
        parts.map(entry).collect()
    }

    /// The times by the clock, as they are typed.
    pub fn clock_typed(&self) -> String {
        let clock = self.each().filter_map(|(when, amount)| match when {
            When::At(time) => Some(format!("{} {}", clock_words(time), plain(amount))),
            _ => None,
        });
        clock.collect::<Vec<_>>().join("; ")
    }
}

/// Without the separator of thousands, which would part the list.
fn plain(amount: Quantity) -> String {
    amount.to_string().replace(',', "")
}

fn entry(part: &str) -> Result<(When, Quantity), String> {
    let unread = || format!("“{part}” was not read. Write a time and how much, like 8:30 am 1.");
    let words: Vec<&str> = part.split_whitespace().collect();
    // The longest beginning that is a time; what follows is how much.
    let split = (1..=words.len().min(2)).rev().find_map(|count| {
        let time = clock(&words[..count].join(" "))?;
        Some((time, words[count..].join(" ")))
    });
    let (time, amount) = split.ok_or_else(unread)?;
    match Quantity::parse(&amount) {
        Ok(Some(amount)) if !amount.is_zero() => Ok((When::At(time), amount)),
        Ok(_) => Err(format!("How much at {}? Write it behind the time.", clock_words(time))),
        Err(e) => Err(format!("“{part}”: {e}")),
    }
}

impl fmt::Display for Times {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<Times> for String {
    fn from(times: Times) -> String {
        times.0
    }
}

impl From<String> for Times {
    fn from(kept: String) -> Times {
        Times(kept)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::time;

    #[test]
    fn clock_times_are_read_as_people_write_them() {
        for (typed, found) in [
            ("8:30", Some(time!(8:30))),
            ("8 am", Some(time!(8:00))),
            ("2:30pm", Some(time!(14:30))),
            ("12 am", Some(time!(0:00))),
            ("12 pm", Some(time!(12:00))),
            ("14:30", Some(time!(14:30))),
            ("8 a.m.", Some(time!(8:00))),
            ("0:05", Some(time!(0:05))),
            ("8", None),
            ("25:00", None),
            ("13 pm", None),
            ("8:3", None),
            ("8:60", None),
            ("", None),
        ] {
            assert_eq!(clock(typed), found, "{typed}");
        }
    }

    #[test]
    fn times_stand_in_the_order_of_the_day_and_read_back() {
        let clock = Times::read_clock("2 pm 1/2; 8:30 am 1").expect("read");
        let times = Times::of([(When::Bedtime, Quantity::whole(2))].into_iter().chain(clock));
        assert_eq!(times.to_string(), "08:30 1, 14:00 0.5, bedtime 2");
        assert_eq!(Times::of(times.each()), times);
        assert_eq!(times.a_day().to_string(), "3.5");
        assert_eq!(times.clock_typed(), "8:30 am 1; 2 pm 0.5");
        let large = Times::of([(When::Morning, Quantity::whole(2500))]);
        assert_eq!(large.each().next(), Some((When::Morning, Quantity::whole(2500))));
    }

    #[test]
    fn what_is_missing_is_asked_for() {
        for (typed, says) in [
            ("8:30 am", "How much at 8:30 am? Write it behind the time."),
            ("often 1", "“often 1” was not read. Write a time and how much, like 8:30 am 1."),
            ("8 am 1,5", "“8 am 1,5”: Write the number with a point, like 1.5."),
            ("8 am 0", "How much at 8 am? Write it behind the time."),
        ] {
            assert_eq!(Times::read_clock(typed), Err(says.to_owned()), "{typed}");
        }
    }
}
