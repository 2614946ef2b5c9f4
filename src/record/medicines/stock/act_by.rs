//! The day by which something must be done so that a medicine does not run out: the run-out day
//! less the working days the pharmacy needs, with the reason in words.

use crate::base::{
    day,
    holidays::{holiday, is_weekend, working_days_before},
};
use std::iter;
use time::Date;

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ActBy {
    pub on: Date,
    pub reasons: Vec<String>,
}

/// How many days before the day it is said on the first page.
pub const SOON: i64 = 3;

impl ActBy {
    pub fn new(out: Date, working_days: i64) -> ActBy {
        let on = working_days_before(out, working_days);
        let days = if working_days == 1 { "day" } else { "days" };
        let mut reasons = vec![
            format!("runs out {}", day::short_words(out)),
            format!("{working_days} working {days} for the pharmacy"),
        ];
        let between: Vec<Date> = iter::successors(on.next_day(), |it| it.next_day())
            .take_while(|it| *it <= out)
            .collect();
        if between.iter().any(|it| is_weekend(*it)) {
            reasons.push("a weekend lies between".into());
        }
        let working = between.into_iter().filter(|it| !is_weekend(*it));
        reasons.extend(working.filter_map(holiday).map(|it| format!("{it} is a holiday")));
        ActBy { on, reasons }
    }

    pub fn is_past(&self, today: Date) -> bool {
        self.on < today
    }

    pub fn is_soon(&self, today: Date) -> bool {
        (self.on - today).whole_days() <= SOON
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn said(out: Date, working_days: i64) -> (Date, String) {
        let act = ActBy::new(out, working_days);
        (act.on, act.reasons.join("; "))
    }

    #[test]
    fn the_reason_is_said_in_words() {
        let says =
            "runs out Fri 25 Dec 2026; 2 working days for the pharmacy; Christmas Day is a holiday";
        assert_eq!(said(date!(2026 - 12 - 25), 2), (date!(2026 - 12 - 23), says.into()));
        let says =
            "runs out Sun 8 Mar 2026; 2 working days for the pharmacy; a weekend lies between";
        assert_eq!(said(date!(2026 - 03 - 08), 2), (date!(2026 - 03 - 05), says.into()));
        let says = "runs out Mon 30 Nov 2026; 3 working days for the pharmacy; a weekend lies between; Thanksgiving Day is a holiday";
        assert_eq!(said(date!(2026 - 11 - 30), 3), (date!(2026 - 11 - 24), says.into()));
        let says = "runs out Thu 12 Mar 2026; 1 working day for the pharmacy";
        assert_eq!(said(date!(2026 - 03 - 12), 1), (date!(2026 - 03 - 11), says.into()));
    }

    #[test]
    fn three_days_before_is_soon_and_the_day_after_is_past() {
        let act = ActBy::new(date!(2026 - 12 - 25), 2);
        assert!(!act.is_soon(date!(2026 - 12 - 19)) && act.is_soon(date!(2026 - 12 - 20)));
        assert!(!act.is_past(date!(2026 - 12 - 23)) && act.is_past(date!(2026 - 12 - 24)));
    }
}
