//! How long what is in the house lasts, by what is written down: the fills and counts, and the
//! steps of the schedule walked day by day.
//!
//! Where a step counts in one unit and the pharmacy in another (drops, milliliters), the days'
//! supply that the label says is taken instead. What cannot be told is said, with why.

use super::super::{
    model::Medicine,
    schedule::{directions::plural, model::Step},
};
use super::{
    amount::{Amount, same_unit},
    model::{Count, Fill, Pause},
    walk::{self, Walk},
};
use crate::base::{day, quantity::Quantity};
use time::Date;

/// Everything about one medicine's supply, as it is written down.
#[derive(Clone, Debug)]
pub struct Written {
    pub medicine: Medicine,
    pub steps: Vec<Step>,
    /// By their days.
    pub fills: Vec<Fill>,
    pub counts: Vec<Count>,
    pub pauses: Vec<Pause>,
}

#[derive(Clone, Debug, PartialEq)]
pub enum Lasts {
    /// The first day without.
    Until { out: Date, there: Option<Amount> },
    /// The schedule ends before what is there.
    ToItsEnd { end: Date, there: Amount },
    /// No run-out day; what is in the house as far as it is written down.
    AsNeeded { says: String },
    /// It cannot be told, and why.
    Untold { says: String },
}

/// What a day takes, and in what it is counted.
enum Taken {
    Steps {
        unit: String,
    },
    /// One of the days that the label says.
    LabelDays,
}

impl Written {
    pub fn lasts(&self, today: Date) -> Lasts {
        let untold = |says: String| Lasts::Untold { says };
        if self.is_as_needed() {
            return Lasts::AsNeeded { says: self.there_in_words() };
        }
        if self.fills.is_empty() && self.counts.is_empty() {
            return untold("no fill and no count is written down".into());
        }
        if self.medicine.is_on_hold() {
            return untold(format!("on hold: nothing is used up; {}", self.there_in_words()));
        }
        let walk = match self.walk() {
            Ok(walk) => walk,
            Err(says) => return untold(says),
        };
        let there = walk.there_on(today).zip(self.unit());
        let there = there.map(|(quantity, unit)| Amount::of(quantity, &unit));
        match (walk.out(), self.end(), there) {
            (Some(out), _, there) => Lasts::Until { out, there },
            (None, Some(end), _) if end < today => {
                untold(format!("its schedule ended on {}", day::words(end)))
            }
            (None, Some(end), Some(there)) => Lasts::ToItsEnd { end, there },
            _ => untold("it lasts longer than three years: look at the amounts again".into()),
        }
    }

    /// What is there on a day, counted; nothing where it cannot be told.
    pub fn there(&self, today: Date) -> Option<Amount> {
        let there = self.walk().ok()?.there_on(today)?;
        Some(Amount::of(there, &self.unit()?))
    }

    /// What the days from one to another take, counted.
    pub fn taken(&self, from: Date, until: Date) -> Option<Amount> {
        let unit = self.step_unit().ok()??;
        let taken = Walk::new([], |day| self.takes(day)).taken(from, until);
        Some(Amount::of(taken, &unit))
    }

    /// For how many days one fill lasts from its own day: by the label, else by the steps.
    pub fn days_of(&self, fill: &Fill) -> Option<i64> {
        fill.label_days.or_else(|| self.days_by_steps(fill))
    }

    pub fn days_by_steps(&self, fill: &Fill) -> Option<i64> {
        let unit = self.step_unit().ok()??;
        let takes = |day| self.takes(day);
        fill.amount
            .is_counted_in(&unit)
            .then(|| walk::lasts(fill.amount.quantity(), fill.filled_on, takes))?
    }

    pub fn is_as_needed(&self) -> bool {
        let regular = self.regular().next().is_some();
        !regular && (self.medicine.as_needed || !self.steps.is_empty())
    }

    /// Whether as-needed use comes on top of what is regular.
    pub fn is_partly_as_needed(&self) -> bool {
        self.regular().next().is_some() && self.steps.iter().any(Step::is_as_needed)
    }

    /// The schedule's first day, where it is after what is there: nothing is used up before it.
    pub fn begins_late(&self) -> Option<Date> {
        let begins = self.regular().map(|it| it.from_on).min()?;
        let counted = self.counts.iter().map(|it| it.counted_on).max();
        let there = counted.or_else(|| self.fills.first().map(|it| it.filled_on))?;
        (begins > there).then_some(begins)
    }

