//! What stands of turns, and what fits, on days before, at and after their own.

use super::super::super::{
    before::Before,
    model::{Label, Status, Supply},
};
use super::super::model::Said;
use super::*;
use crate::base::{clock::Instant, text::Line};
use time::macros::date;

const TODAY: Date = date!(2026 - 11 - 25);

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn warfarin() -> Medicine {
    let label = Label {
        name: line("Warfarin"),
        strength: Some(line("2.5 mg")),
        form: None,
        dose: Some(line("1 tablet")),
        route: None,
        times: Some(line("in the evening")),
        purpose: None,
        prescriber: None,
        started_on: Some(date!(2026 - 01 - 02)),
        as_needed: false,
        label_limit: None,
        supply: Supply::Prescription,
        source: None,
    };
    Medicine { id: 7.into(), ..Medicine::new(1.into(), label) }
}

fn turn(what: What, on: Date) -> Turn {
    let said = Said { on, by: line("Dr Lind"), reason: line("before the operation") };
    Turn::new(&warfarin(), what, said, (2.into(), Instant::from_unix(0)))
}

fn held(on: Date) -> Medicine {
    turn(What::Held, on).turned(&warfarin(), TODAY).expect("held")
}

#[test]
fn a_hold_needs_someone_until_there_is_a_day_or_one_who_asks() {
    let since = date!(2026 - 11 - 20);
    let hold = turn(What::Held, since);
    let needs =
        |turn: &Turn, owned| hold_needs(&held(since), std::slice::from_ref(turn), owned, TODAY);
    let said = needs(&hold, false).expect("someone is needed");
    assert!(said.ends_with("is on hold since 20 November 2026: ask Dr Lind when to resume"));
    assert_eq!(needs(&hold, true), None);
    let dated = |on| hold.clone().resuming(Some(on), None).expect("a day");
    assert_eq!(needs(&dated(date!(2026 - 11 - 26)), false), None, "the day has not come");
    let due = needs(&dated(TODAY), true).expect("the day has come");
    assert!(due.ends_with("was to be resumed on 25 November 2026, said Dr Lind: was it?"));
    assert!(hold.resuming(Some(since), None).is_err(), "a hold lasts a day at least");
    // An older hold has no turn.
    let alone = hold_needs(&held(since), &[], false, TODAY).expect("someone is needed");
    assert!(alone.contains("ask the prescriber"));
    assert_eq!(hold_needs(&warfarin(), &[], false, TODAY), None);
}

#[test]
fn a_plan_is_told_from_the_day_before() {
    let plan = |on| Turn { planned: true, ..turn(What::Stopped, on) };
    let needs = |on| plan_needs("Warfarin", &plan(on), TODAY);
    assert_eq!(needs(date!(2026 - 11 - 27)), None);
    assert_eq!(
        needs(date!(2026 - 11 - 26)).as_deref(),
        Some("Warfarin is to be stopped from 26 November 2026, said Dr Lind")
    );
    assert_eq!(
        needs(TODAY).as_deref(),
        Some("Warfarin was to be stopped from 25 November 2026, said Dr Lind: was it?")
    );
    assert_eq!(plan_needs("Warfarin", &turn(What::Stopped, TODAY), TODAY), None, "it was done");
    // The medicine goes on being taken until someone says that it was done.
    assert_eq!(
        on_paper(&warfarin(), &[plan(date!(2026 - 12 - 03))]).as_deref(),
        Some("to be stopped from 3 December 2026, said Dr Lind")
    );
}

#[test]
fn a_turn_fits_how_the_medicine_stands_and_comes_after_its_start() {
    let stopped = turn(What::Stopped, TODAY).turned(&warfarin(), TODAY).expect("stopped");
    assert!(turn(What::Held, TODAY).turned(&stopped, TODAY).is_err());
    assert!(turn(What::Stopped, TODAY).turned(&stopped, TODAY).is_err());
    assert!(turn(What::Resumed, TODAY).turned(&warfarin(), TODAY).is_err());
    assert!(turn(What::Held, date!(2026 - 01 - 01)).turned(&warfarin(), TODAY).is_err());
    assert!(turn(What::Held, date!(2026 - 11 - 26)).turned(&warfarin(), TODAY).is_err());
    let before = turn(What::Resumed, date!(2026 - 11 - 24)).turned(&stopped, TODAY);
    assert!(before.is_err(), "it was stopped later than that");
}

#[test]
fn a_turn_that_is_taken_back_leaves_the_medicine_as_it_was() {
    let hold = turn(What::Held, TODAY);
    let now = held(TODAY);
    assert_eq!(hold.taken_back(&now).expect("as it was"), warfarin());
    // What was put right on its label since stays.
    let put_right = Medicine { purpose: Some(line("heart rhythm")), ..now.clone() };
    let back = hold.taken_back(&put_right).expect("as it was");
    assert_eq!((back.status, back.purpose), (Status::Taking, Some(line("heart rhythm"))));
    let stopped = now.stopped(TODAY, line("no more"), TODAY).expect("stopped");
    assert_eq!(hold.taken_back(&stopped), None, "something else happened since");

    let changed = Turn { left_at: 2, ..turn(What::Changed, TODAY) };
    let now = Medicine { strength: Some(line("5 mg")), version: 2, ..warfarin() };
    assert_eq!(changed.taken_back(&now).expect("as it was").strength, Some(line("2.5 mg")));
    assert_eq!(changed.was_taken(&now).as_deref(), Some("2.5 mg: 1 tablet, in the evening"));
    assert_eq!(changed.taken_back(&Medicine { version: 3, ..now }), None);
    assert!(Before::read("{").is_none());
}
