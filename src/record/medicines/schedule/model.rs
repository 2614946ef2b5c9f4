//! A step of a medicine's schedule: from a day until a day, how often, and how much at which time.
//!
//! A medicine has one step, or several that follow each other (a taper). They never overlap, but
//! what is as needed may stand beside what is regular. Nothing here proposes a dose: a step says
//! in numbers what the label says in words.

use super::{
    repeat::{Repeat, Weekdays},
    times::{Times, When},
};
use crate::audited;
use crate::base::{
    day,
    ids::{MedicineId, PersonId, StepId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::Date;

/// How a step repeats, as it is kept; what belongs to each stands in the columns beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "kebab-case")]
#[sqlx(rename_all = "kebab-case")]
pub enum Rhythm {
    Days,
    Weekdays,
    Hours,
    AsNeeded,
}

impl Choice for Rhythm {
    const ALL: &'static [Rhythm] =
        &[Rhythm::Days, Rhythm::Weekdays, Rhythm::Hours, Rhythm::AsNeeded];

    fn words(self) -> &'static str {
        match self {
            Rhythm::Days => "every day, or every so many days",
            Rhythm::Weekdays => "on certain days of the week",
            Rhythm::Hours => "every so many hours",
            Rhythm::AsNeeded => "only as needed",
        }
    }
}

impl fmt::Display for Rhythm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    pub id: StepId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub from_on: Date,
    pub until_on: Option<Date>,
    pub rhythm: Rhythm,
    /// Every so many days, weeks or hours.
    pub every: i64,
    pub weekdays: Weekdays,
    pub times: Times,
    /// What is counted: tablet, drop, mL.
    pub unit: Line,
    /// The label's own limits, for as-needed use.
    pub least_hours: Option<Quantity>,
    pub most_a_day: Option<Quantity>,
    pub struck: bool,
    pub version: i64,
}

audited!(Step as "step" {
    medicine_id: "", from_on: "from", until_on: "until", rhythm: "how often", every: "every",
    weekdays: "days of the week", times: "times", unit: "counted in",
    least_hours: "label's least hours between", most_a_day: "label's most in 24 hours",
    struck: "struck",
} skip { id, person_id, version });

/// What falls on one day at one time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Due {
    pub when: When,
    pub amount: Quantity,
}

impl Step {
    pub fn repeat(&self) -> Repeat {
        match self.rhythm {
            Rhythm::Days => Repeat::Days(self.every),
            Rhythm::Weekdays => Repeat::Weeks(self.every, self.weekdays.clone()),
            Rhythm::Hours => Repeat::Hours(self.every),
            Rhythm::AsNeeded => Repeat::AsNeeded,
        }
    }

    pub fn is_as_needed(&self) -> bool {
        self.rhythm == Rhythm::AsNeeded
    }

    /// Whether the step covers a day, whatever falls on it.
    pub fn covers(&self, day: Date) -> bool {
        !self.struck && self.from_on <= day && self.until_on.is_none_or(|it| day <= it)
    }

    /// What falls on a day, in the order of the day.
    pub fn due(&self, day: Date) -> Vec<Due> {
        if !self.covers(day) || !self.repeat().falls_on(self.from_on, day) {
            return Vec::new();
        }
        let due = |(when, amount)| Due { when, amount };
        match (self.rhythm, self.times.each().next()) {
            (Rhythm::Hours, Some((When::At(first), amount))) => {
                let times = Repeat::hours_on(self.every, (self.from_on, first), day).into_iter();
                times.map(|when| due((when, amount))).collect()
            }
            _ => self.times.each().map(due).collect(),
        }
    }

    /// The rules that join several fields, at the field each is about.
    pub fn sound(self) -> Result<Step> {
        let wrong = |field, says: &str| Err(Error::from(FormErrors::at(field, says)));
        let most = match self.rhythm {
            Rhythm::Hours => 24 * 14,
            _ => 366,
        };
        if self.until_on.is_some_and(|it| it < self.from_on) {
            return wrong("until_on", "This is before the first day.");
        }
        if !(1..=most).contains(&self.every) {
            return wrong("every", "Write a whole number from 1 on, like 2.");
        }
        if self.rhythm == Rhythm::Weekdays && self.weekdays.is_empty() {
            return wrong("weekdays", "Tick at least one day of the week.");
        }
        if self.times.is_empty() {
            return wrong("morning", "Write how much is taken, at one time at least.");
        }
        if self.rhythm == Rhythm::Hours && self.hours_are_unclear() {
            return wrong("clock", "Write one time by the clock at which it begins, like 6:00 1.");
        }
        Ok(self)
    }

