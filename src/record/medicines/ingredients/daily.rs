//! How much of a medicine falls on a day, as its schedule and its label say: for adding up what
//! stands in several. It reads the steps in force today and proposes nothing.
//!
//! Regular steps count with their fullest day, as-needed ones with the label's most in 24 hours.
//! What is not said in numbers is named in the label's own words, and not guessed at.

use super::super::{
    model::Medicine,
    schedule::{
        directions::counted,
        model::{Rhythm, Step},
    },
};
use crate::base::quantity::Quantity;
use time::Date;

/// What counts of one medicine on one day.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Daily {
    pub parts: Vec<Part>,
    /// The label's own words, where a part of it is not said in numbers.
    pub unsaid: Option<String>,
}

/// "4 tablets a day"
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    pub pieces: Quantity,
    pub unit: String,
    pub how: &'static str,
}

impl Part {
    pub fn words(&self) -> String {
        format!("{} {}", counted(self.pieces, &self.unit), self.how)
    }
}

impl Daily {
    /// `steps` are those of this medicine.
    pub fn of(medicine: &Medicine, steps: &[Step], today: Date) -> Daily {
        let mut daily = Daily::default();
        let in_force: Vec<_> = steps.iter().filter(|it| it.covers(today)).collect();
        for step in &in_force {
            match fullest(step) {
                Some(pieces) => {
                    daily.parts.push(Part { pieces, unit: step.unit.to_string(), how: how(step) })
                }
                None => daily.unsaid = Some(step.directions()),
            }
        }
        if in_force.is_empty() || medicine.as_needed && !in_force.iter().any(|it| it.is_as_needed())
        {
            daily.unsaid = Some(label(medicine));
        }
        daily
    }
}

/// The most that a step lays on one day; none where its label does not say it.
fn fullest(step: &Step) -> Option<Quantity> {
    let each = step.times.each().map(|(_, amount)| amount);
    match step.rhythm {
        Rhythm::AsNeeded => step.most_a_day,
        Rhythm::Hours => each.map(|it| it.times((24 + step.every - 1) / step.every)).next(),
        Rhythm::Days | Rhythm::Weekdays => Some(each.sum()),
    }
}

fn how(step: &Step) -> &'static str {
    match step.rhythm {
        Rhythm::AsNeeded => "at most in 24 hours, as the label says",
        Rhythm::Days if step.every == 1 => "a day",
        _ => "on its fullest day",
    }
}

/// What the label says of how it is taken, and at most.
fn label(medicine: &Medicine) -> String {
    match &medicine.label_limit {
        Some(limit) => format!("{}; {limit}", medicine.directions()),
        None => medicine.directions(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::{
        model::{Label, Supply},
        schedule::{repeat::Weekdays, times::Times},
    };
    use super::*;
    use crate::base::{ids::StepId, text::Line};
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn medicine(as_needed: bool) -> Medicine {
        let label = Label {
            name: line("Acetaminophen"),
            strength: None,
            form: None,
            dose: Some(line("2 tablets")),
            route: None,
            times: None,
            purpose: None,
            prescriber: None,
            started_on: None,
            as_needed,
            label_limit: as_needed.then(|| line("at most 6 tablets in 24 hours")),
            supply: Supply::OverTheCounter,
            source: None,
        };
        Medicine::new(1.into(), label)
    }

    fn step(rhythm: Rhythm, every: i64, times: &str) -> Step {
        Step {
            id: StepId::default(),
            person_id: 1.into(),
            medicine_id: 1.into(),
            from_on: date!(2026 - 11 - 01),
            until_on: None,
            rhythm,
            every,
            weekdays: Weekdays::of(["sun"]),
            times: Times::from(times.to_owned()),
            unit: line("tablet"),
            least_hours: None,
            most_a_day: None,
            struck: false,
            version: 1,
        }
    }

    fn said(medicine: &Medicine, steps: &[Step]) -> String {
        let daily = Daily::of(medicine, steps, TODAY);
        let parts =
            daily.parts.iter().map(Part::words).chain(daily.unsaid.map(|it| format!("? {it}")));
        parts.collect::<Vec<_>>().join(" + ")
    }

    #[test]
    fn each_rhythm_counts_with_its_fullest_day() {
        let of = |rhythm, every, times| said(&medicine(false), &[step(rhythm, every, times)]);
        assert_eq!(of(Rhythm::Days, 1, "morning 2, evening 1"), "3 tablets a day");
        assert_eq!(of(Rhythm::Days, 2, "morning 2"), "2 tablets on its fullest day");
        assert_eq!(of(Rhythm::Weekdays, 1, "morning 0.5"), "0.5 tablet on its fullest day");
        assert_eq!(of(Rhythm::Hours, 8, "06:00 2"), "6 tablets on its fullest day");
        // 2, 7, 12, 17 and 22 o'clock.
        assert_eq!(of(Rhythm::Hours, 5, "06:00 1"), "5 tablets on its fullest day");
        assert_eq!(of(Rhythm::Hours, 36, "06:00 1"), "1 tablet on its fullest day");
    }

    #[test]
    fn as_needed_counts_with_the_labels_most_or_is_named() {
        let most =
            Step { most_a_day: Some(Quantity::whole(6)), ..step(Rhythm::AsNeeded, 1, "morning 2") };
        let six = "6 tablets at most in 24 hours, as the label says";
        assert_eq!(said(&medicine(true), std::slice::from_ref(&most)), six);
        let both = [step(Rhythm::Days, 1, "bedtime 1"), most];
        assert_eq!(said(&medicine(true), &both), format!("1 tablet a day + {six}"));
        let open = [step(Rhythm::AsNeeded, 1, "morning 2")];
        assert_eq!(said(&medicine(true), &open), "? 2 tablets as needed");
    }

    #[test]
    fn what_is_not_laid_out_is_named_in_the_labels_words() {
        let words = "? 2 tablets; at most 6 tablets in 24 hours";
        assert_eq!(said(&medicine(true), &[]), words);
        let regular = [step(Rhythm::Days, 1, "bedtime 1")];
        assert_eq!(said(&medicine(true), &regular), format!("1 tablet a day + {words}"));
        let over =
            Step { until_on: Some(date!(2026 - 11 - 24)), ..step(Rhythm::Days, 1, "noon 1") };
        assert_eq!(said(&medicine(false), &[over]), "? 2 tablets");
    }
}
