//! How an appointment repeats, as people choose it: every so many days, weeks, months, every year; and how it ends.
//!
//! It is kept as a rule of RFC 5545, and read back from it. Weeks are counted from Monday, as the RFC does where nothing
//! else is said. A month without a 31st has none in such a series: the RFC leaves it out (3.3.10), and the page says so.

use crate::base::{
    day,
    recurrence::{DAY_ENDS, Rule},
};
use time::{Date, Weekday, macros::format_description};

/// The days of a week, with the letters of the RFC.
pub const WEEK: [(Weekday, &str); 7] = [
    (Weekday::Monday, "MO"),
    (Weekday::Tuesday, "TU"),
    (Weekday::Wednesday, "WE"),
    (Weekday::Thursday, "TH"),
    (Weekday::Friday, "FR"),
    (Weekday::Saturday, "SA"),
    (Weekday::Sunday, "SU"),
];

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Every {
    Days(u16),
    /// On these days of every nth week.
    Weeks(u16, Vec<Weekday>),
    Months(u16, OfMonth),
    Years(u16),
}

/// Which day of a month: each is taken from the first day of the series.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OfMonth {
    /// The 15th.
    Day,
    /// The third Tuesday.
    Weekday,
    /// The last Tuesday.
    LastWeekday,
    LastDay,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    Never,
    /// After so many times, those that were cancelled among them.
    After(u32),
    /// On this day at the latest.
    On(Date),
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Repeat {
    pub every: Every,
    pub ends: Ends,
}

impl Repeat {
    /// The rule of a series that begins on a day.
    pub fn rule(&self, first: Date) -> Rule {
        let every = match &self.every {
            Every::Days(n) => format!("FREQ=DAILY;INTERVAL={n}"),
            Every::Weeks(n, days) => {
                let on =
                    WEEK.iter().filter(|(day, _)| days.contains(day)).map(|(_, letters)| *letters);
                format!("FREQ=WEEKLY;INTERVAL={n};BYDAY={}", on.collect::<Vec<_>>().join(","))
            }
            Every::Months(n, of) => format!("FREQ=MONTHLY;INTERVAL={n};{}", of.part(first)),
            Every::Years(n) => format!("FREQ=YEARLY;INTERVAL={n}"),
        };
        let ends = match self.ends {
            Ends::Never => String::new(),
            Ends::After(times) => format!(";COUNT={times}"),
            Ends::On(day) => {
                let form = format_description!("[year][month][day]");
                format!(";UNTIL={}{DAY_ENDS}", day.format(form).unwrap_or_default())
            }
        };
        Rule::from(every + &ends)
    }

    /// A rule of ours, read back.
    pub fn of(rule: &Rule) -> Option<Repeat> {
        let part = |name: &str| {
            let parts = rule.as_str().split(';').filter_map(|it| it.split_once('='));
            parts.into_iter().find(|(it, _)| *it == name).map(|(_, value)| value)
        };
        let n = part("INTERVAL")?.parse().ok()?;
        let every = match part("FREQ")? {
            "DAILY" => Every::Days(n),
            "WEEKLY" => Every::Weeks(n, part("BYDAY")?.split(',').filter_map(weekday).collect()),
            "MONTHLY" => Every::Months(n, OfMonth::read(part("BYMONTHDAY"), part("BYDAY"))?),
            "YEARLY" => Every::Years(n),
            _ => return None,
        };
        let ends = match (part("COUNT"), part("UNTIL")) {
            (Some(times), _) => Ends::After(times.parse().ok()?),
            (_, Some(until)) => {
                let form = format_description!("[year][month][day]");
                Ends::On(Date::parse(until.strip_suffix(DAY_ENDS)?, form).ok()?)
            }
            _ => Ends::Never,
        };
        Some(Repeat { every, ends })
    }

    /// "every week on Tuesday and Thursday, until 3 March 2027"
    pub fn words(&self, first: Date) -> String {
        let n = |n: u16, one: &str| match n {
            1 => format!("every {one}"),
            2 => format!("every other {one}"),
            n => format!("every {n} {one}s"),
        };
        let every = match &self.every {
            Every::Days(every) => n(*every, "day"),
            Every::Weeks(every, days) => {
                let names = WEEK.iter().filter(|(day, _)| days.contains(day));
                let names: Vec<_> = names.map(|(day, _)| day.to_string()).collect();
                format!("{} on {}", n(*every, "week"), listed(&names))
            }
            Every::Months(every, of) => format!("{} on {}", n(*every, "month"), of.words(first)),
            Every::Years(every) => {
                format!("{} on {} {}", n(*every, "year"), first.day(), first.month())
            }
        };
        match self.ends {
            Ends::Never => every,
            Ends::After(1) => format!("{every}, once"),
            Ends::After(times) => format!("{every}, {times} times"),
            Ends::On(day) => format!("{every}, until {}", day::words(day)),
        }
    }

    /// What such a series leaves out, in words.
    pub fn leaves_out(&self, first: Date) -> Option<String> {
        match (&self.every, first.day()) {
            (Every::Months(1, OfMonth::Day), 31) => Some(
                "Months without a 31st have none. “On the last day of the month” is every month."
                    .into(),
            ),
            (Every::Months(_, OfMonth::Day), day @ 29..) => Some(format!(
                "A month without a {day}{} has none. “On the last day of the month” leaves none out.",
                if day == 31 { "st" } else { "th" }
            )),
            (Every::Months(_, OfMonth::Weekday), 29..) => Some(format!(
                "A month without a fifth {} has none. “On the last such weekday” leaves none out.",
                first.weekday()
            )),
            (Every::Years(_), 29) if first.month() == time::Month::February => {
                Some("Years without a 29 February have none.".into())
            }
            _ => None,
        }
    }

