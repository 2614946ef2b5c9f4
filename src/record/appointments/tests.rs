//! The times of appointments: over changes of the clocks, with what differs, after the series changed.

use super::{
    escort::Escort,
    meeting::Meeting,
    model::{Appointment, Entry, Status, VisitKind},
    occurrence::Occurrence,
    repeat::{Ends, Every, OfMonth, Repeat},
};
use crate::base::{clock::Instant, text::Line, time_of_day::TimeOfDay, zone::Zone};
use time::{
    Date, Time, Weekday,
    macros::{date, datetime, time},
};

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn zone(name: &str) -> Zone {
    Zone::parse(name).expect("a zone")
}

fn booked(on: Date, at: Time, every: Option<Every>) -> Appointment {
    let entry =
        Entry::new(line("Physical therapy"), VisitKind::Therapy, on, Some(TimeOfDay::of(at)));
    let repeat = every.map(|every| Repeat { every, ends: Ends::Never });
    let entry = Entry { repeat, ..entry }.sound().expect("fields that fit together");
    let new = Appointment::new(1.into(), entry, zone("America/New_York"));
    Appointment { id: 7.into(), ..new }
}

const ALWAYS: (i64, i64) = (0, 7_000_000_000);

fn between(of: &Appointment, own: &[Occurrence], (from, to): (i64, i64)) -> Vec<Meeting> {
    let span = (Instant::from_unix(from), Instant::from_unix(to));
    Meeting::all(std::slice::from_ref(of), own, span)
}

fn march(of: &Appointment, own: &[Occurrence]) -> Vec<String> {
    let at = |it: time::OffsetDateTime| it.unix_timestamp();
    let span = (at(datetime!(2026-03-01 00:00 UTC)), at(datetime!(2026-04-01 00:00 UTC)));
    let told = |it: &Meeting| format!("{} {}", it.starts, it.status);
    between(of, own, span).iter().map(told).collect()
}

/// Python zoneinfo: 2026-03-07 08:00 in New York is 13:00Z, 03-08 08:00 is 12:00Z; 10-31 is 12:00Z, 11-01 is 13:00Z.
#[test]
fn a_series_stays_at_its_hour_when_the_clocks_change() {
    for (first, expected) in [
        (date!(2026 - 03 - 07), ["2026-03-07T13:00:00Z", "2026-03-08T12:00:00Z"]),
        (date!(2026 - 10 - 31), ["2026-10-31T12:00:00Z", "2026-11-01T13:00:00Z"]),
    ] {
        let daily = booked(first, time!(8:00), Some(Every::Days(1)));
        let all = between(&daily, &[], (0, 1_800_000_000));
        let told: Vec<_> = all.iter().take(2).map(|it| it.starts.to_string()).collect();
        assert_eq!(told, expected);
    }
}

/// IETF RFC 5545 (2009), 3.3.5: a time that does not exist is read with the offset before the gap; one that comes twice is the
/// first. Python zoneinfo: 2026-03-08 02:30 in New York is 07:30Z, 2026-11-01 01:30 is first 05:30Z.
#[test]
fn a_time_in_the_gap_and_one_that_comes_twice() {
    for (day, at, expected) in [
        (date!(2026 - 03 - 08), time!(2:30), "2026-03-08T07:30:00Z"),
        (date!(2026 - 11 - 01), time!(1:30), "2026-11-01T05:30:00Z"),
    ] {
        let once = booked(day, at, None);
        assert_eq!(Meeting::of(&once, day, None).starts.to_string(), expected);
        // The same hour of a series is its own on the other days.
        let weekly = booked(day - time::Duration::weeks(1), at, Some(Every::Days(7)));
        assert_eq!(Meeting::of(&weekly, day, None).starts.to_string(), expected);
    }
}

#[test]
fn one_of_a_series_is_moved_cancelled_or_kept_and_the_others_stay() {
    let weekly =
        booked(date!(2026 - 03 - 03), time!(14:00), Some(Every::Weeks(1, vec![Weekday::Tuesday])));
    let of = |day| Occurrence::new(&weekly, day);
    let own = [
        of(date!(2026 - 03 - 10)).moved(date!(2026 - 03 - 12), TimeOfDay::of(time!(9:30))),
        of(date!(2026 - 03 - 17)).turned(Status::Cancelled, Some(line("the therapist is away"))),
        of(date!(2026 - 03 - 24)).escorted(Escort::Alone).turned(Status::Kept, None),
    ];
    assert_eq!(
        march(&weekly, &own),
        [
            "2026-03-03T19:00:00Z booked",
            "2026-03-12T13:30:00Z booked",
            "2026-03-17T18:00:00Z cancelled",
            "2026-03-24T18:00:00Z kept",
            "2026-03-31T18:00:00Z booked",
        ]
    );
    let all = between(&weekly, &own, ALWAYS);
    assert_eq!(all[1].on, date!(2026 - 03 - 10), "others name it by the day it would have been on");
    assert_eq!((all[3].escort, all[4].escort), (Escort::Alone, Escort::Nobody));
    // Cancelled as a whole: what was kept stays kept.
    let cancelled = weekly.turned(Status::Cancelled, Some(line("she has moved")));
    let told = march(&cancelled, &own);
    assert!(told[3].ends_with("kept") && told[4].ends_with("cancelled"), "{told:?}");
}

