//! Five hundred schedules made at random from a fixed seed, each with the days and times that we
//! lay out for it: written down for `tests/outside/recurrences.py`, which lays the same out with
//! another people's program (python-dateutil, after RFC 5545) and compares every one.
//!
//! All kinds: every n days, days of every nth week, every n hours over changes of the clocks,
//! dated steps that follow each other; beginnings on 29 February, at year ends, on the nights
//! when the clocks are changed in the United States.

use super::{
    model::{Rhythm, Step},
    repeat::{WEEK, Weekdays},
    times::{Times, When},
};
use crate::base::{ids::StepId, quantity::Quantity, text::Line};
use proptest::{
    prelude::*,
    strategy::ValueTree,
    test_runner::{Config, RngAlgorithm, TestRng, TestRunner},
};
use serde_json::{Value, json};
use std::{env, fs, path::Path};
use time::{Date, Duration, Time, macros::date};

const SEED: &[u8; 32] = b"kinsheaf: five hundred schedules";
const COUNT: usize = 500;
/// The days that are laid out, from a little before the first step on: more than a year.
const LOOK: i64 = 430;

fn beginning() -> impl Strategy<Value = Date> {
    let edges = [
        date!(2024 - 02 - 29),
        date!(2028 - 02 - 29),
        date!(2023 - 03 - 01),
        date!(2025 - 12 - 31),
        date!(2027 - 01 - 01),
        date!(2026 - 03 - 07),
        date!(2026 - 03 - 08),
        date!(2026 - 10 - 31),
        date!(2026 - 11 - 01),
    ];
    let any = (0_i64..4_000).prop_map(|it| date!(2020 - 01 - 01) + Duration::days(it));
    prop_oneof![proptest::sample::select(edges.to_vec()), any]
}

fn rhythm() -> impl Strategy<Value = (Rhythm, i64)> {
    prop_oneof![
        (Just(Rhythm::Days), prop_oneof![Just(1_i64), 2..15_i64, 15..367_i64]),
        (Just(Rhythm::Weekdays), prop_oneof![Just(1_i64), 2..9_i64, 9..54_i64]),
        (Just(Rhythm::Hours), prop_oneof![1..25_i64, 25..337_i64]),
    ]
}

fn clock() -> impl Strategy<Value = When> {
    (0_u8..24, 0_u8..60).prop_map(|(hour, minute)| {
        When::At(Time::from_hms(hour, minute, 0).expect("a time of the day"))
    })
}

/// Times for a rhythm: one by the clock for what is counted in hours.
fn times(rhythm: Rhythm) -> impl Strategy<Value = Times> {
    let amount = (1_i64..9).prop_map(|it| Quantity::thousandths(it * 500));
    let standard = proptest::sample::subsequence(When::STANDARD.map(|it| it.0).to_vec(), 1..4);
    let many = (standard, proptest::option::of(clock()), amount.clone());
    let many = many.prop_map(|(standard, clock, amount)| {
        Times::of(standard.into_iter().chain(clock).map(|when| (when, amount)))
    });
    let one = (clock(), amount).prop_map(|it| Times::of([it]));
    if rhythm == Rhythm::Hours { one.boxed() } else { many.boxed() }
}

/// A step with no days yet, how long it lasts, and how long nothing follows it.
fn step() -> impl Strategy<Value = (Step, i64, i64)> {
    let days = proptest::sample::subsequence(WEEK.map(|it| it.1).to_vec(), 1..7);
    let with_times = rhythm().prop_flat_map(|it| (Just(it), times(it.0)));
    let lasts = prop_oneof![Just(0_i64), 1..40_i64, 40..300_i64];
    (with_times, days, lasts, 0_i64..9).prop_map(|(((rhythm, every), times), days, lasts, gap)| {
        let weekdays = if rhythm == Rhythm::Weekdays { days } else { Vec::new() };
        let step = Step {
            id: StepId::default(),
            person_id: 1.into(),
            medicine_id: 1.into(),
            from_on: Date::MIN,
            until_on: None,
            rhythm,
            every,
            weekdays: Weekdays::of(weekdays),
            times,
            unit: Line::from("tablet".to_owned()),
            least_hours: None,
            most_a_day: None,
            struck: false,
            version: 1,
        };
        (step, lasts, gap)
    })
}

/// One to three steps that follow each other; the last has an end or none.
fn schedule() -> impl Strategy<Value = Vec<Step>> {
    let steps = proptest::collection::vec(step(), 1..4);
    (steps, beginning(), any::<bool>()).prop_map(|(steps, mut from, ends)| {
        let last = steps.len();
        let dated = steps.into_iter().enumerate().map(|(place, (step, lasts, gap))| {
            let until = from + Duration::days(lasts);
            let open = place + 1 == last && !ends;
            let id = StepId::from(place as i64 + 1);
            let dated = Step { id, from_on: from, until_on: (!open).then_some(until), ..step };
            from = until + Duration::days(1 + gap);
            dated
        });
        dated.collect()
    })
}

fn all() -> Vec<Vec<Step>> {
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, SEED);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let strategy = schedule();
    let one = |_| strategy.new_tree(&mut runner).expect("a schedule").current();
    (0..COUNT).map(one).collect()
}

/// "2026-03-08 06:00 0.5", dose by dose.
fn laid_out(steps: &[Step]) -> Vec<String> {
    let first = steps[0].from_on - Duration::days(5);
    let days = (0..LOOK).map(|it| first + Duration::days(it));
    let doses = days.flat_map(|day| {
        let due = steps.iter().flat_map(move |it| it.due(day)).collect::<Vec<_>>();
        due.into_iter().map(move |it| format!("{day} {} {}", it.when.name(), it.amount))
    });
    doses.collect()
}

fn written(steps: &[Step]) -> Value {
    let first = steps[0].from_on - Duration::days(5);
    let each = steps.iter().map(|it| {
        let times = it.times.each().map(|(when, amount)| [when.name(), amount.to_string()]);
        json!({
            "from": it.from_on.to_string(), "until": it.until_on.map(|it| it.to_string()),
            "rhythm": it.rhythm, "every": it.every, "weekdays": it.weekdays.to_string(),
            "times": times.collect::<Vec<_>>(),
        })
    });
    let last = first + Duration::days(LOOK - 1);
    json!({
        "first": first.to_string(), "last": last.to_string(),
        "steps": each.collect::<Vec<_>>(), "ours": laid_out(steps),
    })
}

/// With KINSHEAF_SCHEDULES set, they are written there for `tests/outside/recurrences.py`.
#[test]
fn five_hundred_schedules_could_have_been_entered_and_are_laid_out() {
    let all = all();
    for steps in &all {
        for (place, step) in steps.iter().enumerate() {
            let step = step.clone().sound().expect("fields that fit together");
            step.beside(&steps[..place]).expect("steps that follow each other");
        }
    }
    let empty = all.iter().filter(|it| laid_out(it).is_empty()).count();
    assert!(empty < COUNT / 20, "{empty} have no dose at all");
    if let Some(file) = env::var_os("KINSHEAF_SCHEDULES") {
        let seed = String::from_utf8_lossy(SEED);
        let schedules: Vec<Value> = all.iter().map(|it| written(it)).collect();
        let written = json!({"seed": seed, "schedules": schedules});
        fs::write(Path::new(&file), written.to_string()).expect("written");
    }
}
