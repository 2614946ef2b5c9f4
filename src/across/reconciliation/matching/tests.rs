//! Which row a line and a medicine fall into. Invented lists.

use super::*;
use crate::across::reconciliation::lines::understood;

/// A medicine of the record: "name | strength | form | how taken".
fn ours(told: &str) -> Ours {
    let mut parts = told.split(" | ").map(|it| (it != "-").then(|| it.to_owned()));
    let mut next = || parts.next().flatten();
    let (name, strength, form) = (next().unwrap_or_default(), next(), next());
    Ours { name, strength, form, said: next().into_iter().collect(), on_hold: false }
}

fn laid(theirs: &[&str], record: &[&str], pairs: &Pairs) -> Vec<Row> {
    let theirs: Vec<_> = theirs.iter().map(|it| understood(it)).collect();
    let record: Vec<_> = record.iter().map(|it| ours(it)).collect();
    lay(&theirs, &record, pairs)
}

fn classes(theirs: &[&str], record: &[&str]) -> Vec<Class> {
    laid(theirs, record, &Pairs::default()).into_iter().map(|it| it.class).collect()
}

use Class::{Changed, New, NotMentioned, PossiblyTheSame, Same, Stopped};

const WARFARIN: &str = "Warfarin | 2.5 mg | tablet | 1 tablet, in the evening";

#[test]
fn same_changed_new_stopped_and_not_mentioned() {
    for (line, class) in [
        ("WARFARIN 2.50 mg tabs, take one tablet in the evening", Same),
        ("Warfarin 2.5 mg tablet", Same),
        ("Warfarin 5 mg tablet, 1 tablet in the evening", Changed),
        ("Warfarin 2.5 mg tablet, 2 tablets in the evening", Changed),
        ("Warfarin 2.5 mg capsule, 1 tablet in the evening", Changed),
        ("Warfarin tablet, 1 tablet in the evening", Changed),
        ("STOP Warfarin 2.5 mg tablet", Stopped),
    ] {
        assert_eq!(classes(&[line], &[WARFARIN]), [class], "{line}");
    }
    assert_eq!(classes(&["Apixaban 5 mg tablet"], &[WARFARIN]), [New, NotMentioned]);
    assert_eq!(classes(&[], &[WARFARIN]), [NotMentioned]);
    assert_eq!(classes(&["STOP Apixaban"], &[]), [Stopped]);
}

#[test]
fn a_changed_row_says_which_parts_and_both_values() {
    let rows =
        laid(&["Warfarin 5 mg tablet, 2 tablets in the evening"], &[WARFARIN], &Pairs::default());
    let told: Vec<_> = rows[0].differs.iter().map(|it| (it.what, &*it.ours, &*it.theirs)).collect();
    assert_eq!(
        told,
        [
            ("strength", "2.5 mg", "5 mg"),
            ("how taken", "1 tablet, in the evening", "2 tablets in the evening"),
        ]
    );
}

#[test]
fn another_salt_or_a_longer_name_is_only_proposed() {
    for (theirs, record) in [
        ("Metoprolol tartrate 50 mg tablet", "Metoprolol succinate | 50 mg | tablet | -"),
        ("Metoprolol 50 mg tablet", "Metoprolol succinate | 50 mg | tablet | -"),
        ("Lasix (furosemide) 20 mg tablet", "Furosemide | 20 mg | tablet | -"),
        (
            "Lasix 20 mg tablet, 1 tablet in the morning",
            "Furosemide | 20 mg | tablet | 1 tablet, in the morning",
        ),
    ] {
        let rows = laid(&[theirs], &[record], &Pairs::default());
        assert_eq!((rows.len(), rows[0].class), (1, PossiblyTheSame), "{theirs}");
        assert!(rows[0].note.is_some(), "{theirs}: it does not say why");
    }
    // Equal but for how it is taken, and another name: nothing is proposed.
    let other = "Furosemide | 20 mg | tablet | 2 tablets, in the morning";
    assert_eq!(
        classes(&["Lasix 20 mg tablet, 1 tablet in the morning"], &[other]),
        [New, NotMentioned]
    );
}

#[test]
fn a_confirmed_pair_is_one_ingredient_from_then_on() {
    let pairs = Pairs::of([("Furosemide", "Lasix")]);
    let record = ["Furosemide | 20 mg | tablet | 1 tablet, in the morning"];
    let class = |line: &str| laid(&[line], &record, &pairs)[0].class;
    assert_eq!(class("LASIX 20 mg tablet, 1 tablet in the morning"), Same);
    assert_eq!(class("Lasix 40 mg tablet, 1 tablet in the morning"), Changed);
    assert_eq!(class("STOP Lasix 20 mg"), Stopped);
}

#[test]
fn two_of_one_name_are_not_guessed_apart() {
    let record = ["Warfarin | 2.5 mg | tablet | -", "Warfarin | 5 mg | tablet | -"];
    assert_eq!(classes(&["Warfarin 5 mg tablet", "Warfarin 2.5 mg tablet"], &record), [Same, Same]);
    // One of two: which one it is, is not said.
    assert_eq!(classes(&["Warfarin 7.5 mg tablet"], &record), [PossiblyTheSame, NotMentioned]);
    let both = ["Metoprolol | 50 mg | tablet | -", "Metoprolol | 50 mg | ER tablet | -"];
    assert_eq!(classes(&["Metoprolol 50 mg"], &both)[0], PossiblyTheSame);
    // Twice on the list: the second stands alone, and says so.
    let twice =
        laid(&["Warfarin 5 mg tablet", "Warfarin 5 mg tablet"], &record[1..], &Pairs::default());
    let told: Vec<_> = twice.iter().map(|it| it.class).collect();
    assert_eq!(told, [PossiblyTheSame, New]);
    assert_eq!(twice[1].note.as_deref(), Some("The list names it more than once."));
}

/// How long it takes is measured in a release build: see DEVELOPERS.md, "Speed".
#[test]
fn sixty_against_sixty_are_each_in_one_row() {
    let letter = |at: usize| char::from(b'a' + at as u8);
    let name = |at: usize| {
        let salt = ["acetate", "sodium"][at % 2];
        format!("Quillamine{}{} {salt}", letter(at / 10), letter(at % 10))
    };
    let theirs: Vec<_> =
        (0..60).map(|at| format!("{} {} mg tablet, once daily", name(at + 20), at + 1)).collect();
    let theirs: Vec<_> = theirs.iter().map(String::as_str).collect();
    let record: Vec<_> =
        (0..60).map(|at| format!("{} | 5 mg | tablet | once daily", name(at))).collect();
    let record: Vec<_> = record.iter().map(String::as_str).collect();
    let rows = laid(&theirs, &record, &Pairs::default());
    let count = |class| rows.iter().filter(|it| it.class == class).count();
    assert_eq!((count(Changed), count(Same)), (39, 1), "named 20 to 59, of which one has 5 mg");
    assert_eq!((count(New), count(NotMentioned)), (20, 20));
    let lines: Vec<_> = rows.iter().filter_map(|it| it.line).collect();
    assert_eq!(lines, (0..60).collect::<Vec<_>>());
}
