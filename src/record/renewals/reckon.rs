//! The latest day to begin: the last day, less what the issuer needs, less weekends and holidays, less
//! the working days that the form takes. A weekend or a holiday moves it earlier, and never later.

use crate::base::{
    day,
    holidays::{holiday, is_weekend, is_working_day, working_days_before},
};
use time::{Date, Duration};

/// The latest day to begin, and how it was reckoned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Start {
    pub on: Date,
    pub says: Vec<String>,
}

impl Start {
    pub fn on_words(&self) -> String {
        day::short_words(self.on)
    }
}

/// More than this is a slip of the finger.
pub const LONGEST_ISSUER: i64 = 730;
pub const LONGEST_FORM: i64 = 250;

/// `issuer`: days of the calendar between sending it in and having it, `form`: working days until it
/// can be sent in. Not known: reckoned without, and said.
pub fn latest_start(last: Date, issuer: Option<i64>, form: Option<i64>) -> Start {
    let mut says = vec![format!("last day {}", day::short_words(last))];
    let needed = issuer.unwrap_or(0).clamp(0, LONGEST_ISSUER);
    let sent = last.saturating_sub(Duration::days(needed));
    match issuer {
        Some(0) => {}
        Some(_) => says.push(format!(
            "{} for the issuer: there by {}",
            counted(needed, "day"),
            day::short_words(sent)
        )),
        None => says.push("how long the issuer needs is not written down: ask there".into()),
    }
    let open = on_or_before(sent);
    if open != sent {
        let why = match holiday(sent) {
            Some(name) => format!("{name} is a holiday"),
            None if is_weekend(sent) => "that is on a weekend".into(),
            None => "the office is closed".into(),
        };
        says.push(format!("{why}: by {}", day::short_words(open)));
    }
    let form = form.unwrap_or(0).clamp(0, LONGEST_FORM);
    let on = working_days_before(open, form);
    if form > 0 {
        let on = day::short_words(on);
        says.push(format!("{} for the form: begin by {on}", counted(form, "working day")));
    }
    Start { on, says }
}

/// The day itself where it is a working day, else the last one before it.
fn on_or_before(day: Date) -> Date {
    if is_working_day(day) { day } else { working_days_before(day, 1) }
}

fn counted(count: i64, noun: &str) -> String {
    format!("{count} {noun}{}", if count == 1 { "" } else { "s" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use time::macros::date;

    fn start(last: Date, issuer: i64, form: i64) -> Date {
        latest_start(last, Some(issuer), Some(form)).on
    }

    /// Worked by hand on the calendar of 2026, with the federal holidays of 5 U.S.C. 6103(a).
    #[test]
    fn worked_examples() {
        // Friday 15 January 2027, six weeks before: Friday 4 December. Five working days before it
        // leave out the weekend and Thanksgiving Day, but not the Friday after it.
        assert_eq!(start(date!(2027 - 01 - 15), 42, 5), date!(2026 - 11 - 27));
        assert_eq!(start(date!(2027 - 01 - 15), 42, 6), date!(2026 - 11 - 25));
        // Christmas Day is a Friday: the Thursday before.
        assert_eq!(start(date!(2026 - 12 - 25), 0, 0), date!(2026 - 12 - 24));
        // A Sunday: the Friday before, and two working days before that.
        assert_eq!(start(date!(2026 - 12 - 20), 0, 2), date!(2026 - 12 - 16));
        // Independence Day of 2026 is a Saturday, observed on the Friday: the Thursday.
        assert_eq!(start(date!(2026 - 07 - 04), 0, 0), date!(2026 - 07 - 02));
    }

    #[test]
    fn it_says_how_it_was_reckoned() {
        let it = latest_start(date!(2027 - 01 - 15), Some(42), Some(5));
        let says = [
            "last day Fri 15 Jan 2027",
            "42 days for the issuer: there by Fri 4 Dec 2026",
            "5 working days for the form: begin by Fri 27 Nov 2026",
        ];
        assert_eq!(it.says, says);
        let it = latest_start(date!(2026 - 12 - 25), None, None);
        assert!(it.says[1].contains("not written down"), "{:?}", it.says);
        assert_eq!(it.says[2], "Christmas Day is a holiday: by Thu 24 Dec 2026");
    }

    proptest! {
        #[test]
        fn it_is_a_working_day_and_never_later_than_without_weekends(
            at in 0_i64..20_000, issuer in 0_i64..400, form in 0_i64..60
        ) {
            let last = date!(2000 - 01 - 01) + Duration::days(at);
            let on = start(last, issuer, form);
            prop_assert!(is_working_day(on));
            prop_assert!(on <= last - Duration::days(issuer + form));
            prop_assert!(start(last, issuer, form + 1) < on);
        }
    }
}
