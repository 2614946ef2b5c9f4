//! Made-up medicines, steps, fills and counts, for the tests of what is reckoned from them.

use super::super::{
    model::{Label, Medicine, Supply},
    schedule::{
        model::{Rhythm, Step},
        repeat::Weekdays,
        times::Times,
    },
};
use super::{
    amount::Amount,
    lasts::Written,
    model::{Class, Count, Fill},
};
use crate::base::{
    clock::Instant,
    ids::{CountId, FillId, StepId},
    text::Line,
};
use time::{Date, macros::date};

pub fn medicine(as_needed: bool) -> Medicine {
    let label = Label {
        name: Line::from("Warfarin".to_owned()),
        strength: None,
        form: None,
        dose: None,
        route: None,
        times: None,
        purpose: None,
        prescriber: None,
        started_on: None,
        as_needed,
        label_limit: None,
        supply: Supply::Prescription,
        source: None,
    };
    Medicine::new(1.into(), label)
}

pub fn step(rhythm: Rhythm, every: i64, times: &str) -> Step {
    Step {
        id: StepId::default(),
        person_id: 1.into(),
        medicine_id: 1.into(),
        from_on: date!(2026 - 01 - 01),
        until_on: None,
        rhythm,
        every,
        weekdays: Weekdays::of(["sun"]),
        times: Times::from(times.to_owned()),
        unit: Line::from("tablet".to_owned()),
        least_hours: None,
        most_a_day: None,
        struck: false,
        version: 1,
    }
}

pub fn fill(on: Date, amount: &str) -> Fill {
    Fill {
        id: FillId::default(),
        person_id: 1.into(),
        medicine_id: 1.into(),
        filled_on: on,
        amount: Amount::from(amount.to_owned()),
        label_days: None,
        pharmacy: None,
        pharmacy_days: None,
        refills_left: None,
        written_on: None,
        expires_on: None,
        class: Class::NoneKnown,
        earliest_refill: None,
        entered_by: 1.into(),
        entered_at: Instant::from_unix(0),
        struck: false,
        version: 1,
    }
}

pub fn count(on: Date, amount: &str) -> Count {
    Count {
        id: CountId::default(),
        person_id: 1.into(),
        medicine_id: 1.into(),
        counted_on: on,
        amount: Amount::from(amount.to_owned()),
        entered_by: 1.into(),
        entered_at: Instant::from_unix(0),
        struck: false,
        version: 1,
    }
}

pub fn written(steps: Vec<Step>, fills: Vec<Fill>) -> Written {
    Written { medicine: medicine(false), steps, fills, counts: Vec::new(), pauses: Vec::new() }
}
