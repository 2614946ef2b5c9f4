//! How long a supply lasts, over tapers, days of the week, holds, counts and labels.

use super::super::super::{model::Status, schedule::model::Rhythm};
use super::super::samples::{count, fill, medicine, step, written};
use super::*;
use crate::base::{ids::PauseId, text::Line};
use time::macros::date;

const TODAY: Date = date!(2026 - 03 - 10);

fn out(it: &Written) -> Option<Date> {
    match it.lasts(TODAY) {
        Lasts::Until { out, .. } => Some(out),
        _ => None,
    }
}

fn untold(it: &Written) -> String {
    match it.lasts(TODAY) {
        Lasts::Untold { says } => says,
        other => panic!("{other:?}"),
    }
}

fn daily(times: &str) -> Vec<Step> {
    vec![step(Rhythm::Days, 1, times)]
}

#[test]
fn the_real_steps_are_walked() {
    let from = date!(2026 - 03 - 02);
    let twice = written(daily("morning 1, bedtime 1"), vec![fill(from, "90 tablets")]);
    assert_eq!(out(&twice), Some(date!(2026 - 04 - 16)));
    // Every second day, counted from 1 January: 3 March is the first.
    let second = written(vec![step(Rhythm::Days, 2, "morning 1")], vec![fill(from, "3 tablets")]);
    assert_eq!(out(&second), Some(date!(2026 - 03 - 08)));
    // On Sundays: 8, 15, 22 and 29 March.
    let weekly = vec![step(Rhythm::Weekdays, 1, "morning 1")];
    assert_eq!(out(&written(weekly, vec![fill(from, "4 tablets")])), Some(date!(2026 - 04 - 05)));
    let hours = vec![step(Rhythm::Hours, 8, "06:00 1")];
    assert_eq!(out(&written(hours, vec![fill(from, "9 tablets")])), Some(date!(2026 - 03 - 05)));
}

#[test]
fn a_taper_takes_what_each_of_its_steps_says() {
    let until = |it: Step, from, until| Step { from_on: from, until_on: Some(until), ..it };
    let four = step(Rhythm::Days, 1, "morning 4");
    let two = step(Rhythm::Days, 1, "morning 2");
    let steps = vec![
        until(four, date!(2026 - 03 - 02), date!(2026 - 03 - 08)),
        until(two, date!(2026 - 03 - 09), date!(2026 - 03 - 15)),
    ];
    // 7 days of 4, then 6 of 2.
    let short = written(steps.clone(), vec![fill(date!(2026 - 03 - 02), "41 tablets")]);
    assert_eq!(out(&short), Some(date!(2026 - 03 - 15)));
    let enough = written(steps.clone(), vec![fill(date!(2026 - 03 - 02), "42 tablets")]);
    let there = Amount::from("12 tablets".to_owned());
    assert_eq!(enough.lasts(TODAY), Lasts::ToItsEnd { end: date!(2026 - 03 - 15), there });
    assert_eq!(
        enough.lasts(date!(2026 - 03 - 20)),
        Lasts::Untold { says: "its schedule ended on 15 March 2026".into() }
    );
}

#[test]
fn days_on_hold_use_nothing_up() {
    let from = date!(2026 - 03 - 02);
    let mut it = written(daily("morning 1"), vec![fill(from, "30 tablets")]);
    assert_eq!(out(&it), Some(date!(2026 - 04 - 01)));
    it.pauses.push(Pause {
        id: PauseId::default(),
        person_id: 1.into(),
        medicine_id: 1.into(),
        from_on: date!(2026 - 03 - 04),
        until_on: date!(2026 - 03 - 06),
        version: 1,
    });
    assert_eq!(out(&it), Some(date!(2026 - 04 - 04)));
    it.medicine.status = Status::OnHold;
    it.medicine.status_since = Some(date!(2026 - 03 - 08));
    let says = "on hold: nothing is used up; 30 tablets fetched on 2 March 2026";
    assert_eq!(untold(&it), says);
    // 2, 3 and 7 March were taken.
    assert_eq!(it.there(TODAY).map(|it| it.to_string()).as_deref(), Some("27 tablets"));
}

