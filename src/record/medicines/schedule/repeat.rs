//! On which days a step of a schedule falls, and at which times of a day that is counted in hours.
//!
//! Weeks are counted from Monday, as RFC 5545 does where nothing else is said. "Every n hours" is
//! counted on the wall clock from the first time, so that "every 8 hours" stays at 6, 2 and 10
//! when the clocks are changed (common practice, no source); the hour between is then one longer
//! or shorter than n.

use super::times::When;
use serde::Serialize;
use std::fmt;
use time::{Date, Duration, PrimitiveDateTime, Time, Weekday};

/// A set of days of the week, kept as "mon wed fri".
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(into = "String")]
#[sqlx(transparent)]
pub struct Weekdays(String);

pub const WEEK: [(Weekday, &str, &str); 7] = [
    (Weekday::Monday, "mon", "Monday"),
    (Weekday::Tuesday, "tue", "Tuesday"),
    (Weekday::Wednesday, "wed", "Wednesday"),
    (Weekday::Thursday, "thu", "Thursday"),
    (Weekday::Friday, "fri", "Friday"),
    (Weekday::Saturday, "sat", "Saturday"),
    (Weekday::Sunday, "sun", "Sunday"),
];

impl Weekdays {
    pub fn of<'a>(names: impl IntoIterator<Item = &'a str>) -> Weekdays {
        let names: Vec<&str> = names.into_iter().collect();
        let found = WEEK.iter().filter(|(_, short, _)| names.contains(short));
        Weekdays(found.map(|(_, short, _)| *short).collect::<Vec<_>>().join(" "))
    }

    pub fn has(&self, day: Weekday) -> bool {
        WEEK.iter().any(|(it, short, _)| *it == day && self.0.split(' ').any(|kept| kept == *short))
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub fn count(&self) -> usize {
        WEEK.iter().filter(|(day, ..)| self.has(*day)).count()
    }

    /// "Monday, Wednesday and Friday"
    pub fn words(&self) -> String {
        let names = WEEK.iter().filter(|(day, ..)| self.has(*day)).map(|(.., long)| *long);
        super::directions::listed(&names.collect::<Vec<_>>())
    }
}

impl fmt::Display for Weekdays {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<Weekdays> for String {
    fn from(days: Weekdays) -> String {
        days.0
    }
}

impl From<String> for Weekdays {
    fn from(kept: String) -> Weekdays {
        Weekdays(kept)
    }
}

/// How a step repeats.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Repeat {
    /// Every n days, from the step's first day.
    Days(i64),
    /// On these days of every nth week, counted from the week of the step's first day.
    Weeks(i64, Weekdays),
    /// Every n hours, from a time on the step's first day.
    Hours(i64),
    /// Only when there is a reason.
    AsNeeded,
}

impl Repeat {
    /// Whether a step that began on a day falls on another one.
    pub fn falls_on(&self, from: Date, day: Date) -> bool {
        let since = (day - from).whole_days();
        if since < 0 {
            return false;
        }
        match self {
            Repeat::Days(every) => since % every == 0,
            Repeat::Weeks(every, days) => {
                let weeks = (monday_of(day) - monday_of(from)).whole_weeks();
                days.has(day.weekday()) && weeks % every == 0
            }
            Repeat::Hours(_) => true,
            Repeat::AsNeeded => false,
        }
    }

    /// The times on one day of what is counted in hours from a first time.
    pub fn hours_on(every: i64, (from, first): (Date, Time), day: Date) -> Vec<When> {
        let (start, midnight) = (PrimitiveDateTime::new(from, first), day.midnight());
        let passed = (midnight - start).whole_minutes().max(0);
        let step = every * 60;
        let next = start + Duration::minutes((passed + step - 1) / step * step);
        let times = (0..24).map(|count| next + Duration::hours(every * count));
        times
            .take_while(|it| it.date() <= day)
            .filter(|it| it.date() == day)
            .map(|it| When::At(it.time()))
            .collect()
    }
}

fn monday_of(day: Date) -> Date {
    day - Duration::days(i64::from(day.weekday().number_days_from_monday()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::{date, time};

    fn days(repeat: &Repeat, from: Date, count: usize) -> Vec<String> {
        let all = (0..400).map(|it| from + Duration::days(it));
        all.filter(|it| repeat.falls_on(from, *it)).take(count).map(|it| it.to_string()).collect()
    }

    /// IETF RFC 5545 (2009), 3.8.5.3: DAILY;COUNT=10 and WEEKLY;INTERVAL=2;COUNT=8;BYDAY=TU,TH
    /// from 2 September 1997. That example counts weeks from Sunday; on these days it is the same.
    #[test]
    fn days_and_weeks_fall_as_in_rfc_5545() {
        let from = date!(1997 - 09 - 02);
        let daily = days(&Repeat::Days(1), from, 10);
        assert_eq!((daily[0].as_str(), daily[9].as_str()), ("1997-09-02", "1997-09-11"));
        let fortnight = Repeat::Weeks(2, Weekdays::of(["tue", "thu"]));
        let expected = [
            "1997-09-02",
            "1997-09-04",
            "1997-09-16",
            "1997-09-18",
            "1997-09-30",
            "1997-10-02",
            "1997-10-14",
            "1997-10-16",
        ];
        assert_eq!(days(&fortnight, from, 8), expected);
        // RFC 5545: every other day, from the same day.
        assert_eq!(days(&Repeat::Days(2), from, 3), ["1997-09-02", "1997-09-04", "1997-09-06"]);
    }

    #[test]
    fn hours_are_counted_over_midnight() {
        let from = (date!(2026 - 03 - 07), time!(6:00));
        let on = |every, day| {
            let all = Repeat::hours_on(every, from, day).into_iter().map(When::name);
            all.collect::<Vec<_>>().join(" ")
        };
        assert_eq!(on(8, date!(2026 - 03 - 07)), "06:00 14:00 22:00");
        // The night the clocks are put forward in the United States: 8 March 2026.
        assert_eq!(on(8, date!(2026 - 03 - 08)), "06:00 14:00 22:00");
        assert_eq!(on(5, date!(2026 - 03 - 08)), "02:00 07:00 12:00 17:00 22:00");
        assert_eq!(on(36, date!(2026 - 03 - 08)), "18:00");
        assert_eq!(on(36, date!(2026 - 03 - 09)), "");
        assert_eq!(on(36, date!(2026 - 03 - 10)), "06:00");
        assert_eq!(on(1, date!(2026 - 03 - 09)).split(' ').count(), 24);
        assert_eq!(on(8, date!(2026 - 03 - 06)), "");
    }

    #[test]
    fn a_set_of_days_reads_as_a_person_lists_them() {
        let days = Weekdays::of(["fri", "mon", "nonsense", "wed"]);
        assert_eq!((days.to_string().as_str(), days.count()), ("mon wed fri", 3));
        assert_eq!(days.words(), "Monday, Wednesday and Friday");
        assert!(days.has(Weekday::Friday) && !days.has(Weekday::Sunday));
    }
}
