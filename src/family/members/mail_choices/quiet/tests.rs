//! Instants by Python 3.11 zoneinfo over Debian's tzdata; wall times of a gap and of a repeated hour
//! as RFC 5545, section 3.3.5, has them.

use super::*;
use time::macros::datetime;

fn quiet(starts: &str, ends: &str) -> QuietHours {
    let wall = |it: &str| WallTime::parse(it).expect("a time");
    QuietHours { starts: wall(starts), ends: wall(ends), ..QuietHours::usual(1.into()) }
}

fn zone(name: &str) -> Zone {
    Zone::parse(name).expect("a zone")
}

fn at(utc: time::OffsetDateTime) -> Instant {
    Instant::new(utc)
}

#[test]
fn what_falls_in_them_goes_at_their_end_also_in_the_nights_the_clocks_change() {
    let usual = QuietHours::usual(1.into());
    for (name, falls, ends) in [
        // 10 pm in Duluth, the night the clocks spring forward, and the one they fall back.
        ("America/Chicago", datetime!(2026-03-08 04:00 UTC), datetime!(2026-03-08 13:00 UTC)),
        ("America/Chicago", datetime!(2026-11-01 03:00 UTC), datetime!(2026-11-01 14:00 UTC)),
        ("Europe/Budapest", datetime!(2026-03-28 22:30 UTC), datetime!(2026-03-29 06:00 UTC)),
        ("Europe/Budapest", datetime!(2026-10-25 01:30 UTC), datetime!(2026-10-25 07:00 UTC)),
        // Half an hour of daylight saving.
        ("Australia/Lord_Howe", datetime!(2026-04-04 11:00 UTC), datetime!(2026-04-04 21:30 UTC)),
    ] {
        assert_eq!(usual.shifted(at(falls), None, &zone(name)), at(ends), "{name} {falls}");
    }
}

#[test]
fn what_cannot_wait_goes_just_before_they_begin() {
    let (usual, duluth) = (QuietHours::usual(1.into()), zone("America/Chicago"));
    // Two hours before 8:30 am on the day the clocks spring forward: 6:30 am. At eight it would
    // be half an hour away, so it goes at 8:55 pm the evening before.
    let appointment = at(datetime!(2026-03-08 13:30 UTC));
    let two_before = at(datetime!(2026-03-08 11:30 UTC));
    let evening = at(datetime!(2026-03-08 02:55 UTC));
    assert_eq!(usual.shifted(two_before, Some(appointment), &duluth), evening);
    // At nine it is an hour away when they end: it waits.
    let later = at(datetime!(2026-03-08 14:00 UTC));
    assert_eq!(
        usual.shifted(two_before, Some(later), &duluth),
        at(datetime!(2026-03-08 13:00 UTC))
    );
    // In the middle of the night it would be over.
    let night = at(datetime!(2026-11-01 09:00 UTC));
    let before = usual.shifted(night.minus(Duration::hours(2)), Some(night), &duluth);
    assert_eq!(before, at(datetime!(2026-11-01 01:55 UTC)));
}

#[test]
fn outside_them_nothing_is_moved_and_both_ends_are_sharp() {
    let (usual, duluth) = (QuietHours::usual(1.into()), zone("America/Chicago"));
    let shifted = |it| usual.shifted(at(it), None, &duluth);
    let (last, first) = (datetime!(2026-11-26 02:59:59 UTC), datetime!(2026-11-26 14:00 UTC));
    assert_eq!((shifted(last), shifted(first)), (at(last), at(first)));
    assert_eq!(shifted(datetime!(2026-11-26 03:00 UTC)), at(first));
    assert_eq!(shifted(datetime!(2026-11-26 13:59:59 UTC)), at(first));
    let none = quiet("21:00", "21:00");
    assert_eq!(none.shifted(at(last), None, &duluth), at(last));
    assert!(!none.any() && none.says().starts_with("At any hour"));
}

#[test]
fn hours_within_one_day_and_in_a_gap_hold_too() {
    let new_york = zone("America/New_York");
    let noon = quiet("12:00", "14:00");
    let falls = at(datetime!(2026-07-01 16:30 UTC));
    assert_eq!(noon.shifted(falls, None, &new_york), at(datetime!(2026-07-01 18:00 UTC)));
    // They end at 2:30 am, which does not exist on 8 March 2026: it is 3:30.
    let gap = quiet("21:00", "02:30");
    let night = at(datetime!(2026-03-08 06:00 UTC));
    assert_eq!(gap.shifted(night, None, &new_york), at(datetime!(2026-03-08 07:30 UTC)));
    // And at 1:30, which comes twice on 1 November: the first of the two.
    let twice = quiet("21:00", "01:30");
    let night = at(datetime!(2026-11-01 05:00 UTC));
    assert_eq!(twice.shifted(night, None, &new_york), at(datetime!(2026-11-01 05:30 UTC)));
}

#[test]
fn times_are_read_as_people_type_them() {
    for (typed, kept) in [
        ("21:00", "21:00"),
        (" 9 pm", "21:00"),
        ("9:30 PM", "21:30"),
        ("12am", "00:00"),
        ("12 pm", "12:00"),
        ("7:05", "07:05"),
    ] {
        assert_eq!(WallTime::parse(typed).expect(typed).as_str(), kept);
    }
    for typed in ["", "9", "24:00", "13 pm", "0 am", "9:60", "nine", "-1:00", "+9:00", "9:00:00"] {
        assert_eq!(WallTime::parse(typed), None, "{typed}");
    }
    assert_eq!(QuietHours::usual(1.into()).starts.to_string(), "9:00 pm");
}