#[test]
fn a_pause_is_from_a_hold_to_the_day_before_it_is_taken_again() {
    let held = Medicine {
        status: Status::OnHold,
        status_since: Some(date!(2026 - 03 - 04)),
        ..medicine(false)
    };
    let pause = Pause::between(&held, &held.brought_back(), TODAY).expect("days without");
    assert_eq!((pause.from_on, pause.until_on), (date!(2026 - 03 - 04), date!(2026 - 03 - 09)));
    assert_eq!(Pause::between(&held, &held.brought_back(), date!(2026 - 03 - 04)), None);
    let reason = Line::from("stopped".to_owned());
    let stopped = held.stopped(date!(2026 - 03 - 06), reason, TODAY).expect("a stop");
    let pause = Pause::between(&held, &stopped, TODAY).expect("days without");
    assert_eq!(pause.until_on, date!(2026 - 03 - 05));
    assert_eq!(Pause::between(&held.brought_back(), &held, TODAY), None);
}

#[test]
fn a_count_stands_for_all_there_was_that_day() {
    let from = date!(2026 - 03 - 02);
    let mut it = written(daily("morning 1"), vec![fill(from, "30 tablets")]);
    it.counts.push(count(date!(2026 - 03 - 09), "10 tablets"));
    assert_eq!(out(&it), Some(date!(2026 - 03 - 19)));
    // Fetched later, it comes on top; fetched the same day, it was counted.
    it.fills.push(fill(date!(2026 - 03 - 09), "30 tablets"));
    assert_eq!(out(&it), Some(date!(2026 - 03 - 19)));
    it.fills.push(fill(date!(2026 - 03 - 10), "30 tablets"));
    assert_eq!(out(&it), Some(date!(2026 - 04 - 18)));
    // A count before the first fill.
    let mut early = written(daily("morning 1"), vec![fill(from, "30 tablets")]);
    early.counts.push(count(date!(2026 - 02 - 27), "1 tablet"));
    assert_eq!(out(&early), Some(date!(2026 - 04 - 01)));
}

#[test]
fn as_needed_has_no_run_out_day() {
    let mut it = written(Vec::new(), vec![fill(date!(2026 - 03 - 02), "100 tablets")]);
    it.medicine = medicine(true);
    it.counts.push(count(date!(2026 - 03 - 01), "12 tablets"));
    let says = "12 tablets counted on 1 March 2026, 100 tablets fetched on 2 March 2026";
    assert_eq!(it.lasts(TODAY), Lasts::AsNeeded { says: says.into() });
    it.steps = vec![step(Rhythm::AsNeeded, 1, "morning 1"), step(Rhythm::Days, 1, "morning 1")];
    assert!(it.is_partly_as_needed() && out(&it).is_some());
}

#[test]
fn what_is_fetched_in_another_unit_lasts_as_its_label_says() {
    let bottle = fill(date!(2026 - 03 - 02), "2.5 mL");
    let drops = written(daily("bedtime 2"), vec![bottle.clone()]);
    assert!(untold(&drops).starts_with("taken in tablets and fetched or counted in mL"));
    let labelled = Fill { label_days: Some(25), ..bottle };
    let drops = written(daily("bedtime 2"), vec![labelled.clone()]);
    assert_eq!(drops.lasts(TODAY), Lasts::Until { out: date!(2026 - 03 - 27), there: None });
    assert_eq!(out(&written(Vec::new(), vec![labelled])), Some(date!(2026 - 03 - 27)));
}

#[test]
fn what_cannot_be_told_says_why() {
    let first = || vec![fill(date!(2026 - 03 - 02), "30 tablets")];
    assert_eq!(
        untold(&written(daily("morning 1"), Vec::new())),
        "no fill and no count is written down"
    );
    let says = "when and how much is not written in numbers yet";
    assert_eq!(untold(&written(Vec::new(), first())), says);
    let absurd = vec![fill(date!(2026 - 03 - 02), "9,999 tablets")];
    assert!(untold(&written(daily("morning 1"), absurd)).starts_with("it lasts longer"));
    let mut mixed = daily("morning 1");
    mixed.push(Step { unit: Line::from("mL".to_owned()), ..mixed[0].clone() });
    assert_eq!(untold(&written(mixed, first())), "its steps are counted in tablets and in mL");
}

#[test]
fn the_days_of_a_fill_and_what_days_take() {
    let bottle = fill(date!(2026 - 03 - 02), "60 tablets");
    let it = written(daily("morning 1, evening 1"), vec![bottle.clone()]);
    assert_eq!(it.days_of(&bottle), Some(30));
    assert_eq!(it.days_of(&Fill { label_days: Some(20), ..bottle }), Some(20));
    let taken = it.taken(date!(2026 - 03 - 02), date!(2026 - 03 - 08));
    assert_eq!(taken.map(|it| it.to_string()).as_deref(), Some("14 tablets"));
}
