//! On which days something falls that repeats: a rule as IETF RFC 5545 (2009), 3.3.10 writes it.
//!
//! The only place that speaks of the crate rrule. A rule is expanded in days, as on a wall without a
//! zone; which moment a time on one of the days is, `zone` says. So clocks that are changed move no
//! day. An expansion ends with the days asked for, and never goes past the year 2199.

use rrule::RRuleSet;
use serde::Serialize;
use std::fmt;
use time::{Date, OffsetDateTime, macros::date};

/// The value of an RRULE. Its end, where it has one, is on the same wall: `UNTIL=20270301T235959`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(transparent)]
#[sqlx(transparent)]
pub struct Rule(String);

/// No day is looked for after this one.
pub const LAST: Date = date!(2199 - 12 - 31);

/// As `UNTIL` ends: the last second of a day.
pub const DAY_ENDS: &str = "T235959";

impl Rule {
    /// None for a text that is no rule.
    pub fn parse(text: &str) -> Option<Rule> {
        let rule = Rule(text.to_owned());
        let one = !text.contains(char::is_control);
        rule.set(date!(2024 - 02 - 29)).filter(|_| one).map(|_| rule)
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The days from one to another on which it falls, counted from its first.
    pub fn days(&self, first: Date, from: Date, to: Date) -> Vec<Date> {
        self.each(first, to, usize::MAX).into_iter().filter(|it| *it >= from).collect()
    }

    /// So many days, from the first on.
    pub fn some(&self, first: Date, most: usize) -> Vec<Date> {
        self.each(first, LAST, most)
    }

    pub fn falls_on(&self, first: Date, day: Date) -> bool {
        self.each(first, day, usize::MAX).last() == Some(&day)
    }

    fn each(&self, first: Date, to: Date, most: usize) -> Vec<Date> {
        let to = to.min(LAST);
        let Some(set) = self.set(first).filter(|_| first <= to) else { return Vec::new() };
        let day = |seconds| OffsetDateTime::from_unix_timestamp(seconds).ok().map(|it| it.date());
        let set = set.limit();
        let days = set.into_iter().map_while(|it| day(it.timestamp()));
        days.take_while(|it| *it <= to).take(most).collect()
    }

    /// The crate is spoken to in text, in UTC: the zone that changes no clocks.
    fn set(&self, first: Date) -> Option<RRuleSet> {
        let value = self.0.replace(DAY_ENDS, &format!("{DAY_ENDS}Z"));
        let (year, month, day) = (first.year(), u8::from(first.month()), first.day());
        format!("DTSTART:{year:04}{month:02}{day:02}T000000Z\nRRULE:{value}").parse().ok()
    }
}

impl fmt::Display for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<String> for Rule {
    fn from(kept: String) -> Rule {
        Rule(kept)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn some(rule: &str, first: Date, most: usize) -> Vec<String> {
        let rule = Rule::parse(rule).expect("a rule");
        rule.some(first, most).iter().map(ToString::to_string).collect()
    }

    /// IETF RFC 5545 (2009), 3.8.5.3; python-dateutil 2.9 agrees.
    #[test]
    fn daily_for_ten_times_as_in_rfc_5545() {
        let days = some("FREQ=DAILY;COUNT=10", date!(1997 - 09 - 02), 99);
        let expected: Vec<_> = (2..=11).map(|it| format!("1997-09-{it:02}")).collect();
        assert_eq!(days, expected);
    }

    /// IETF RFC 5545 (2009), 3.8.5.3; python-dateutil 2.9 agrees.
    #[test]
    fn every_other_week_on_two_days_as_in_rfc_5545() {
        let rule = "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH";
        let days = some(rule, date!(1997 - 09 - 02), 99);
        let (september, october) = ([2, 4, 16, 18, 30], [2, 14, 16]);
        let september = september.map(|it| format!("1997-09-{it:02}"));
        let october = october.map(|it| format!("1997-10-{it:02}"));
        assert_eq!(days, [&september[..], &october[..]].concat());
    }

    /// IETF RFC 5545 (2009), 3.8.5.3; python-dateutil 2.9 agrees.
    #[test]
    fn the_second_monday_from_the_end_of_the_month_as_in_rfc_5545() {
        let days = some("FREQ=MONTHLY;COUNT=6;BYDAY=-2MO", date!(1997 - 09 - 22), 99);
        let expected =
            ["1997-09-22", "1997-10-20", "1997-11-17", "1997-12-22", "1998-01-19", "1998-02-16"];
        assert_eq!(days, expected);
    }

    /// IETF RFC 5545 (2009), 3.8.5.3; python-dateutil 2.9 agrees.
    #[test]
    fn the_third_day_from_the_end_of_the_month_as_in_rfc_5545() {
        let days = some("FREQ=MONTHLY;BYMONTHDAY=-3", date!(1997 - 09 - 28), 6);
        let expected =
            ["1997-09-28", "1997-10-29", "1997-11-28", "1997-12-29", "1998-01-29", "1998-02-26"];
        assert_eq!(days, expected);
    }

    /// IETF RFC 5545 (2009), 3.8.5.3: a date that does not exist (30 February) is left out.
    #[test]
    fn a_day_that_a_month_has_not_is_left_out_as_in_rfc_5545() {
        let days = some("FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", date!(2007 - 01 - 15), 99);
        assert_eq!(days, ["2007-01-15", "2007-01-30", "2007-02-15", "2007-03-15", "2007-03-30"]);
        let days = some("FREQ=MONTHLY;BYMONTHDAY=31", date!(2026 - 01 - 31), 4);
        assert_eq!(days, ["2026-01-31", "2026-03-31", "2026-05-31", "2026-07-31"]);
        let days = some("FREQ=MONTHLY;BYMONTHDAY=-1", date!(2026 - 01 - 31), 3);
        assert_eq!(days, ["2026-01-31", "2026-02-28", "2026-03-31"]);
    }

    /// IETF RFC 5545 (2009), 3.3.10; python-dateutil 2.9 agrees.
    #[test]
    fn every_year_on_29_february_is_every_leap_year() {
        let days = some("FREQ=YEARLY", date!(2024 - 02 - 29), 3);
        assert_eq!(days, ["2024-02-29", "2028-02-29", "2032-02-29"]);
    }

    #[test]
    fn it_ends_with_its_last_day() {
        let rule = Rule::parse("FREQ=DAILY;UNTIL=20260309T235959").expect("a rule");
        let first = date!(2026 - 03 - 07);
        assert_eq!(rule.days(first, first, LAST).len(), 3);
        assert!(rule.falls_on(first, date!(2026 - 03 - 09)));
        assert!(!rule.falls_on(first, date!(2026 - 03 - 10)));
        assert!(!rule.falls_on(first, date!(2026 - 03 - 06)));
    }

    /// Nothing is without an end: every day until the year 2200, and no further.
    #[test]
    fn an_expansion_comes_to_an_end() {
        let rule = Rule::parse("FREQ=DAILY;INTERVAL=1").expect("a rule");
        let days = rule.days(date!(2150 - 01 - 01), Date::MIN, Date::MAX);
        assert_eq!((days.len(), days.last()), (18_262, Some(&LAST)));
        // Never: the first day is none of the days, and no month of the rule has one.
        let never = Rule::parse("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30").expect("a rule");
        assert_eq!(never.some(date!(2026 - 02 - 01), 1), Vec::<Date>::new());
        assert_eq!(rule.days(LAST, LAST, date!(2026 - 01 - 01)), Vec::<Date>::new());
    }

    #[test]
    fn what_is_no_rule_is_not_taken() {
        for text in ["", "often", "FREQ=", "FREQ=DAILY;INTERVAL=x", "FREQ=DAILY\nRRULE:FREQ=DAILY"]
        {
            assert_eq!(Rule::parse(text).map(|it| it.some(LAST, 1).len()), None, "{text}");
        }
    }
}