    fn regular(&self) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(|it| !it.is_as_needed())
    }

    /// The last day of the last step, where all have one.
    fn end(&self) -> Option<Date> {
        self.regular().map(|it| it.until_on).collect::<Option<Vec<_>>>()?.into_iter().max()
    }

    fn walk(&self) -> Result<Walk<'_>, String> {
        let taken = self.counted_by()?;
        let counted = self.counts.iter().max_by_key(|it| (it.counted_on, it.id));
        let counted = counted.filter(|_| matches!(taken, Taken::Steps { .. }));
        let since = counted.map(|it| it.counted_on);
        let fills = self.fills.iter().filter(|it| since.is_none_or(|since| it.filled_on > since));
        let counted = counted.map(|it| (it.counted_on, it.amount.quantity()));
        Ok(match taken {
            Taken::Steps { .. } => {
                let fills = fills.map(|it| (it.filled_on, it.amount.quantity()));
                Walk::new(counted.into_iter().chain(fills), |day| self.takes(day))
            }
            Taken::LabelDays => {
                let days = |it: &Fill| Quantity::whole(it.label_days.unwrap_or(0));
                let fills = fills.map(|it| (it.filled_on, days(it)));
                Walk::new(fills, |day| match self.is_without(day) {
                    true => Quantity::default(),
                    false => Quantity::ONE,
                })
            }
        })
    }

    fn takes(&self, day: Date) -> Quantity {
        if self.is_without(day) {
            return Quantity::default();
        }
        self.regular().flat_map(|it| it.due(day)).map(|it| it.amount).sum()
    }

    /// On hold, or once held or stopped and brought back.
    fn is_without(&self, day: Date) -> bool {
        let held = self.medicine.is_on_hold()
            && self.medicine.status_since.is_none_or(|since| since <= day);
        held || self.pauses.iter().any(|it| it.covers(day))
    }

    /// In what the steps count, where all count in the same.
    fn step_unit(&self) -> Result<Option<String>, String> {
        let mut units = self.regular().map(|it| it.unit.as_str());
        let Some(first) = units.next() else { return Ok(None) };
        match units.find(|it| !same_unit(first, it)) {
            Some(other) => {
                Err(format!("its steps are counted in {} and in {}", plural(first), plural(other)))
            }
            None => Ok(Some(first.to_owned())),
        }
    }

    fn unit(&self) -> Option<String> {
        match self.counted_by().ok()? {
            Taken::Steps { unit } => Some(unit),
            Taken::LabelDays => None,
        }
    }

    fn counted_by(&self) -> Result<Taken, String> {
        let labels = !self.fills.is_empty() && self.fills.iter().all(|it| it.label_days.is_some());
        let Some(unit) = self.step_unit()? else {
            let says = "when and how much is not written in numbers yet";
            return if labels { Ok(Taken::LabelDays) } else { Err(says.into()) };
        };
        let fills = self.fills.iter().map(|it| &it.amount);
        let counts = self.counts.iter().map(|it| &it.amount);
        match fills.chain(counts).find(|it| !it.is_counted_in(&unit)) {
            None => Ok(Taken::Steps { unit }),
            Some(_) if labels => Ok(Taken::LabelDays),
            Some(other) => Err(format!(
                "taken in {} and fetched or counted in {}: the label's days' supply would tell",
                plural(&unit),
                other.unit()
            )),
        }
    }

    /// "40 tablets counted on 3 March 2026, 60 tablets fetched since"
    fn there_in_words(&self) -> String {
        let counted = self.counts.iter().max_by_key(|it| (it.counted_on, it.id));
        let said =
            counted.map(|it| format!("{} counted on {}", it.amount, day::words(it.counted_on)));
        let since = |it: &&Fill| counted.is_none_or(|count| it.filled_on > count.counted_on);
        let fetched: Vec<_> = self.fills.iter().filter(since).collect();
        let fetched: Vec<_> = fetched
            .iter()
            .map(|it| format!("{} fetched on {}", it.amount, day::words(it.filled_on)))
            .collect();
        let said: Vec<String> = said.into_iter().chain(fetched).collect();
        if said.is_empty() {
            "nothing is written down of what is there".into()
        } else {
            said.join(", ")
        }
    }
}

#[cfg(test)]
mod tests;
