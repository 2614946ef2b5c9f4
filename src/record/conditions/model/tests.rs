//! The rules of a condition.

use super::*;
use time::macros::date;

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn entry(name: &str) -> Entry {
    Entry {
        name: line(name),
        since: None,
        followed_by: None,
        note: None,
        source: None,
        who_may_know: None,
        wants_told: WantsTold::NotAsked,
        told_on: None,
        told_by: None,
    }
}

fn osteoporosis() -> Condition {
    Condition::new(PersonId::from(1), entry("Osteoporosis"))
}

const TODAY: Date = date!(2026 - 11 - 25);

#[test]
fn an_edit_takes_the_check_off_and_the_same_again_leaves_it() {
    let (at, by) = (Instant::from_unix(0), MemberId::from(1));
    let kept = osteoporosis().checked(Check { at, by, against: line("the clinic's letter") });
    assert_eq!(kept.edited(entry("Osteoporosis")), kept);
    let wish = Entry { wants_told: WantsTold::Outline, ..entry("Osteoporosis") };
    assert_eq!(kept.edited(wish).check(), None);
}

#[test]
fn what_is_over_is_not_standing_and_only_over_from_a_day_that_has_come() {
    let said_by = || line("Dr Oyelaran");
    let over = osteoporosis().over(TODAY, said_by(), TODAY).unwrap();
    assert!(!over.is_standing());
    assert_eq!(over.brought_back(), osteoporosis());
    assert!(osteoporosis().over(date!(2026 - 11 - 26), said_by(), TODAY).is_err());
}

#[test]
fn what_was_struck_comes_back_as_it_was_over_or_not() {
    let over = osteoporosis().over(TODAY, line("Dr Oyelaran"), TODAY).unwrap();
    assert_eq!(over.struck(line("it is her sister's")).brought_back(), over);
    assert_eq!(osteoporosis().struck(line("it is her sister's")).brought_back(), osteoporosis());
}

#[test]
fn nobody_is_told_on_a_day_to_come() {
    let told = |on| Entry { told_on: Some(on), ..entry("Osteoporosis") }.sound(TODAY);
    assert!(told(TODAY).is_ok());
    assert!(told(date!(2026 - 11 - 26)).is_err());
}

#[test]
fn when_and_by_whom_she_was_told_is_said_as_far_as_it_is_known() {
    let told = |on, by: &str| {
        let told_by = (!by.is_empty()).then(|| line(by));
        Condition { told_on: on, told_by, ..osteoporosis() }.told()
    };
    let day = Some(date!(2026 - 03 - 03));
    assert_eq!(told(day, "Dr Oyelaran").as_deref(), Some("3 March 2026 by Dr Oyelaran"));
    assert_eq!(told(day, "").as_deref(), Some("3 March 2026"));
    assert_eq!(told(None, "Emeric").as_deref(), Some("by Emeric"));
    assert_eq!(told(None, ""), None);
}