    /// Counted in hours there is one time, by the clock, from which to count.
    fn hours_are_unclear(&self) -> bool {
        let mut times = self.times.each();
        !matches!((times.next(), times.next()), (Some((When::At(_), _)), None))
    }

    /// Refuses a step that lies over another one of the same medicine.
    pub fn beside(self, others: &[Step]) -> Result<Step> {
        let lies_over = |it: &&Step| {
            let apart = self.until_on.is_some_and(|end| end < it.from_on)
                || it.until_on.is_some_and(|end| end < self.from_on);
            it.id != self.id && !it.struck && !apart && it.is_as_needed() == self.is_as_needed()
        };
        let Some(other) = others.iter().find(lies_over) else { return Ok(self) };
        let until =
            other.until_on.map_or("with no end".into(), |it| format!("to {}", day::words(it)));
        let says = format!(
            "This lies over the step from {} {until}. End that one first, or begin this one after it.",
            day::words(other.from_on)
        );
        Err(FormErrors::at("from_on", says).into())
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Step> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self) -> Step {
        Step { struck: true, ..self.clone() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn step(rhythm: Rhythm, every: i64, times: &str) -> Step {
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
            unit: Line::from("tablet".to_owned()),
            least_hours: None,
            most_a_day: None,
            struck: false,
            version: 1,
        }
    }

    fn due(step: &Step, day: Date) -> String {
        let all = step.due(day).into_iter().map(|it| format!("{} {}", it.when.name(), it.amount));
        all.collect::<Vec<_>>().join(", ")
    }

    #[test]
    fn each_rhythm_falls_where_it_should() {
        let daily = step(Rhythm::Days, 1, "morning 1, bedtime 2");
        assert_eq!(due(&daily, date!(2026 - 03 - 02)), "morning 1, bedtime 2");
        assert_eq!(due(&daily, date!(2026 - 03 - 01)), "");
        let other = step(Rhythm::Days, 2, "morning 1");
        assert_eq!(due(&other, date!(2026 - 03 - 03)), "");
        let weekly =
            Step { weekdays: Weekdays::of(["sun"]), ..step(Rhythm::Weekdays, 1, "morning 1") };
        assert_eq!(due(&weekly, date!(2026 - 03 - 08)), "morning 1");
        assert_eq!(due(&weekly, date!(2026 - 03 - 09)), "");
        let hours = step(Rhythm::Hours, 8, "06:00 1");
        assert_eq!(due(&hours, date!(2026 - 03 - 05)), "06:00 1, 14:00 1, 22:00 1");
        assert_eq!(due(&step(Rhythm::AsNeeded, 1, "morning 1"), date!(2026 - 03 - 02)), "");
    }

    #[test]
    fn a_taper_is_steps_that_follow_each_other() {
        let step = |from, until, times| Step {
            from_on: from,
            until_on: until,
            ..step(Rhythm::Days, 1, times)
        };
        let first = step(date!(2026 - 03 - 02), Some(date!(2026 - 03 - 08)), "morning 4");
        let second = step(date!(2026 - 03 - 09), Some(date!(2026 - 03 - 15)), "morning 2");
        let kept = [Step { id: 1.into(), ..first }];
        assert!(second.clone().beside(&kept).is_ok());
        let early = Step { from_on: date!(2026 - 03 - 08), ..second.clone() };
        assert!(early.beside(&kept).is_err(), "one day in both");
        let open = Step { until_on: None, from_on: date!(2026 - 01 - 01), ..second.clone() };
        assert!(open.clone().beside(&kept).is_err());
        assert!(Step { rhythm: Rhythm::AsNeeded, ..open }.beside(&kept).is_ok());
    }

    #[test]
    fn what_does_not_fit_together_is_told_at_its_field() {
        let field = |it: Step| match it.sound() {
            Err(Error::Invalid(errors)) => errors.iter().next().map(|it| it.field.clone()),
            _ => None,
        };
        let daily = step(Rhythm::Days, 1, "morning 1");
        assert_eq!(field(daily.clone()), None);
        let ends = Step { until_on: Some(date!(2026 - 03 - 01)), ..daily.clone() };
        assert_eq!(field(ends), Some("until_on".into()));
        assert_eq!(field(Step { every: 0, ..daily.clone() }), Some("every".into()));
        assert_eq!(
            field(Step { rhythm: Rhythm::Weekdays, ..daily.clone() }),
            Some("weekdays".into())
        );
        assert_eq!(field(step(Rhythm::Days, 1, "")), Some("morning".into()));
        assert_eq!(field(Step { rhythm: Rhythm::Hours, every: 8, ..daily }), Some("clock".into()));
        assert_eq!(field(step(Rhythm::Hours, 8, "06:00 1")), None);
    }
}