#[test]
fn one_is_moved_out_of_a_month_and_another_into_it() {
    let monthly =
        booked(date!(2026 - 01 - 31), time!(9:00), Some(Every::Months(1, OfMonth::LastDay)));
    let moved = |day, to| Occurrence::new(&monthly, day).moved(to, TimeOfDay::of(time!(9:00)));
    let own = [
        moved(date!(2026 - 02 - 28), date!(2026 - 03 - 02)),
        moved(date!(2026 - 03 - 31), date!(2026 - 04 - 02)),
    ];
    assert_eq!(march(&monthly, &own), ["2026-03-02T14:00:00Z booked"]);
}

#[test]
fn what_was_moved_stays_visible_when_the_series_then_moves() {
    let weekly =
        booked(date!(2026 - 03 - 03), time!(14:00), Some(Every::Weeks(1, vec![Weekday::Tuesday])));
    let moved = Occurrence::new(&weekly, date!(2026 - 03 - 10))
        .moved(date!(2026 - 03 - 12), TimeOfDay::of(time!(9:30)));
    let kept = Occurrence::new(&weekly, date!(2026 - 03 - 03)).became(Status::Kept, &weekly);
    let thursdays = Every::Weeks(1, vec![Weekday::Thursday]);
    let series = Appointment {
        id: 7.into(),
        ..booked(date!(2026 - 03 - 05), time!(15:00), Some(thursdays))
    };
    let all = between(&series, &[kept.clone(), moved.clone()], (0, 1_775_000_000));
    let told = |it: &Meeting| (it.starts.to_string(), it.orphan);
    let told: Vec<_> = all.iter().map(told).collect();
    assert!(told.contains(&("2026-03-12T13:30:00Z".into(), true)), "{told:?}");
    assert!(
        told.iter().any(|(at, orphan)| at.starts_with("2026-03-03") && !orphan),
        "what is over asks nobody: {told:?}"
    );
    // Said to be booked after all, it follows the series again.
    assert_eq!(kept.became(Status::Booked, &weekly).moved_on, None);
    // Kept by itself, it asks nobody any more; let go, it is not there.
    let apart = between(&series, &[moved.kept_apart()], ALWAYS);
    assert!(apart.iter().any(|it| it.on == date!(2026 - 03 - 10) && !it.orphan));
    let gone = between(&series, &[moved.struck()], ALWAYS);
    assert!(gone.iter().all(|it| it.on != date!(2026 - 03 - 10)));
}

#[test]
fn this_and_all_later_ones_part_the_series() {
    let weekly =
        booked(date!(2026 - 03 - 03), time!(14:00), Some(Every::Weeks(1, vec![Weekday::Tuesday])));
    let before = weekly.ended_before(date!(2026 - 03 - 17)).expect("two are left");
    assert_eq!(march(&before, &[]).len(), 2);
    let entry = Entry::new(
        line("Physical therapy"),
        VisitKind::Therapy,
        date!(2026 - 03 - 18),
        Some(TimeOfDay::of(time!(10:00))),
    );
    let after = weekly.followed_by(entry, zone("America/New_York"));
    assert_eq!(after.follows_id, Some(weekly.id));
    assert_eq!(weekly.ended_before(date!(2026 - 03 - 03)), None, "nothing is left of it");
}

#[test]
fn what_was_booked_keeps_its_moment_when_the_person_moves() {
    let once = booked(date!(2026 - 03 - 17), time!(9:00), None);
    let starts = Meeting::of(&once, once.on_day, None).starts;
    assert_eq!(starts.to_string(), "2026-03-17T13:00:00Z");
    // The zone is the appointment's own; the person's is not asked.
    assert_eq!(zone("America/Los_Angeles").clock_words(starts), "6:00 am");
}

#[test]
fn two_overlap_when_both_take_place() {
    let at =
        |time| Meeting::of(&booked(date!(2026 - 03 - 17), time, None), date!(2026 - 03 - 17), None);
    assert!(at(time!(9:00)).overlaps(&at(time!(9:30))));
    assert!(!at(time!(9:00)).overlaps(&at(time!(10:00))), "one ends as the other begins");
    let cancelled = Meeting { status: Status::Cancelled, ..at(time!(9:30)) };
    assert!(!at(time!(9:00)).overlaps(&cancelled));
}

#[test]
fn the_fields_fit_together() {
    let at = Some(TimeOfDay::of(time!(9:00)));
    let entry = |at| Entry::new(line("Eye test"), VisitKind::Test, date!(2026 - 03 - 03), at);
    assert!(entry(None).sound().is_err(), "a booked one has a time");
    assert!(Entry { status: Status::Requested, ..entry(None) }.sound().is_ok());
    let every =
        |every, ends| Entry { repeat: Some(Repeat { every, ends }), ..entry(at.clone()) }.sound();
    // 3 March 2026 is a Tuesday.
    assert!(every(Every::Weeks(1, vec![Weekday::Wednesday]), Ends::Never).is_err());
    assert!(every(Every::Months(1, OfMonth::LastDay), Ends::Never).is_err());
    assert!(every(Every::Days(3), Ends::On(date!(2026 - 03 - 02))).is_err());
    assert!(every(Every::Days(3), Ends::On(date!(2026 - 03 - 03))).is_ok());
}
