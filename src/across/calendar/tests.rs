//! What stands in a calendar, line by line: IETF RFC 5545 (2009) and RFC 7986 (2016).

use super::{
    event::{Event, Starts},
    gather::{self, About, Detail},
    random::written_calendar,
    vtimezone,
};
use crate::{
    base::{clock::Instant, text::Line, time_of_day::TimeOfDay, zone::Zone},
    record::appointments::{
        escort::Escort,
        model::{Appointment, Entry, Status, VisitKind},
        occurrence::Occurrence,
        repeat::{Ends, Every, Repeat},
    },
};
use std::collections::BTreeMap;
use time::{
    Date, Weekday,
    macros::{date, time},
};

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn booked(ends: Option<Ends>) -> Appointment {
    let at = Some(TimeOfDay::of(time!(14:00)));
    let repeat = ends.map(|ends| Repeat { every: Every::Weeks(1, vec![Weekday::Tuesday]), ends });
    let entry = Entry {
        repeat,
        with_whom: Some(line("Dr Quill")),
        place: Some(line("Canal Park, 2nd floor; ring twice")),
        escort: Escort::Member(2.into()),
        ..Entry::new(line("Eye test"), VisitKind::Test, date!(2026 - 12 - 01), at)
    };
    let zone = Zone::parse("America/Chicago").expect("a zone");
    Appointment { id: 7.into(), version: 3, ..Appointment::new(1.into(), entry, zone) }
}

fn events(of: &Appointment, own: &[Occurrence], detail: Detail, died: Option<Date>) -> Vec<Event> {
    let changed = BTreeMap::from([(("appointment", 7), Instant::from_unix(86_400))]);
    let about = About {
        house: "https://kinsheaf.example.org",
        person: 1,
        called: "Ottoline",
        member: 2.into(),
        detail,
        died,
        changed: &changed,
        with: &|it| it.with_whom.as_ref().map(ToString::to_string),
    };
    gather::events(&about, std::slice::from_ref(of), own)
}

#[test]
fn it_tells_no_more_than_the_setting_allows() {
    let text = |detail| format!("{:?}", events(&booked(None), &[], detail, None));
    let nothing = text(Detail::of(false));
    assert!(nothing.contains("Appointment (Ottoline)") && nothing.contains("You go along."));
    for secret in ["Eye", "Quill", "Canal"] {
        assert!(!nothing.contains(secret), "{secret}");
        assert!(text(Detail::of(true)).contains(secret), "{secret}");
    }
}

#[test]
fn what_does_not_repeat_is_a_moment_and_stays_itself() {
    let [event] = &events(&booked(None), &[], Detail::Names, None)[..] else { panic!("one") };
    assert_eq!(event.starts, Starts::At(Instant::parse("2026-12-01T20:00:00Z").expect("a moment")));
    assert_eq!((event.sequence, event.stamp), (2, Instant::from_unix(86_400)));
    let later = Appointment {
        version: 4,
        ..booked(None).moved(date!(2026 - 12 - 02), TimeOfDay::of(time!(9:00)))
    };
    let [moved] = &events(&later, &[], Detail::Names, None)[..] else { panic!("one") };
    assert_eq!((moved.uid.as_str(), moved.sequence), (event.uid.as_str(), 3));
}

