//! Three hundred series made at random from a fixed seed, each with the calendar that we write of it and the moments that our
//! pages show: written down for `tests/outside/calendars.py`, which reads the calendars with other people's programs (PyPI
//! icalendar, recurring-ical-events) and compares every moment.
//!
//! In six zones, two of them south of the equator, one that changes its clocks by half an hour, one that never does; with
//! times that fall into changes of the clocks; ended by count, by day, or not; some cancelled, moved, kept, gone along to.

use super::{
    event,
    gather::{self, About, Detail},
    vtimezone,
};
use crate::{
    base::{clock::Instant, text::Line, time_of_day::TimeOfDay, zone::Zone},
    record::appointments::{
        escort::Escort,
        meeting::Meeting,
        model::{Appointment, Entry, Status, VisitKind},
        occurrence::Occurrence,
        repeat::{Ends, Every, OfMonth, Repeat, WEEK},
    },
};
use proptest::{
    prelude::*,
    strategy::ValueTree,
    test_runner::{Config, RngAlgorithm, TestRng, TestRunner},
};
use serde_json::{Value, json};
use std::{collections::BTreeMap, env, fs, path::Path};
use time::{
    Date, Duration, Time,
    macros::{date, time},
};

const SEED: &[u8; 32] = b"kinsheaf: three hundred series..";
const COUNT: usize = 300;
const LOOK: i64 = 500;
const ZONES: [&str; 6] = [
    "America/Chicago",
    "America/New_York",
    "Europe/Budapest",
    "Australia/Lord_Howe",
    "Pacific/Auckland",
    "Asia/Kolkata",
];

fn first() -> impl Strategy<Value = Date> {
    let edges = [
        date!(2024 - 02 - 29),
        date!(2026 - 01 - 31),
        date!(2026 - 03 - 01),
        date!(2026 - 03 - 08),
        date!(2026 - 03 - 29),
        date!(2026 - 04 - 05),
        date!(2026 - 10 - 25),
        date!(2026 - 11 - 01),
        date!(2026 - 12 - 31),
    ];
    let any = (0_i64..1_800).prop_map(|it| date!(2024 - 01 - 01) + Duration::days(it));
    prop_oneof![proptest::sample::select(edges.to_vec()), any]
}

/// By the quarter of an hour; half of them at night, when clocks are changed.
fn clock() -> impl Strategy<Value = Time> {
    let night =
        [time!(0:30), time!(1:30), time!(2:00), time!(2:15), time!(2:30), time!(2:45), time!(3:00)];
    let any = (0_u8..24, 0_u8..4)
        .prop_map(|(hour, quarter)| Time::from_hms(hour, quarter * 15, 0).expect("a time"));
    prop_oneof![proptest::sample::select(night.to_vec()), any]
}

fn repeat(first: Date) -> impl Strategy<Value = Repeat> {
    let days = proptest::sample::subsequence(WEEK.map(|it| it.0).to_vec(), 0..4);
    let weeks = (1_u16..5, days).prop_map(move |(every, mut days)| {
        days.push(first.weekday());
        Every::Weeks(every, days)
    });
    let of = proptest::sample::select(vec![
        OfMonth::Day,
        OfMonth::Weekday,
        OfMonth::LastWeekday,
        OfMonth::LastDay,
    ]);
    let months = (1_u16..7, of).prop_map(|(every, of)| Every::Months(every, of));
    let every = prop_oneof![
        (1_u16..40).prop_map(Every::Days),
        weeks,
        months,
        (1_u16..3).prop_map(Every::Years),
    ];
    let ends = prop_oneof![
        Just(Ends::Never),
        (1_u32..60).prop_map(Ends::After),
        (0_i64..600).prop_map(move |it| Ends::On(first + Duration::days(it))),
    ];
    (every, ends).prop_map(|(every, ends)| Repeat { every, ends })
}

/// What is said of one: where in its series, what, and for a move by how many days to which time.
type Said = (usize, u8, i64, Time);

fn series() -> impl Strategy<Value = (Appointment, Vec<Said>)> {
    let begins = first().prop_flat_map(|it| (Just(it), repeat(it)));
    let said = proptest::collection::vec((0_usize..25, 0_u8..5, -4_i64..9, clock()), 0..5);
    let zone = proptest::sample::select(ZONES.to_vec());
    (begins, clock(), zone, 1_i64..36, said).prop_map(
        |((first, repeat), time, zone, minutes, said)| {
            let title = Line::from("Physical therapy, and more; at \\ noon".to_owned());
            let entry = Entry {
                repeat: Some(repeat),
                minutes: minutes * 5,
                place: Some(Line::from(
                    "Árvíztűrő tükörfúrógép, a place with a long name and öther letters, 3rd floor"
                        .to_owned(),
                )),
                ..Entry::new(title, VisitKind::Therapy, first, Some(TimeOfDay::of(time)))
            };
            let zone = Zone::parse(zone).expect("a zone");
            (Appointment::new(1.into(), entry, zone), said)
        },
    )
}

