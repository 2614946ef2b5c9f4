//! What can be typed about a step of a schedule.

use super::{
    model::{Rhythm, Step},
    repeat::{WEEK, Weekdays},
    times::{Times, When},
};
use crate::base::{
    ids::{MedicineId, PersonId, StepId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The step as it was typed, and the version it was opened on.
pub struct Typed {
    pub step: Entry,
    pub version: i64,
}

pub struct Entry {
    from_on: Date,
    until_on: Option<Date>,
    rhythm: Rhythm,
    every: i64,
    weekdays: Weekdays,
    times: Times,
    unit: Line,
    least_hours: Option<Quantity>,
    most_a_day: Option<Quantity>,
}

impl Entry {
    /// As a step of a medicine: a new one, or the one it was.
    pub fn of(self, medicine_id: MedicineId, before: Option<&Step>) -> Step {
        let as_needed = self.rhythm == Rhythm::AsNeeded;
        let weekly = self.rhythm == Rhythm::Weekdays;
        Step {
            id: before.map_or_else(StepId::default, |it| it.id),
            person_id: before.map_or_else(PersonId::default, |it| it.person_id),
            medicine_id,
            from_on: self.from_on,
            until_on: self.until_on,
            rhythm: self.rhythm,
            every: self.every,
            // What belongs to another rhythm was left over from a change of mind.
            weekdays: if weekly { self.weekdays } else { Weekdays::default() },
            times: self.times,
            unit: self.unit,
            least_hours: self.least_hours.filter(|_| as_needed),
            most_a_day: self.most_a_day.filter(|_| as_needed),
            struck: false,
            version: before.map_or(1, |it| it.version),
        }
    }
}

impl FromForm for Typed {
    fn read(form: &mut Reader) -> Result<Typed, FormErrors> {
        let rhythm = form.choice::<Rhythm>("rhythm");
        let every = every(form);
        let weekdays = form.every("weekdays");
        let known = WEEK.map(|(_, short, _)| short);
        let weekdays =
            Weekdays::of(known.into_iter().filter(|it| weekdays.iter().any(|typed| typed == it)));
        let times = times(form, rhythm);
        let unit = form.needed_line("unit", "Write what is counted, like tablet, drop or mL.");
        let from_on = form.needed_day("from_on", "Enter the first day, like 9 Mar 2026.");
        let until_on = form.day("until_on");
        let (least_hours, most_a_day) = (form.quantity("least_hours"), form.quantity("most_a_day"));
        let version = form.version();
        form.finish(|| {
            let (from_on, rhythm, unit) = (from_on?, rhythm?, unit?);
            let (every, times) = (every?, times?);
            let step = Entry {
                from_on,
                until_on,
                rhythm,
                every,
                weekdays,
                times,
                unit,
                least_hours,
                most_a_day,
            };
            Some(Typed { step, version })
        })
    }
}

/// Empty counts as one: every day, every week.
fn every(form: &mut Reader) -> Option<i64> {
    match form.raw("every").trim() {
        "" => Some(1),
        typed => typed.parse().ok().or_else(|| {
            form.wrong("every", "Write a whole number from 1 on, like 2.");
            None
        }),
    }
}

/// The four standard times, and those by the clock. As needed, the amount alone counts.
fn times(form: &mut Reader, rhythm: Option<Rhythm>) -> Option<Times> {
    if rhythm == Some(Rhythm::AsNeeded) {
        let amount = form.quantity("amount").filter(|it| !it.is_zero());
        if amount.is_none() {
            form.wrong("amount", "Write how much is taken at one time.");
        }
        return amount.map(|it| Times::of([(When::Morning, it)]));
    }
    let mut all = Vec::new();
    for (when, field) in When::STANDARD {
        let amount = form.quantity(field).filter(|it| !it.is_zero());
        all.extend(amount.map(|it| (when, it)));
    }
    match Times::read_clock(form.raw("clock")) {
        Ok(clock) => all.extend(clock),
        Err(says) => form.wrong("clock", says),
    }
    Some(Times::of(all))
}
