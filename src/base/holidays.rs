//! The federal holidays of the United States and the working days between them.
//!
//! The eleven of 5 U.S.C. 6103(a). One that falls on a Saturday is observed on the Friday before
//! (6103(b)), one that falls on a Sunday on the Monday after (Executive Order 11582). A shop may
//! be open on one all the same: who counts working days by them is rather early than late.

use time::{Date, Duration, Month, Weekday};

/// A holiday's name, where the day is one or is the day on which one is observed.
pub fn holiday(day: Date) -> Option<String> {
    // New Year's Day may be observed on the last day of the year before.
    let years = [day.year(), day.year() + 1];
    years.into_iter().flat_map(of_year).find_map(|(name, on)| match on {
        on if on == day => Some(name.to_owned()),
        on if observed(on) == day => Some(format!("{name}, observed,")),
        _ => None,
    })
}

pub fn is_weekend(day: Date) -> bool {
    matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday)
}

pub fn is_working_day(day: Date) -> bool {
    !is_weekend(day) && holiday(day).is_none()
}

/// The working day that lies so many working days before a day, which itself does not count.
pub fn working_days_before(day: Date, count: i64) -> Date {
    let (mut found, mut left) = (day, count);
    while left > 0 {
        found -= Duration::DAY;
        left -= i64::from(is_working_day(found));
    }
    found
}

/// The holidays of a year, each on its own day.
fn of_year(year: i32) -> Vec<(&'static str, Date)> {
    use Month::{December, February, January, July, June, November, October, September};
    use Weekday::{Monday, Thursday};
    let fixed = |month, day| Date::from_calendar_date(year, month, day).ok();
    let nth = |month, weekday, n| Some(nth_of(fixed(month, 1)?, weekday, n));
    let all = [
        ("New Year's Day", fixed(January, 1)),
        ("the Birthday of Martin Luther King, Jr.", nth(January, Monday, 3)),
        ("Washington's Birthday", nth(February, Monday, 3)),
        ("Memorial Day", fixed(June, 1).map(|it| it.prev_occurrence(Monday))),
        ("Juneteenth", fixed(June, 19)),
        ("Independence Day", fixed(July, 4)),
        ("Labor Day", nth(September, Monday, 1)),
        ("Columbus Day", nth(October, Monday, 2)),
        ("Veterans Day", fixed(November, 11)),
        ("Thanksgiving Day", nth(November, Thursday, 4)),
        ("Christmas Day", fixed(December, 25)),
    ];
    all.into_iter().filter_map(|(name, on)| Some((name, on?))).collect()
}

fn nth_of(first: Date, weekday: Weekday, n: u8) -> Date {
    (first - Duration::DAY).nth_next_occurrence(weekday, n)
}

fn observed(on: Date) -> Date {
    match on.weekday() {
        Weekday::Saturday => on - Duration::DAY,
        Weekday::Sunday => on + Duration::DAY,
        _ => on,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    /// The days on which federal offices are closed, as the Office of Personnel Management
    /// publishes them for 2026 and 2027 (from memory).
    #[test]
    fn the_published_days_of_2026_and_2027() {
        let closed = |year| {
            let first = Date::from_calendar_date(year, Month::January, 1).expect("a day");
            let days = (0..365).map(move |it| first + Duration::days(it));
            days.filter(|it| !is_weekend(*it) && holiday(*it).is_some()).collect::<Vec<_>>()
        };
        let of_2026 = [
            date!(2026 - 01 - 01),
            date!(2026 - 01 - 19),
            date!(2026 - 02 - 16),
            date!(2026 - 05 - 25),
            date!(2026 - 06 - 19),
            date!(2026 - 07 - 03),
            date!(2026 - 09 - 07),
            date!(2026 - 10 - 12),
            date!(2026 - 11 - 11),
            date!(2026 - 11 - 26),
            date!(2026 - 12 - 25),
        ];
        assert_eq!(closed(2026), of_2026);
        let of_2027 = [
            date!(2027 - 01 - 01),
            date!(2027 - 01 - 18),
            date!(2027 - 02 - 15),
            date!(2027 - 05 - 31),
            date!(2027 - 06 - 18),
            date!(2027 - 07 - 05),
            date!(2027 - 09 - 06),
            date!(2027 - 10 - 11),
            date!(2027 - 11 - 11),
            date!(2027 - 11 - 25),
            date!(2027 - 12 - 24),
            // New Year's Day of 2028 is a Saturday.
            date!(2027 - 12 - 31),
        ];
        assert_eq!(closed(2027), of_2027);
    }

    #[test]
    fn a_holiday_has_its_name() {
        assert_eq!(holiday(date!(2026 - 12 - 25)).as_deref(), Some("Christmas Day"));
        assert_eq!(holiday(date!(2026 - 07 - 04)).as_deref(), Some("Independence Day"));
        assert_eq!(holiday(date!(2026 - 07 - 03)).as_deref(), Some("Independence Day, observed,"));
        assert_eq!(holiday(date!(2026 - 12 - 24)), None);
    }

    #[test]
    fn working_days_leave_out_weekends_and_holidays() {
        // The study of the look: out on Sunday 8 March, two days, a weekend between.
        assert_eq!(working_days_before(date!(2026 - 03 - 08), 2), date!(2026 - 03 - 05));
        // Out on Christmas Day.
        assert_eq!(working_days_before(date!(2026 - 12 - 25), 2), date!(2026 - 12 - 23));
        // Thanksgiving Day and the weekend after it.
        assert_eq!(working_days_before(date!(2026 - 11 - 30), 2), date!(2026 - 11 - 25));
        assert_eq!(working_days_before(date!(2026 - 11 - 30), 0), date!(2026 - 11 - 30));
    }
}
