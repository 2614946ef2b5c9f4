//! Days of the calendar, as people say and type them.
//!
//! A day has no zone and no hour: a birthday or a due date is the same day for every sibling. Which day it is for
//! someone right now is answered by `zone`.

use time::{Date, Month, Weekday, util::days_in_month};

/// Years that a care record can speak of; a year outside is taken for a slip of the finger.
const YEARS: std::ops::RangeInclusive<i32> = 1850..=2199;

/// "9 March 1944"
pub fn words(day: Date) -> String {
    format!("{} {} {}", day.day(), day.month(), day.year())
}

/// A day as the database and JSON write it: exactly `2026-03-09`.
pub fn iso(text: &str) -> Option<Date> {
    Date::parse(text, time::macros::format_description!("[year]-[month]-[day]")).ok()
}

/// "Tue 3 Mar 2026"
pub fn short_words(day: Date) -> String {
    let (weekday, month) = (day.weekday().to_string(), day.month().to_string());
    format!("{} {} {} {}", &weekday[..3], day.day(), &month[..3], day.year())
}

/// Whole years lived; below zero before birth. Someone born on 29 February turns a year older on 1 March when the
/// year has no 29 February (common practice, no source; some places say 28 February).
pub fn age(born: Date, on: Date) -> i32 {
    let birthday_reached = (on.month() as u8, on.day()) >= (born.month() as u8, born.day());
    on.year() - born.year() - i32::from(!birthday_reached)
}

/// "today", "yesterday", "9 days ago", "3 weeks ago", "2 months ago", "in 3 days". Days up to 13, then whole weeks up
/// to two months, then whole months up to two years, then whole years: never more than has passed.
pub fn ago(then: Date, today: Date) -> String {
    let days = (today - then).whole_days();
    match days {
        0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        -1 => "tomorrow".to_owned(),
        2.. => format!("{} ago", length(then, today)),
        _ => format!("in {}", length(today, then)),
    }
}

fn length(from: Date, to: Date) -> String {
    let days = (to - from).whole_days();
    let months = whole_months(from, to);
    match (days, months) {
        (..14, _) => format!("{days} days"),
        (_, ..2) => format!("{} weeks", days / 7),
        (_, ..24) => format!("{months} months"),
        _ => format!("{} years", months / 12),
    }
}

fn whole_months(from: Date, to: Date) -> i32 {
    let count = |day: Date| day.year() * 12 + i32::from(day.month() as u8);
    count(to) - count(from) - i32::from(to.day() < from.day())
}

/// The same day so many months later, or that month's last.
pub fn months_after(day: Date, months: i64) -> Date {
    let count = i64::from(day.year()) * 12 + i64::from(day.month() as u8) - 1 + months;
    let year = i32::try_from(count.div_euclid(12)).unwrap_or(day.year());
    let month = Month::January.nth_next(u8::try_from(count.rem_euclid(12)).unwrap_or(0));
    let last = days_in_month(month, year);
    Date::from_calendar_date(year, month, day.day().min(last)).unwrap_or(day)
}

/// Reads "2026-03-03", "3 Mar 2026", "3rd March 2026", "March 3, 2026", "Tue 3 Mar 2026" and "3/3/2026".
///
/// Numbers between slashes are month, day, year, as written in the United States. None for a day that does not exist,
/// a weekday that is not that day's, or a year outside 1850 to 2199.
pub fn parse(typed: &str) -> Option<Date> {
    let typed = typed.trim();
    if let Some([year, month, day]) = three(typed.split('-')) {
        return day_of(year, month_number(month)?, day);
    }
    if let Some([month, day, year]) = three(typed.split('/')) {
        return day_of(year, month_number(month)?, day);
    }
    let mut words: Vec<&str> =
        typed.split([' ', ',', '.']).filter(|word| !word.is_empty()).collect();
    let weekday = words.first().and_then(|word| weekday_named(word));
    if weekday.is_some() {
        words.remove(0);
    }
    let [first, second, year] = three(words.into_iter())?;
    let day = match month_named(first) {
        Some(month) => day_of(year, month, second),
        None => day_of(year, month_named(second)?, first),
    }?;
    weekday.is_none_or(|weekday| weekday == day.weekday()).then_some(day)
}

fn three<'a>(parts: impl Iterator<Item = &'a str>) -> Option<[&'a str; 3]> {
    parts.map(str::trim).collect::<Vec<_>>().try_into().ok()
}

fn day_of(year: &str, month: Month, day: &str) -> Option<Date> {
    let year = (year.len() == 4).then(|| number(year)).flatten()?;
    let day =
        ["st", "nd", "rd", "th"].iter().find_map(|ending| day.strip_suffix(ending)).unwrap_or(day);
    let day = number(day)?.try_into().ok()?;
    YEARS.contains(&year).then(|| Date::from_calendar_date(year, month, day).ok())?
}

/// Plain digits only: `str::parse` alone would take "+3".
fn number(digits: &str) -> Option<i32> {
    let plain = digits.bytes().all(|byte| byte.is_ascii_digit());
    plain.then(|| digits.parse().ok()).flatten()
}

fn month_number(digits: &str) -> Option<Month> {
    u8::try_from(number(digits)?).ok()?.try_into().ok()
}

fn month_named(word: &str) -> Option<Month> {
    let months = (1..=12).filter_map(|number| Month::try_from(number).ok());
    named(word, months).or_else(|| word.eq_ignore_ascii_case("sept").then_some(Month::September))
}

