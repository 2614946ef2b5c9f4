//! Dates as they stand on letters, forms and labels.

use super::*;
use proptest::prelude::*;
use time::macros::date;

const TODAY: Date = date!(2026 - 11 - 25);

fn days(text: &str) -> Vec<Meant> {
    all(text).into_iter().map(|it| it.meant).collect()
}

fn own_of(text: &str) -> Option<(Meant, String)> {
    own(text, None, TODAY).map(|it| (it.meant, it.why))
}

#[test]
fn a_date_is_read_in_each_way_it_is_written() {
    let day = Meant::Day(date!(2026 - 03 - 14));
    for written in [
        "March 14, 2026",
        "Duluth, 14 March 2026.",
        "on the 14th March 2026 we",
        "Mar. 14, 2026",
        "Mar 14 2026",
        "14-Mar-2026",
        "2026-03-14",
        "3/14/2026",
        "14/3/2026",
        "14.3.2026",
        "03-14-2026",
        "(3/14/26)",
        "Saturday, March 14, 2026",
        "Date:3/14/2026",
    ] {
        assert_eq!(days(written), [day], "{written}");
    }
}

/// ISO 8601 orders year, month, day; the United States write month, day, year; most others day, month,
/// year (Unicode CLDR, date formats of en-US and en-GB; from memory).
#[test]
fn of_two_numbers_that_can_both_be_a_month_neither_is_taken() {
    let either = Meant::Either(date!(2026 - 03 - 04), date!(2026 - 04 - 03));
    assert_eq!(days("3/4/2026"), [either]);
    assert_eq!(days("03.04.2026"), [either]);
    assert_eq!(days("5/5/2026"), [Meant::Day(date!(2026 - 05 - 05))]);
    assert_eq!(days("4/31/2026"), []);
    let (meant, why) = own_of("Date: 3/4/2026").expect("found");
    assert_eq!((meant, why.as_str()), (either, "it stands behind “Date”"));
    // Read the other way it has not come yet, and a letter that lies here has.
    let (meant, why) = own_of("Date: 2/12/2026").expect("found");
    assert_eq!(meant, Meant::Day(date!(2026 - 02 - 12)));
    assert_eq!(why, "it stands behind “Date”, and read the other way it is still to come");
}

#[test]
fn what_is_no_date_is_none() {
    for text in [
        "Call 218-555-0101 or 555-0102",
        "Invoice 2026-0314, page 3/4",
        "IP 10.3.14.2026",
        "May 2026",
        "Part 3-14-2026-7",
        "50 mg 1 tablet 2 times",
        "9 Mar",
        "1/2/3",
    ] {
        assert_eq!(days(text), [], "{text}");
    }
}

#[test]
fn the_papers_own_is_told_by_what_stands_before_it() {
    let letter = "Lakeshore Hospital\nDate of birth: 9 March 1944   Statement date: October 2, 2026\n\
        Your visit on September 14, 2026. Amount due by November 1, 2026";
    let dated = own(letter, None, TODAY).expect("found");
    assert_eq!(dated.meant, Meant::Day(date!(2026 - 10 - 02)));
    assert_eq!((dated.why.as_str(), dated.others), ("it stands behind “Statement date”", 3));
    let alone = "Lind & Sons\nOctober 2, 2026\n\nWe saw you on September 14, 2026";
    assert_eq!(
        own_of(alone),
        Some((Meant::Day(date!(2026 - 10 - 02)), "it stands alone on its line".into()))
    );
    let plain =
        "Born 9 March 1944. Seen again 14 September 2026 in the clinic, next visit 3 December 2026";
    assert_eq!(own_of(plain).expect("found").0, Meant::Day(date!(2026 - 09 - 14)));
    let born = Some(date!(1944 - 03 - 09));
    assert!(
        own("9 March 1944", None, TODAY).is_some() && own("9 March 1944", born, TODAY).is_none()
    );
    for none in ["DOB 9 March 1944", "Expires 31 January 2025", "Next: December 3, 2026", ""] {
        assert_eq!(own_of(none), None, "{none}");
    }
}

proptest! {
    #[test]
    fn nothing_read_can_upset_it(text in "\\PC{0,80}") {
        let _ = own(&text, None, TODAY);
    }

    #[test]
    fn strange_mixtures_of_numbers_neither(text in "[0-9/ .:,-]{0,40}") {
        for it in all(&text) {
            prop_assert!(text.contains(&it.written));
        }
    }
}