#[test]
fn a_series_has_its_zone_its_rule_and_those_that_differ() {
    let of = booked(Some(Ends::On(date!(2027 - 03 - 30))));
    let moved = Occurrence { version: 1, ..Occurrence::new(&of, date!(2026 - 12 - 08)) }
        .moved(date!(2026 - 12 - 10), TimeOfDay::of(time!(9:30)));
    let off = Occurrence { version: 2, ..Occurrence::new(&of, date!(2026 - 12 - 15)) }
        .turned(Status::Cancelled, Some(line("away")));
    let lost = Occurrence { version: 1, ..Occurrence::new(&of, date!(2026 - 12 - 16)) }
        .moved(date!(2026 - 12 - 17), TimeOfDay::of(time!(8:00)));
    let text = written_calendar(std::slice::from_ref(&of), &[moved, off, lost]);
    let unfolded = text.replace("\r\n ", "");
    let has = |line: &str| unfolded.split("\r\n").filter(|it| *it == line).count();
    // UNTIL in UTC where DTSTART names a zone: RFC 5545, 3.3.10. 23:59:59 in Chicago in summer.
    assert_eq!(
        has("RRULE:FREQ=WEEKLY;INTERVAL=1;BYDAY=TU;UNTIL=20270331T045959Z"),
        1,
        "{unfolded}"
    );
    assert_eq!(has("DTSTART;TZID=America/Chicago:20261201T140000"), 1);
    assert_eq!(has("RECURRENCE-ID;TZID=America/Chicago:20261208T140000"), 1);
    assert_eq!(has("DTSTART;TZID=America/Chicago:20261210T093000"), 1);
    assert_eq!(has("RECURRENCE-ID;TZID=America/Chicago:20261215T140000"), 1);
    assert_eq!(has("STATUS:CANCELLED"), 1);
    // The series never had the 16th: it stands for itself, as a moment.
    assert_eq!(has("DTSTART:20261217T140000Z"), 1);
    assert_eq!((has("BEGIN:VTIMEZONE"), has("TZID:America/Chicago")), (1, 1));
    assert_eq!(has("LOCATION:Canal Park\\, 2nd floor\\; ring twice"), 4);
    assert!(text.split("\r\n").all(|it| it.len() <= 75), "no line is too long");
    assert!(!text.replace("\r\n", "").contains(['\r', '\n']), "each line ends in CRLF");
    let uids: Vec<_> = unfolded.split("\r\n").filter(|it| it.starts_with("UID:")).collect();
    assert_eq!(
        (uids[0], uids[0]),
        (uids[1], uids[2]),
        "those that differ have the UID of the series"
    );
    assert_ne!(uids[0], uids[3]);
}

#[test]
fn after_a_death_nothing_is_to_come() {
    let died = Some(date!(2026 - 12 - 09));
    let of = booked(Some(Ends::Never));
    let kept = Occurrence { version: 1, ..Occurrence::new(&of, date!(2026 - 12 - 15)) }
        .escorted(Escort::Alone);
    let [event] = &events(&of, &[kept], Detail::Nothing, died)[..] else {
        panic!("the series alone")
    };
    assert!(
        event.rule.as_ref().is_some_and(|it| it.contains("UNTIL=20261209T055959Z")),
        "{event:?}"
    );
    assert!(events(&of, &[], Detail::Nothing, Some(date!(2026 - 11 - 30))).is_empty());
    assert!(events(&booked(None), &[], Detail::Nothing, Some(date!(2026 - 11 - 30))).is_empty());
}

#[test]
fn one_without_a_time_is_a_day() {
    let of = Appointment { at_time: None, status: Status::Requested, ..booked(None) };
    let text = written_calendar(std::slice::from_ref(&of), &[]);
    assert!(text.contains("DTSTART;VALUE=DATE:20261201\r\n") && text.contains("STATUS:TENTATIVE"));
    assert!(!text.contains("DURATION:PT60M"));
}

/// Python zoneinfo: 2026-03-08 02:00 to CDT (-0500), 2026-11-01 02:00 to CST (-0600).
#[test]
fn a_zone_carries_each_change_of_its_clocks() {
    let chicago = Zone::parse("America/Chicago").expect("a zone");
    let lines = vtimezone::lines(&chicago, date!(2026 - 12 - 01), 2026);
    for line in [
        "TZID:America/Chicago",
        "RDATE:20260308T020000",
        "RDATE:20261101T020000",
        "TZOFFSETFROM:-0600",
        "TZOFFSETTO:-0500",
        "TZNAME:CDT",
    ] {
        assert!(lines.iter().any(|it| it == line), "{line}: {lines:#?}");
    }
    let kolkata = Zone::parse("Asia/Kolkata").expect("a zone");
    assert!(
        vtimezone::lines(&kolkata, date!(2026 - 12 - 01), 2026)
            .contains(&"TZOFFSETTO:+0530".to_owned())
    );
}
