//! When a repeating task is due again: so many days, weeks, months or years on, counted from the
//! first day and not from the day before, so that a month that is too short leaves no trace in the
//! months after it.
//!
//! A month without that day has it on its last day (common practice, no source; it is said on the
//! page). What fell due before the task was done is not caught up.

use crate::platform::web::form::Choice;
use std::fmt;
use time::{Date, Duration, Month, util::days_in_month};

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Unit {
    Days,
    Weeks,
    Months,
    Years,
}

impl Choice for Unit {
    const ALL: &'static [Unit] = &[Unit::Days, Unit::Weeks, Unit::Months, Unit::Years];

    fn words(self) -> &'static str {
        match self {
            Unit::Days => "days",
            Unit::Weeks => "weeks",
            Unit::Months => "months",
            Unit::Years => "years",
        }
    }
}

/// Every so many of a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Repeats {
    pub every: i64,
    pub unit: Unit,
}

impl Repeats {
    /// As often as a form takes it.
    pub const MOST: i64 = 99;

    /// The `time`th day after the first; `None` past the end of the calendar.
    fn nth(self, first: Date, time: i64) -> Option<Date> {
        let span = self.every.checked_mul(time)?;
        match self.unit {
            Unit::Days => first.checked_add(Duration::days(span)),
            Unit::Weeks => first.checked_add(Duration::days(span.checked_mul(7)?)),
            Unit::Months => months_on(first, span),
            Unit::Years => months_on(first, span.checked_mul(12)?),
        }
    }

    /// The first day of the series after another day.
    pub fn after(self, first: Date, day: Date) -> Option<Date> {
        let longest = match self.unit {
            Unit::Days => self.every,
            Unit::Weeks => self.every * 7,
            Unit::Months => self.every * 31,
            Unit::Years => self.every * 366,
        };
        // No time of the series before this one is later than the day.
        let mut time = ((day - first).whole_days() / longest.max(1)).max(1);
        loop {
            let next = self.nth(first, time)?;
            if next > day {
                return Some(next);
            }
            time += 1;
        }
    }

    /// What happens in a month, or a February, that has no such day.
    pub fn short_month(self, first: Date) -> Option<String> {
        match self.unit {
            Unit::Months if first.day() > 28 => {
                let ending = if first.day() == 31 { "st" } else { "th" };
                let day = first.day();
                Some(format!("In a month without a {day}{ending} it is due on the last day."))
            }
            Unit::Years if first.day() == 29 && first.month() == Month::February => {
                Some("In a year without 29 February it is due on the 28th.".to_owned())
            }
            _ => None,
        }
    }
}

fn months_on(first: Date, months: i64) -> Option<Date> {
    let count = i64::from(first.year()) * 12 + i64::from(first.month() as u8) - 1;
    let count = count.checked_add(months)?;
    let year = i32::try_from(count.div_euclid(12)).ok()?;
    let month = Month::try_from(u8::try_from(count.rem_euclid(12) + 1).ok()?).ok()?;
    let day = first.day().min(days_in_month(month, year));
    Date::from_calendar_date(year, month, day).ok()
}

impl fmt::Display for Repeats {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.every {
            1 => write!(f, "every {}", self.unit.words().trim_end_matches('s')),
            many => write!(f, "every {many} {}", self.unit.words()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn every(every: i64, unit: Unit) -> Repeats {
        Repeats { every, unit }
    }

    #[test]
    fn a_month_without_that_day_has_it_on_its_last() {
        // The same days as python-dateutil's relativedelta gives (`first + relativedelta(months=n)`),
        // which clips a day that a month has not to the month's last.
        for (first, repeats, then) in [
            (
                date!(2027 - 01 - 31),
                every(1, Unit::Months),
                [date!(2027 - 02 - 28), date!(2027 - 03 - 31), date!(2027 - 04 - 30)],
            ),
            (
                date!(2027 - 11 - 30),
                every(3, Unit::Months),
                [date!(2028 - 02 - 29), date!(2028 - 05 - 30), date!(2028 - 08 - 30)],
            ),
            (
                date!(2028 - 02 - 29),
                every(1, Unit::Years),
                [date!(2029 - 02 - 28), date!(2030 - 02 - 28), date!(2031 - 02 - 28)],
            ),
            (
                date!(2026 - 12 - 28),
                every(2, Unit::Weeks),
                [date!(2027 - 01 - 11), date!(2027 - 01 - 25), date!(2027 - 02 - 08)],
            ),
        ] {
            let mut day = first;
            for next in then {
                day = repeats.after(first, day).expect("a day");
                assert_eq!(day, next, "{repeats} from {first}");
            }
        }
        assert_eq!(
            every(4, Unit::Years).nth(date!(2028 - 02 - 29), 1),
            Some(date!(2032 - 02 - 29))
        );
    }

    #[test]
    fn what_fell_due_meanwhile_is_not_caught_up() {
        let first = date!(2026 - 11 - 01);
        assert_eq!(
            every(1, Unit::Weeks).after(first, date!(2026 - 11 - 20)),
            Some(date!(2026 - 11 - 22))
        );
        assert_eq!(
            every(1, Unit::Weeks).after(first, date!(2026 - 11 - 22)),
            Some(date!(2026 - 11 - 29))
        );
        assert_eq!(
            every(1, Unit::Days).after(first, date!(2126 - 11 - 01)),
            Some(date!(2126 - 11 - 02))
        );
        assert_eq!(
            every(99, Unit::Years).after(date!(9990 - 01 - 01), date!(9990 - 01 - 01)),
            None
        );
    }

    #[test]
    fn every_day_of_a_series_is_found_and_no_other() {
        for unit in Unit::ALL {
            for n in [1, 2, 3, 12, 99] {
                let (repeats, first) = (every(n, *unit), date!(2027 - 08 - 31));
                let mut day = first;
                for time in 1..40 {
                    let next = repeats.after(first, day).expect("a day");
                    assert_eq!(Some(next), repeats.nth(first, time), "{repeats}");
                    // From any day between two, the later one.
                    let between = next.previous_day().expect("a day").max(day);
                    assert_eq!(repeats.after(first, between), Some(next), "{repeats}");
                    day = next;
                }
            }
        }
    }

    #[test]
    fn is_said_in_words() {
        assert_eq!(every(1, Unit::Weeks).to_string(), "every week");
        assert_eq!(every(3, Unit::Months).to_string(), "every 3 months");
        let months = every(1, Unit::Months);
        let says = "In a month without a 31st it is due on the last day.";
        assert_eq!(months.short_month(date!(2027 - 01 - 31)).as_deref(), Some(says));
        assert_eq!(months.short_month(date!(2027 - 01 - 28)), None);
    }
}
