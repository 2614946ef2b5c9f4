//! The proportion of days covered: of the days from the first fill to a last day, those for which
//! supply had been fetched. What was fetched early counts after what came before.
//!
//! The measure is the Pharmacy Quality Alliance's. It tells of what was fetched, not of what was
//! taken, and is shown as a figure and nothing more.

use crate::base::quantity::Quantity;
use time::{Date, Duration};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Covered {
    pub from: Date,
    pub until: Date,
    pub days: i64,
}

impl Covered {
    /// Of fills, each with its days' supply, in a period; nothing where there is none in it.
    pub fn of(fills: &[(Date, i64)], (first, until): (Date, Date)) -> Option<Covered> {
        let mut fills: Vec<_> =
            fills.iter().filter(|(day, _)| (first..=until).contains(day)).collect();
        fills.sort();
        let from = fills.first()?.0;
        // The first day that nothing covers yet.
        let (mut free, mut days) = (from, 0);
        for (filled, supply) in fills {
            let begins = free.max(*filled);
            let ends = begins + Duration::days(*supply);
            days += (ends.min(until + Duration::DAY) - begins).whole_days().max(0);
            free = ends;
        }
        Some(Covered { from, until, days })
    }

    pub fn of_days(&self) -> i64 {
        (self.until - self.from).whole_days() + 1
    }

    /// "0.957": cut after three places, never rounded up.
    pub fn proportion(&self) -> String {
        Quantity::thousandths(self.days * 1000 / self.of_days()).to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn ninety(days: &[Date]) -> Vec<(Date, i64)> {
        days.iter().map(|it| (*it, 90)).collect()
    }

    /// The Pharmacy Quality Alliance's measure, in public worked examples: the third fill of 2018
    /// covers 3 October to 31 December.
    #[test]
    fn the_worked_examples() {
        let fills = ninety(&[date!(2018 - 03 - 25), date!(2018 - 07 - 05), date!(2018 - 09 - 25)]);
        let year = (date!(2018 - 01 - 01), date!(2018 - 12 - 31));
        let covered = Covered::of(&fills, year).expect("fills");
        assert_eq!((covered.days, covered.of_days()), (270, 282));
        // Without the shift to the right the third would end on 23 December.
        let third = Covered::of(&fills, (year.0, date!(2018 - 12 - 30))).expect("fills");
        assert_eq!(third.days, 269);

        let of_2022 = |fills: &[Date]| {
            let year = (date!(2022 - 01 - 01), date!(2022 - 12 - 31));
            let it = Covered::of(&ninety(fills), year).expect("fills");
            format!("{:.6} {}", it.days as f64 / it.of_days() as f64, it.proportion())
        };
        let all = [
            date!(2022 - 01 - 01),
            date!(2022 - 03 - 25),
            date!(2022 - 07 - 05),
            date!(2022 - 09 - 25),
        ];
        assert_eq!(of_2022(&all), "0.986301 0.986");
        assert_eq!(of_2022(&[all[0], all[1], all[3]]), "0.739726 0.739");
    }

    #[test]
    fn what_lies_outside_does_not_count() {
        let period = (date!(2026 - 01 - 01), date!(2026 - 01 - 31));
        assert_eq!(Covered::of(&[(date!(2025 - 12 - 31), 30)], period), None);
        let last = Covered::of(&[(date!(2026 - 01 - 31), 30)], period).expect("one day");
        assert_eq!((last.days, last.of_days(), last.proportion().as_str()), (1, 1, "1"));
    }
}
