//! The label's hours and its most in 24 hours, with the nights in which the clocks change.

use super::super::super::schedule::{model::Rhythm, repeat::Weekdays, times::Times};
use super::*;
use crate::base::{ids::StepId, text::Line};
use time::{
    Date, Time,
    macros::{date, time},
};

fn zone() -> Zone {
    Zone::parse("America/New_York").expect("a zone")
}

fn step(least_hours: Option<i64>, most: Option<Quantity>, unit: &str) -> Step {
    Step {
        id: StepId::default(),
        person_id: 1.into(),
        medicine_id: 1.into(),
        from_on: date!(2026 - 01 - 01),
        until_on: None,
        rhythm: Rhythm::AsNeeded,
        every: 1,
        weekdays: Weekdays::default(),
        times: Times::from("morning 1".to_owned()),
        unit: Line::from(unit.to_owned()),
        least_hours: least_hours.map(Quantity::whole),
        most_a_day: most,
        struck: false,
        version: 1,
    }
}

fn at(day: Date, time: Time) -> Instant {
    zone().instant(day, time)
}

fn taken(at: Instant, amount: i64, unit: &str) -> Taken {
    Taken { at, amount: Quantity::whole(amount), unit: unit.into(), by: "Ines".into() }
}

fn said(step: &Step, taken: &[Taken], at: Instant, amount: i64) -> String {
    warnings(Some(step), taken, (at, Quantity::whole(amount)), &zone()).join(" | ")
}

#[test]
fn the_least_hours_are_said_with_who_gave_the_last_one() {
    let (label, day) = (step(Some(6), None, "tablet"), date!(2026 - 11 - 25));
    let last = [taken(at(day, time!(9:12)), 1, "tablet")];
    let wait =
        "Label says wait 6 hours; last given 3 h before, at 9:12 am, by Ines. Ask the pharmacist.";
    assert_eq!(said(&label, &last, at(day, time!(12:12)), 1), wait);
    assert_eq!(said(&label, &last, at(day, time!(15:12)), 1), "");
    assert!(!said(&label, &last, at(day, time!(15:11)), 1).is_empty());
    // Entered later, for an earlier hour.
    let before =
        "Label says wait 6 hours; also given 2 h after, at 9:12 am, by Ines. Ask the pharmacist.";
    assert_eq!(said(&label, &last, at(day, time!(7:12)), 1), before);
}

/// Clocks of New York go back at 2 am on 1 November 2026, and forward at 2 am on 8 March 2026:
/// Python zoneinfo, as in `base/zone.rs`.
#[test]
fn hours_are_real_ones_in_the_nights_in_which_the_clocks_change() {
    let label = step(Some(6), None, "tablet");
    let evening = [taken(at(date!(2026 - 10 - 31), time!(23:00)), 1, "tablet")];
    assert_eq!(said(&label, &evening, at(date!(2026 - 11 - 01), time!(4:00)), 1), "", "6 hours");
    let short = said(&label, &evening, at(date!(2026 - 11 - 01), time!(3:59)), 1);
    assert!(short.contains("last given 5 h 59 min before"), "{short}");
    let spring = [taken(at(date!(2026 - 03 - 07), time!(23:00)), 1, "tablet")];
    let five = said(&label, &spring, at(date!(2026 - 03 - 08), time!(5:00)), 1);
    assert!(five.contains("last given 5 h before"), "by the wall it were 6: {five}");
    assert_eq!(said(&label, &spring, at(date!(2026 - 03 - 08), time!(6:00)), 1), "");
    // 24 hours too: from 8 pm to 7 pm by the wall.
    let unit = [taken(at(date!(2026 - 10 - 31), time!(20:00)), 2, "tablet")];
    let sum = |time| super::sum(&unit, "tablet", at(date!(2026 - 11 - 01), time));
    assert_eq!((sum(time!(18:59)), sum(time!(19:00))), (Quantity::whole(2), Quantity::default()));
}

/// 21 CFR 201.326 and product labels: acetaminophen 4,000 mg in 24 hours; 4,000 is not over,
/// 4,001 is.
#[test]
fn the_most_in_24_hours_is_told_when_it_is_passed_and_not_before() {
    let label = step(None, Some(Quantity::whole(4000)), "mg");
    let day = date!(2026 - 11 - 25);
    let three = [time!(6:00), time!(11:00), time!(16:00)].map(|it| taken(at(day, it), 1000, "mg"));
    assert_eq!(said(&label, &three, at(day, time!(21:00)), 1000), "");
    let over = "Label says at most 4,000 mg in 24 hours; with this one, 4,001 mg are entered here. Ask the pharmacist.";
    assert_eq!(said(&label, &three, at(day, time!(21:00)), 1001), over);
    // The first has left the 24 hours.
    assert_eq!(said(&label, &three, at(date!(2026 - 11 - 26), time!(6:00)), 2000), "");
    // Entered afterwards, for the middle of the day.
    assert!(!said(&label, &three, at(day, time!(8:00)), 1001).is_empty());
    let drops = [taken(at(day, time!(6:00)), 9000, "drop")];
    assert_eq!(said(&label, &drops, at(day, time!(21:00)), 4000), "", "counted otherwise");
}

#[test]
fn two_entries_in_the_same_minutes_may_be_one_dose() {
    let day = date!(2026 - 11 - 25);
    let last = [taken(at(day, time!(9:00)), 1, "tablet")];
    let said = |time| warnings(None, &last, (at(day, time), Quantity::ONE), &zone());
    let close = "An entry stands close to this one: last given 5 min before, at 9:00 am, by Ines.";
    assert_eq!(said(time!(9:05)), [close]);
    assert!(said(time!(9:15)).is_empty());
}
