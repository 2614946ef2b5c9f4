//! Directions in plain, standard words with digits: "1 tablet in the morning and 1 tablet at
//! bedtime" (the wording of 16 CCR 1707.5, California, and of the universal medication schedule).
//! They say what the schedule says and nothing more; the label's own words stand beside them.

use super::{
    model::{Rhythm, Step},
    times::When,
};
use crate::base::{day, quantity::Quantity};

impl Step {
    pub fn directions(&self) -> String {
        let unit = self.unit.as_str();
        let each = self.times.each().map(|(when, amount)| (when, counted(amount, unit)));
        let each: Vec<(When, String)> = each.collect();
        let first = each.first().map(|(_, amount)| amount.as_str()).unwrap_or_default();
        match self.rhythm {
            Rhythm::Hours => format!(
                "{first} every {}, beginning {}",
                many(self.every, "hour"),
                each.first().map(|(when, _)| when.words()).unwrap_or_default()
            ),
            Rhythm::AsNeeded => format!("{first} as needed{}", self.limits()),
            Rhythm::Days if self.every == 1 => at_times(&each),
            Rhythm::Days => format!("{}, every {}", at_times(&each), many(self.every, "day")),
            Rhythm::Weekdays => format!("{}, {}", at_times(&each), self.weeks()),
        }
    }

    /// How often alone, for where there is little room: "morning and bedtime", "every 8 hours".
    pub fn often(&self) -> String {
        let times: Vec<String> = self.times.each().map(|(when, _)| when.title()).collect();
        let times = listed(&times.iter().map(String::as_str).collect::<Vec<_>>());
        match self.rhythm {
            Rhythm::Hours => format!("every {}", many(self.every, "hour")),
            Rhythm::AsNeeded => "as needed".into(),
            Rhythm::Days if self.every == 1 => times,
            Rhythm::Days => format!("{times}, every {}", many(self.every, "day")),
            Rhythm::Weekdays => format!("{times}, {}", self.weeks()),
        }
    }

    fn weeks(&self) -> String {
        match self.every {
            1 => format!("every {}", self.weekdays.words()),
            every => format!("on {} of every {}", self.weekdays.words(), many(every, "week")),
        }
    }

    /// "; label says wait at least 6 hours, at most 6 tablets in 24 hours"
    fn limits(&self) -> String {
        let wait =
            self.least_hours.map(|it| format!("wait at least {} between", counted(it, "hour")));
        let most = self.most_a_day;
        let most =
            most.map(|it| format!("at most {} in 24 hours", counted(it, self.unit.as_str())));
        let said: Vec<String> = wait.into_iter().chain(most).collect();
        if said.is_empty() { String::new() } else { format!("; label says {}", said.join(", ")) }
    }

    /// "from 2 March 2026 to 8 March 2026", where it has an end or has not begun.
    pub fn span(&self, today: time::Date) -> Option<String> {
        match (self.until_on, self.from_on > today) {
            (Some(until), _) => {
                Some(format!("from {} to {}", day::words(self.from_on), day::words(until)))
            }
            (None, true) => Some(format!("from {}", day::words(self.from_on))),
            (None, false) => None,
        }
    }
}

fn at_times(each: &[(When, String)]) -> String {
    let said: Vec<String> =
        each.iter().map(|(when, amount)| format!("{amount} {}", when.words())).collect();
    listed(&said.iter().map(String::as_str).collect::<Vec<_>>())
}

