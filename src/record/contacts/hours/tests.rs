//! Hours as people type them, read and said again.

use super::*;
use proptest::prelude::*;
use time::macros::date;

fn said(typed: &str) -> String {
    Hours::parse(typed).unwrap_or_else(|e| panic!("{typed}: {e}")).to_string()
}

#[test]
fn what_people_type_is_read_and_said_in_one_way() {
    for (typed, words) in [
        ("Mon-Fri 8:30-17:00; Sat 9-12", "Mon–Fri 8:30 am–5 pm; Sat 9 am–noon"),
        ("Mon–Fri 8:30 am–5 pm, Sat 9–noon", "Mon–Fri 8:30 am–5 pm; Sat 9 am–noon"),
        ("M-F 9-5", "Mon–Fri 9 am–5 pm"),
        ("weekdays from 9 to 5", "Mon–Fri 9 am–5 pm"),
        ("Weekdays 9 a.m. until 5 p.m.", "Mon–Fri 9 am–5 pm"),
        ("Mondays and Thursdays 9-12, 1-5", "Mon, Thu 9 am–noon and 1 pm–5 pm"),
        ("Mon, Wed, Fri 9-1", "Mon, Wed, Fri 9 am–1 pm"),
        ("Mon/Wed/Fri: 9h-13h", "Mon, Wed, Fri 9 am–1 pm"),
        ("Tu-Th 9.30-17.00", "Tue–Thu 9:30 am–5 pm"),
        ("Fri 22-2", "Fri 10 pm–2 am"),
        ("Fri 10pm-2am", "Fri 10 pm–2 am"),
        ("Fri to Mon 8-20", "Mon, Fri–Sun 8 am–8 pm"),
        ("weekend 10-16", "Sat, Sun 10 am–4 pm"),
        ("9-17", "every day 9 am–5 pm"),
        ("daily 0830-1700", "every day 8:30 am–5 pm"),
        ("Mon-Fri 9-5; Sun closed", "Mon–Fri 9 am–5 pm"),
        ("24 hours", "any time"),
        ("24/7", "any time"),
        ("any time", "any time"),
        ("Any hour", "any time"),
        ("daily 0-24", "any time"),
        ("Sat all day", "Sat all day"),
        ("Sat midnight-midnight", "Sat all day"),
        ("Mon noon to midnight", "Mon noon–midnight"),
        ("Mon 9-5pm", "Mon 9 am–5 pm"),
        ("Mon 1-5pm", "Mon 1 pm–5 pm"),
        ("Mon 8-11am", "Mon 8 am–11 am"),
        ("Mon 10-2am", "Mon 10 pm–2 am"),
        ("Mon 05:00-9:00", "Mon 5 am–9 am"),
        ("Mon 12-17", "Mon noon–5 pm"),
        ("Mon 9am-9am", "Mon 9 am–9 am"),
        ("Mon 9-12\nTue 9-12", "Mon, Tue 9 am–noon"),
        ("Ｍｏｎ　９－１７", "Mon 9 am–5 pm"),
        ("Mon 9-12 and 11-15", "Mon 9 am–3 pm"),
    ] {
        assert_eq!(said(typed), words, "{typed}");
        assert_eq!(said(words), words, "read again");
    }
}

#[test]
fn what_cannot_be_read_is_named() {
    for (typed, says) in [
        ("Mon-Fri 9-5 except holidays", "“except” could not be read."),
        ("T 9-5", "“t” could not be read."),
        ("Mon 25-26", "“25” could not be read."),
        ("Mon 9:75-10", "“9:75” could not be read."),
        ("Mon 9", "A time has no end."),
        ("Mon-Fri until 5", "It is not clear from when until when."),
        ("Mon-Fri", "A day has no hours."),
        ("Mon 9-5, Tue", "A day has no hours."),
        ("Mon closed", "There are no hours in this."),
        ("pm", "“pm” could not be read."),
        ("Mon 24-26", "“26” could not be read."),
        ("Mon 24-6", "A day begins at 0:00 or at midnight."),
        ("<b>", "“<” could not be read."),
        ("", "There are no hours in this."),
    ] {
        let told = Hours::parse(typed).expect_err(typed);
        assert!(told.starts_with(says), "{typed}: {told}");
        assert!(told.contains("Mon-Fri 8:30-17:00; Sat 9-12"), "{told}");
    }
}

#[test]
fn another_places_clocks_show_the_same_hours_moved() {
    let zone = |name: &str| Zone::parse(name).expect("a zone");
    let (portland, duluth) = (zone("America/Los_Angeles"), zone("America/Chicago"));
    let week = Hours::parse("Mon-Fri 8-17; Sun 22-2").expect("hours").week();
    let shown = |own, there, on| week.shown_in(own, there, on).words();
    let november = date!(2026 - 11 - 25);
    assert_eq!(
        shown(&portland, &duluth, november),
        "Mon midnight–4 am and 10 am–7 pm; Tue–Fri 10 am–7 pm"
    );
    // Clocks in Phoenix stay; those in Duluth go back on Sunday 1 November 2026 (2 am becomes 1 am).
    let phoenix = zone("America/Phoenix");
    let before = shown(&phoenix, &duluth, date!(2026 - 10 - 28));
    assert_eq!(before, "Mon, Tue 9 am–6 pm; Wed–Fri 10 am–7 pm; Sun 11 pm–3 am");
}

fn any_span() -> impl Strategy<Value = Span> {
    (0..7u8, 0..DAY, 1..=DAY).prop_map(|(day, from, long)| Span { day, from, to: from + long })
}

proptest! {
    #[test]
    fn words_read_back_as_the_same_week(spans in prop::collection::vec(any_span(), 1..9)) {
        let week = Week::of(spans);
        prop_assert_eq!(Hours::parse(&week.words()).map(|it| it.week()), Ok(week));
    }

    #[test]
    fn no_text_is_too_odd_to_read_or_refuse(typed in "[MmTtWwFf0-9:;,. apmondy–-]{0,40}") {
        if let Ok(hours) = Hours::parse(&typed) {
            prop_assert_eq!(Hours::parse(&hours.to_string()), Ok(hours));
        }
    }
}