fn weekday_named(word: &str) -> Option<Weekday> {
    named(word, (0..7).map(|days| Weekday::Monday.nth_next(days)))
}

/// The one whose full name or first three letters were typed.
fn named<T: ToString>(word: &str, mut all: impl Iterator<Item = T>) -> Option<T> {
    all.find(|one| {
        let name = one.to_string();
        word.eq_ignore_ascii_case(&name) || word.eq_ignore_ascii_case(&name[..3])
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use time::macros::date;

    #[test]
    fn is_said_in_words() {
        assert_eq!(words(date!(1944 - 03 - 09)), "9 March 1944");
        assert_eq!(short_words(date!(2026 - 03 - 03)), "Tue 3 Mar 2026");
    }

    #[test]
    fn age_changes_on_the_birthday() {
        let born = date!(1944 - 03 - 09);
        assert_eq!(age(born, date!(2026 - 03 - 08)), 81);
        assert_eq!(age(born, date!(2026 - 03 - 09)), 82);
        assert_eq!(age(born, date!(1944 - 03 - 08)), -1);
    }

    #[test]
    fn a_birthday_on_29_february_falls_on_1_march_in_common_years() {
        let born = date!(1944 - 02 - 29);
        assert_eq!(age(born, date!(2026 - 02 - 28)), 81);
        assert_eq!(age(born, date!(2026 - 03 - 01)), 82);
        assert_eq!(age(born, date!(2028 - 02 - 29)), 84);
    }

    #[test]
    fn tells_how_long_ago() {
        let today = date!(2026 - 03 - 31);
        for (then, said) in [
            (date!(2026 - 03 - 31), "today"),
            (date!(2026 - 03 - 30), "yesterday"),
            (date!(2026 - 03 - 22), "9 days ago"),
            (date!(2026 - 03 - 18), "13 days ago"),
            (date!(2026 - 03 - 17), "2 weeks ago"),
            (date!(2026 - 03 - 10), "3 weeks ago"),
            (date!(2026 - 02 - 01), "8 weeks ago"),
            (date!(2026 - 01 - 31), "2 months ago"),
            (date!(2024 - 04 - 01), "23 months ago"),
            (date!(2024 - 03 - 31), "2 years ago"),
            (date!(2023 - 04 - 01), "2 years ago"),
            (date!(2026 - 04 - 01), "tomorrow"),
            (date!(2026 - 04 - 03), "in 3 days"),
            (date!(2026 - 04 - 14), "in 2 weeks"),
            (date!(2029 - 03 - 31), "in 3 years"),
        ] {
            assert_eq!(ago(then, today), said, "{then}");
        }
        assert_eq!(ago(date!(2026 - 01 - 16), date!(2026 - 03 - 15)), "8 weeks ago");
        assert_eq!(ago(date!(2024 - 03 - 16), date!(2026 - 03 - 15)), "23 months ago");
    }

    #[test]
    fn reads_what_people_type() {
        for typed in [
            "2026-03-04",
            " 2026-3-4 ",
            "4 Mar 2026",
            "4 march 2026",
            "4th March 2026",
            "Mar 4, 2026",
            "March 4th 2026",
            "4 Mar. 2026",
            "3/4/2026",
            "03/04/2026",
            "3 / 4 / 2026",
            "Wed 4 Mar 2026",
            "Wednesday, March 4, 2026",
        ] {
            assert_eq!(parse(typed), Some(date!(2026 - 03 - 04)), "{typed}");
        }
        assert_eq!(parse("1 Sept 2026"), Some(date!(2026 - 09 - 01)));
        assert_eq!(parse("29 Feb 2028"), Some(date!(2028 - 02 - 29)));
    }

    #[test]
    fn refuses_what_is_no_day() {
        for typed in [
            "",
            "today",
            "31 Feb 2026",
            "2026-02-29",
            "13/3/2026",
            "3/32/2026",
            "20026-03-04",
            "26-03-04",
            "3/4/26",
            "1849-12-31",
            "2200-01-01",
            "2026-03",
            "2026-03-04-05",
            "4 Mar",
            "4 4 2026",
            "Mar Mar 2026",
            "Tue 4 Mar 2026",
            "+4 Mar 2026",
            "-2026-03-04",
            "4 M 2026",
            "２０２６-03-04",
            "2026-03-04T09:00",
            "0 Mar 2026",
        ] {
            assert_eq!(parse(typed), None, "{typed}");
        }
        assert!(parse("1850-01-01").is_some() && parse("2199-12-31").is_some());
    }

    proptest! {
        #[test]
        fn what_is_said_can_be_read_back(ordinal in 0_i32..127_000) {
            let day = date!(1850 - 01 - 01) + time::Duration::days(ordinal.into());
            prop_assert_eq!(parse(&words(day)), Some(day));
            prop_assert_eq!(parse(&short_words(day)), Some(day));
            prop_assert_eq!(parse(&day.to_string()), Some(day));
        }

        #[test]
        fn nothing_typed_can_upset_it(typed in "\\PC{0,40}") {
            let _ = parse(&typed);
        }

        #[test]
        fn ago_never_says_more_than_has_passed(days in 14_i64..40_000) {
            let today = date!(2026 - 03 - 31);
            let said = ago(today - time::Duration::days(days), today);
            let (count, unit) = said.split_once(' ').unwrap();
            let shortest = match unit { "weeks ago" => 7.0, "months ago" => 29.5, _ => 365.0 };
            prop_assert!(count.parse::<f64>().unwrap() * shortest <= days as f64, "{} for {} days", said, days);
        }
    }
}