/// "a", "a and b", "a, b and c"
pub fn listed(all: &[&str]) -> String {
    match all {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

/// "1 tablet", "2 tablets", "0.5 tablet", "5 mL"
pub fn counted(amount: Quantity, unit: &str) -> String {
    let one = amount <= Quantity::ONE && !amount.is_zero();
    format!("{amount} {}", if one { unit.to_owned() } else { plural(unit) })
}

fn many(count: i64, unit: &str) -> String {
    if count == 1 { unit.to_owned() } else { format!("{count} {}", plural(unit)) }
}

/// Abbreviations of measures have no plural (SI Brochure, 5.3), and what already ends in s, or is
/// more than one word, is left as it was typed.
pub fn plural(unit: &str) -> String {
    let measure = ["mg", "mcg", "g", "mL", "ml", "L", "IU", "%"].contains(&unit);
    let word = unit.chars().all(char::is_alphabetic) && !unit.ends_with('s');
    match (measure, word) {
        (true, _) | (false, false) => unit.to_owned(),
        (false, true) if unit.ends_with("ch") || unit.ends_with('x') => format!("{unit}es"),
        (false, true) => format!("{unit}s"),
    }
}

#[cfg(test)]
mod tests {
    use super::super::{repeat::Weekdays, times::Times};
    use super::*;
    use crate::base::{ids::StepId, text::Line};
    use time::macros::date;

    fn step(rhythm: Rhythm, every: i64, times: &str, unit: &str) -> Step {
        Step {
            id: StepId::default(),
            person_id: 1.into(),
            medicine_id: 1.into(),
            from_on: date!(2026 - 03 - 02),
            until_on: None,
            rhythm,
            every,
            weekdays: Weekdays::default(),
            times: Times::from(times.to_owned()),
            unit: Line::from(unit.to_owned()),
            least_hours: None,
            most_a_day: None,
            struck: false,
            version: 1,
        }
    }

    /// 16 CCR 1707.5 (California) gives this very form; digits, not words (IOM 2008).
    #[test]
    fn the_standard_phrase() {
        let it = step(Rhythm::Days, 1, "morning 1, bedtime 1", "tablet");
        assert_eq!(it.directions(), "1 tablet in the morning and 1 tablet at bedtime");
        let it = step(Rhythm::Days, 1, "morning 2, noon 1, evening 0.5", "tablet");
        let says = "2 tablets in the morning, 1 tablet at noon and 0.5 tablet in the evening";
        assert_eq!(it.directions(), says);
    }

    #[test]
    fn the_other_rhythms() {
        let said = |it: Step| it.directions();
        assert_eq!(
            said(step(Rhythm::Days, 2, "morning 1", "tablet")),
            "1 tablet in the morning, every 2 days"
        );
        let weekly = step(Rhythm::Weekdays, 1, "morning 1", "tablet");
        let weekly = Step { weekdays: Weekdays::of(["sun"]), ..weekly };
        assert_eq!(said(weekly.clone()), "1 tablet in the morning, every Sunday");
        let fortnight = Step { every: 2, ..weekly };
        assert_eq!(said(fortnight), "1 tablet in the morning, on Sunday of every 2 weeks");
        assert_eq!(
            said(step(Rhythm::Hours, 8, "06:00 5", "mL")),
            "5 mL every 8 hours, beginning at 6 am"
        );
        let limits = Step {
            least_hours: Some(Quantity::whole(6)),
            most_a_day: Some(Quantity::whole(6)),
            ..step(Rhythm::AsNeeded, 1, "morning 1", "tablet")
        };
        let says = "1 tablet as needed; label says wait at least 6 hours between, at most 6 tablets in 24 hours";
        assert_eq!(said(limits), says);
    }

    #[test]
    fn how_often_is_said_without_how_much() {
        let said = |rhythm, every, times| step(rhythm, every, times, "tablet").often();
        assert_eq!(said(Rhythm::Days, 1, "morning 1, bedtime 2"), "morning and bedtime");
        assert_eq!(said(Rhythm::Days, 2, "14:30 1"), "2:30 pm, every 2 days");
        assert_eq!(said(Rhythm::Hours, 8, "06:00 5"), "every 8 hours");
        assert_eq!(said(Rhythm::AsNeeded, 1, "morning 1"), "as needed");
    }

    #[test]
    fn units_are_counted_as_they_are_said() {
        let said = |count, unit| counted(Quantity::whole(count), unit);
        assert_eq!(said(2, "drop"), "2 drops");
        assert_eq!(said(2, "patch"), "2 patches");
        assert_eq!(said(10, "mL"), "10 mL");
        assert_eq!(said(2, "drops in each eye"), "2 drops in each eye");
        assert_eq!(counted(Quantity::thousandths(500), "tablet"), "0.5 tablet");
        assert_eq!(said(0, "tablet"), "0 tablets");
    }
}