    /// Ended the day before another one; `None` where nothing of the series is left.
    pub fn ended_before(&self, first: Date, day: Date) -> Option<Repeat> {
        let last = self.rule(first).days(first, first, day.previous_day()?).pop()?;
        Some(Repeat { ends: Ends::On(last), ..self.clone() })
    }

    /// What is left of it from a day on: fewer times, where they were counted.
    pub fn from_day(&self, first: Date, day: Date) -> Repeat {
        let before = day.previous_day().map(|it| self.rule(first).days(first, first, it).len());
        let gone = before.and_then(|it| u32::try_from(it).ok()).unwrap_or(0);
        let ends = match self.ends {
            Ends::After(times) => Ends::After(times.saturating_sub(gone).max(1)),
            other => other,
        };
        Repeat { ends, ..self.clone() }
    }
}

impl OfMonth {
    fn part(self, first: Date) -> String {
        let (_, letters) = WEEK[usize::from(first.weekday().number_days_from_monday())];
        match self {
            OfMonth::Day => format!("BYMONTHDAY={}", first.day()),
            OfMonth::Weekday => format!("BYDAY={}{letters}", nth(first)),
            OfMonth::LastWeekday => format!("BYDAY=-1{letters}"),
            OfMonth::LastDay => "BYMONTHDAY=-1".into(),
        }
    }

    fn read(day: Option<&str>, weekday: Option<&str>) -> Option<OfMonth> {
        Some(match (day, weekday) {
            (Some("-1"), _) => OfMonth::LastDay,
            (Some(_), _) => OfMonth::Day,
            (None, Some(it)) if it.starts_with("-1") => OfMonth::LastWeekday,
            (None, Some(_)) => OfMonth::Weekday,
            (None, None) => return None,
        })
    }

    fn words(self, first: Date) -> String {
        let counted = ["first", "second", "third", "fourth", "fifth"];
        let nth = counted[usize::from(nth(first) - 1).min(4)];
        match self {
            OfMonth::Day => format!("day {}", first.day()),
            OfMonth::Weekday => format!("the {nth} {}", first.weekday()),
            OfMonth::LastWeekday => format!("the last {}", first.weekday()),
            OfMonth::LastDay => "the last day".into(),
        }
    }
}

/// Which of its weekday a day is in its month.
fn nth(day: Date) -> u8 {
    (day.day() - 1) / 7 + 1
}

fn weekday(letters: &str) -> Option<Weekday> {
    WEEK.iter().find(|(_, it)| *it == letters).map(|(day, _)| *day)
}

/// "Monday, Wednesday and Friday"
fn listed(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn repeat(every: Every) -> Repeat {
        Repeat { every, ends: Ends::Never }
    }

    #[test]
    fn what_is_chosen_is_kept_as_a_rule_and_read_back() {
        // The third Tuesday, which is no last one.
        let first = date!(2026 - 03 - 17);
        for (every, rule, words) in [
            (Every::Days(1), "FREQ=DAILY;INTERVAL=1", "every day"),
            (
                Every::Weeks(2, vec![Weekday::Tuesday, Weekday::Friday]),
                "FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,FR",
                "every other week on Tuesday and Friday",
            ),
            (
                Every::Months(3, OfMonth::Day),
                "FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=17",
                "every 3 months on day 17",
            ),
            (
                Every::Months(1, OfMonth::Weekday),
                "FREQ=MONTHLY;INTERVAL=1;BYDAY=3TU",
                "every month on the third Tuesday",
            ),
            (
                Every::Months(1, OfMonth::LastWeekday),
                "FREQ=MONTHLY;INTERVAL=1;BYDAY=-1TU",
                "every month on the last Tuesday",
            ),
            (
                Every::Months(1, OfMonth::LastDay),
                "FREQ=MONTHLY;INTERVAL=1;BYMONTHDAY=-1",
                "every month on the last day",
            ),
            (Every::Years(1), "FREQ=YEARLY;INTERVAL=1", "every year on 17 March"),
        ] {
            let repeat = repeat(every);
            let kept = repeat.rule(first);
            assert_eq!((kept.as_str(), repeat.words(first).as_str()), (rule, words));
            assert!(Rule::parse(rule).is_some(), "{rule}");
            assert_eq!(Repeat::of(&kept), Some(repeat));
        }
    }

    #[test]
    fn the_31st_says_what_it_leaves_out() {
        let first = date!(2026 - 01 - 31);
        let on = |of| repeat(Every::Months(1, of)).leaves_out(first);
        assert!(on(OfMonth::Day).is_some_and(|it| it.contains("last day of the month")));
        assert_eq!(on(OfMonth::LastDay), None);
        assert_eq!(repeat(Every::Months(1, OfMonth::Day)).leaves_out(date!(2026 - 01 - 28)), None);
        assert!(repeat(Every::Years(1)).leaves_out(date!(2024 - 02 - 29)).is_some());
    }

    #[test]
    fn a_series_is_parted_the_day_before() {
        let first = date!(2026 - 03 - 03);
        let weekly =
            Repeat { every: Every::Weeks(1, vec![Weekday::Tuesday]), ends: Ends::After(8) };
        let day = date!(2026 - 03 - 24);
        let before = weekly.ended_before(first, day).expect("three are left");
        assert_eq!(before.ends, Ends::On(date!(2026 - 03 - 17)));
        assert_eq!(before.rule(first).some(first, 99).len(), 3);
        assert_eq!(weekly.from_day(first, day).ends, Ends::After(5));
        assert_eq!(weekly.ended_before(first, first), None);
    }
}
