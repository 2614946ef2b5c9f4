//! What the label of an as-needed medicine says of waiting and of the most in 24 hours, beside
//! what was entered. Hours are real ones, between moments: a night in which the clocks change has
//! seven of them, or nine. Nothing is said to be right; what is above the label is told.

use super::super::schedule::{directions::counted, model::Step};
use super::model::Given;
use crate::base::{clock::Instant, quantity::Quantity, zone::Zone};
use time::Duration;

/// A dose that was entered as given.
#[derive(Clone, Debug)]
pub struct Taken {
    pub at: Instant,
    pub amount: Quantity,
    pub unit: String,
    pub by: String,
}

impl Taken {
    pub fn of(given: &Given, by: &str, zone: &Zone) -> Option<Taken> {
        let (at, unit) = (given.moment(zone), given.unit.to_string());
        given.is_given().then(|| Taken { at, amount: given.amount, unit, by: by.to_owned() })
    }
}

/// Two entries closer than this may be the same dose, told by two. Our own measure, no source.
const SAME: Duration = Duration::minutes(15);

/// What must be read before another dose is kept; nothing, where the label leaves room for it.
pub fn warnings(
    step: Option<&Step>,
    taken: &[Taken],
    (at, amount): (Instant, Quantity),
    zone: &Zone,
) -> Vec<String> {
    let gap = |it: &Taken| at.since(it.at).abs();
    let nearest = taken.iter().min_by_key(|it| gap(it));
    let mut says = Vec::new();
    let least = step.and_then(|it| it.least_hours);
    if let Some(near) = nearest.filter(|it| least.is_some_and(|least| gap(it) < hours(least))) {
        let wait = counted(least.unwrap_or_default(), "hour");
        says.push(format!(
            "Label says wait {wait}; {}. Ask the pharmacist.",
            beside(near, at, zone)
        ));
    } else if let Some(near) = nearest.filter(|it| gap(it) < SAME) {
        says.push(format!("An entry stands close to this one: {}.", beside(near, at, zone)));
    }
    if let Some((step, most)) = step.and_then(|it| Some((it, it.most_a_day?))) {
        let unit = step.unit.as_str();
        let sum = most_within(taken, (at, amount), unit);
        if sum > most {
            says.push(format!(
                "Label says at most {} in 24 hours; with this one, {} are entered here. Ask the pharmacist.",
                counted(most, unit),
                counted(sum, unit)
            ));
        }
    }
    says
}

/// "last given 3 h before, at 9:12 am, by Ines"
fn beside(near: &Taken, at: Instant, zone: &Zone) -> String {
    let (clock, by, span) = (zone.clock_words(near.at), &near.by, span(at.since(near.at).abs()));
    match near.at <= at {
        true => format!("last given {span} before, at {clock}, by {by}"),
        false => format!("also given {span} after, at {clock}, by {by}"),
    }
}

/// How much of this unit was entered in the 24 hours up to a moment.
pub fn sum(taken: &[Taken], unit: &str, until: Instant) -> Quantity {
    let from = until.minus(Duration::hours(24));
    let within = taken.iter().filter(|it| it.at > from && it.at <= until && it.unit == unit);
    within.map(|it| it.amount).sum()
}

/// The most that any 24 hours around a new dose hold, with it.
fn most_within(taken: &[Taken], (at, amount): (Instant, Quantity), unit: &str) -> Quantity {
    let after = at.plus(Duration::hours(24));
    let ends = taken.iter().map(|it| it.at).filter(|it| *it >= at && *it < after).chain([at]);
    let most = ends.map(|end| sum(taken, unit, end)).max();
    [most.unwrap_or_default(), amount].into_iter().sum()
}

fn hours(count: Quantity) -> Duration {
    Duration::seconds(count.in_thousandths().saturating_mul(36) / 10)
}

/// "3 h", "3 h 20 min", "5 min"
pub fn span(span: Duration) -> String {
    match (span.whole_hours(), span.whole_minutes() % 60) {
        (0, 0) => "less than 1 min".into(),
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}

#[cfg(test)]
mod tests;
