//! A supply walked day by day: what comes in, what a day takes, the first day it does not suffice.
//!
//! What comes in on a day is there for that day. A count stands for all there was in the house
//! before that day's first dose, what was fetched that day too; so a count made later in the day
//! brings the run-out day forward rather than back (common practice, no source).

use crate::base::quantity::Quantity;
use std::iter;
use time::{Date, Duration};

/// How far ahead is looked: what lasts longer was mistyped, or hardly used.
const FARTHEST: Duration = Duration::days(1_100);

pub struct Walk<'a> {
    /// In the order of their days; what comes in on the first day is where it starts.
    arrivals: Vec<(Date, Quantity)>,
    takes: Box<dyn Fn(Date) -> Quantity + 'a>,
}

/// A day at its beginning.
struct Step {
    day: Date,
    there: Quantity,
    takes: Quantity,
}

impl<'a> Walk<'a> {
    pub fn new(
        arrivals: impl IntoIterator<Item = (Date, Quantity)>,
        takes: impl Fn(Date) -> Quantity + 'a,
    ) -> Walk<'a> {
        let mut arrivals: Vec<_> = arrivals.into_iter().collect();
        arrivals.sort_by_key(|(day, _)| *day);
        Walk { arrivals, takes: Box::new(takes) }
    }

    fn days(&self) -> impl Iterator<Item = Step> {
        let mut next = self.arrivals.first().map(|(day, _)| *day);
        let mut left = Quantity::default();
        iter::from_fn(move || {
            let day = next?;
            let there = left + self.arriving(day);
            let takes = (self.takes)(day);
            left = there - takes;
            next = day.next_day();
            Some(Step { day, there, takes })
        })
    }

    fn arriving(&self, day: Date) -> Quantity {
        self.arrivals.iter().filter(|(it, _)| *it == day).map(|(_, quantity)| *quantity).sum()
    }

    /// What is there on a day, before its first dose.
    pub fn there_on(&self, day: Date) -> Option<Quantity> {
        let found = self.days().take_while(|it| it.day <= day).last();
        found.filter(|it| it.day == day).map(|it| it.there)
    }

    /// The first day that cannot be taken whole, after which nothing came in.
    pub fn out(&self) -> Option<Date> {
        let last = self.arrivals.last()?.0;
        let mut out = None;
        for step in self.days().take_while(|it| it.day <= last + FARTHEST) {
            if !self.arriving(step.day).is_zero() {
                out = None;
            }
            if step.takes > step.there {
                out = out.or(Some(step.day));
            }
            if step.day >= last && out.is_some() {
                return out;
            }
        }
        None
    }

    /// What the days from one to another take in all.
    pub fn taken(&self, from: Date, until: Date) -> Quantity {
        let days = iter::successors(Some(from), |it| it.next_day());
        days.take_while(|it| *it <= until).map(|it| (self.takes)(it)).sum()
    }
}

/// For how many days a quantity lasts from a day on: the days' supply.
pub fn lasts(quantity: Quantity, from: Date, takes: impl Fn(Date) -> Quantity) -> Option<i64> {
    let out = Walk::new([(from, quantity)], takes).out()?;
    Some((out - from).whole_days())
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn a_day(thousandths: i64) -> impl Fn(Date) -> Quantity {
        move |_| Quantity::thousandths(thousandths)
    }

    /// The arithmetic of the checks: 60 at 2 a day, 90 at 1.5 a day, a leap year, 90 at 2 a day.
    #[test]
    fn days_supply_and_run_out_day() {
        for (count, a_day_takes, from, days, last) in [
            (60, 2_000, date!(2026 - 11 - 25), 30, date!(2026 - 12 - 24)),
            (90, 1_500, date!(2026 - 11 - 25), 60, date!(2027 - 01 - 23)),
            (30, 1_000, date!(2024 - 02 - 01), 30, date!(2024 - 03 - 01)),
            (90, 2_000, date!(2026 - 03 - 02), 45, date!(2026 - 04 - 15)),
        ] {
            let walk = Walk::new([(from, Quantity::whole(count))], a_day(a_day_takes));
            assert_eq!(walk.out(), last.next_day(), "{count} from {from}");
            assert_eq!(lasts(Quantity::whole(count), from, a_day(a_day_takes)), Some(days));
        }
    }

    #[test]
    fn an_early_fill_shifts_right_and_two_on_one_day_both_count() {
        let fill = |day| (day, Quantity::whole(30));
        let from = date!(2026 - 03 - 01);
        let early = Walk::new([fill(from), fill(date!(2026 - 03 - 21))], a_day(1_000));
        assert_eq!(early.out(), Some(from + Duration::days(60)));
        let both = Walk::new([fill(from), fill(from)], a_day(1_000));
        assert_eq!(both.out(), Some(from + Duration::days(60)));
        // After a gap the days without are gone, and nothing is carried over.
        let late = Walk::new([fill(from), fill(date!(2026 - 04 - 10))], a_day(1_000));
        assert_eq!(late.out(), Some(date!(2026 - 05 - 10)));
        assert_eq!(late.there_on(date!(2026 - 04 - 05)), Some(Quantity::default()));
        assert_eq!(late.there_on(date!(2026 - 03 - 11)), Some(Quantity::whole(20)));
        assert_eq!(late.there_on(date!(2026 - 02 - 28)), None);
    }

    #[test]
    fn a_day_that_cannot_be_taken_whole_is_without() {
        let walk = Walk::new([(date!(2026 - 03 - 01), Quantity::whole(7))], a_day(2_000));
        assert_eq!(walk.out(), Some(date!(2026 - 03 - 04)));
        // Already out when nothing came in: the day is the one in the past.
        let none = Walk::new([(date!(2026 - 03 - 01), Quantity::default())], a_day(1_000));
        assert_eq!(none.out(), Some(date!(2026 - 03 - 01)));
    }

    #[test]
    fn what_takes_nothing_never_runs_out() {
        assert_eq!(lasts(Quantity::whole(9), date!(2026 - 03 - 01), a_day(0)), None);
        assert_eq!(Walk::new([], a_day(1_000)).out(), None);
        assert_eq!(lasts(Quantity::whole(1_000_000), date!(2026 - 03 - 01), a_day(1_000)), None);
    }

    #[test]
    fn what_some_days_take_in_all() {
        let walk = Walk::new([], a_day(1_500));
        let (from, until) = (date!(2026 - 12 - 20), date!(2026 - 12 - 26));
        assert_eq!(walk.taken(from, until), Quantity::thousandths(10_500));
        assert!(walk.taken(until, from).is_zero());
    }
}