/// Only those whose first day is one of their days could have been entered.
fn all() -> Vec<(Appointment, Vec<Occurrence>)> {
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, SEED);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let strategy = series();
    let mut all = Vec::new();
    while all.len() < COUNT {
        let (of, said) = strategy.new_tree(&mut runner).expect("a series").current();
        if of.falls_on(of.on_day) {
            let id = i64::try_from(all.len()).expect("few") + 1;
            let of = Appointment { id: id.into(), version: 1 + id % 3, ..of };
            let own = occurrences(&of, &said);
            all.push((of, own));
        }
    }
    all
}

fn occurrences(of: &Appointment, said: &[Said]) -> Vec<Occurrence> {
    let days = of.repeats.as_ref().expect("a series").some(of.on_day, 25);
    let mut own: BTreeMap<Date, Occurrence> = BTreeMap::new();
    for (place, what, by, at) in said {
        let Some(day) = days.get(*place) else { continue };
        let it = own.remove(day).unwrap_or_else(|| Occurrence::new(of, *day));
        let it = match what {
            0 => it.turned(Status::Cancelled, Some(Line::from("called off".to_owned()))),
            1 | 2 => it.moved(*day + Duration::days(*by), TimeOfDay::of(*at)),
            3 => it.turned(Status::Kept, None),
            _ => it.escorted(Escort::Alone),
        };
        let id = i64::from(of.id) * 100 + i64::try_from(*place).expect("few");
        own.insert(*day, Occurrence { id: id.into(), version: it.version + 1, ..it });
    }
    own.into_values().collect()
}

pub fn written_calendar(of: &[Appointment], own: &[Occurrence]) -> String {
    let changed = BTreeMap::new();
    let about = About {
        house: "https://kinsheaf.example.org",
        person: 1,
        called: "Ottoline",
        member: 1.into(),
        detail: Detail::Names,
        died: None,
        changed: &changed,
        with: &|_| None,
    };
    let events = gather::events(&about, of, own);
    let zones = gather::zones(&events);
    let zones: Vec<_> =
        zones.values().map(|(zone, first)| vtimezone::lines(zone, *first, 2026)).collect();
    event::calendar("Appointments: Ottoline", &events, &zones)
}

fn written(of: &Appointment, own: &[Occurrence]) -> Value {
    let from = of.zone.instant(of.on_day - Duration::days(9), Time::MIDNIGHT);
    let to = from.plus(Duration::days(LOOK));
    let all = Meeting::all(std::slice::from_ref(of), own, (from, to));
    let state =
        |it: &Meeting| if it.status == Status::Cancelled { "CANCELLED" } else { "CONFIRMED" };
    let ours: Vec<_> = all.iter().map(|it| format!("{} {}", it.starts, state(it))).collect();
    json!({
        "zone": of.zone.name(), "rule": of.repeats.as_ref().map(|it| it.as_str()),
        "said": own.len(), "moved": own.iter().filter(|it| it.moved_on.is_some()).count(),
        "from": from.to_string(), "to": to.to_string(), "ours": ours,
        "unusual": all.iter().filter(|it| is_unusual(it)).count(),
        "calendar": written_calendar(std::slice::from_ref(of), own),
    })
}

/// Whether its time falls into a change of the clocks.
fn is_unusual(it: &Meeting) -> bool {
    let own = it.occurrence.as_ref();
    let day = own.and_then(|it| it.moved_on).unwrap_or(it.on);
    let time = own.and_then(|it| it.moved_time.as_ref()).or(it.appointment.at_time.as_ref());
    time.is_some_and(|time| it.appointment.zone.unusual(day, time.time()).is_some())
}

/// With KINSHEAF_CALENDARS set, they are written there for `tests/outside/calendars.py`.
#[test]
fn three_hundred_series_are_written_as_calendars() {
    let all = all();
    let written: Vec<Value> = all.iter().map(|(of, own)| written(of, own)).collect();
    let empty = written.iter().filter(|it| it["ours"].as_array().is_none_or(Vec::is_empty)).count();
    assert_eq!(empty, 0, "each has its first day");
    let unusual = written.iter().filter(|it| it["unusual"] != 0).count();
    assert!(unusual > 8, "only {unusual} fall into a change of the clocks");
    assert!(Instant::parse(written[0]["from"].as_str().expect("text")).is_some());
    if let Some(file) = env::var_os("KINSHEAF_CALENDARS") {
        let seed = String::from_utf8_lossy(SEED);
        let text = json!({"seed": seed, "series": written}).to_string();
        fs::write(Path::new(&file), text).expect("written");
    }
}
