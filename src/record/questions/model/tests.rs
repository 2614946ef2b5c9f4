//! The rules of questions: who has to do something, what is taken back, for whom they are, in which
//! order they stand.

use super::*;
use time::macros::date;

const TODAY: Date = date!(2026 - 11 - 25);

fn question() -> Question {
    let words = Note::from("Is it taken with food?".to_owned());
    let about = Some(("medicine".to_owned(), 7));
    let wording = Wording { words, for_whom: Whom::Pharmacist, clinician: None, about };
    Question::new(1.into(), wording, (2.into(), Instant::from_unix(0)))
}

fn answer(on: Date) -> Answer {
    let by = Line::from("the pharmacist".to_owned());
    Answer { answer: Note::from("As the label says.".to_owned()), by, on }
}

#[test]
fn it_needs_someone_until_one_will_ask() {
    assert!(question().needs_someone());
    assert!(!question().owned(Some(2.into())).needs_someone());
    let asked = question().asked(TODAY, TODAY).expect("asked");
    assert!(asked.waits() && !asked.needs_someone(), "what was asked waits for its answer");
    assert!(!question().let_go(Line::from("the label says it".to_owned())).waits());
}

#[test]
fn an_answer_is_of_a_day_that_has_come_and_can_be_taken_back() {
    let tomorrow = date!(2026 - 11 - 26);
    assert!(question().answered(answer(tomorrow), TODAY).is_err());
    assert!(question().asked(tomorrow, TODAY).is_err());
    let owned = question().owned(Some(3.into()));
    let answered = owned.answered(answer(TODAY), TODAY).expect("answered");
    assert!(!answered.waits());
    assert_eq!(answered.brought_back(), owned);
}

#[test]
fn two_change_places_and_a_new_one_comes_last() {
    let of = |id: i64| Question { id: id.into(), ..question() };
    let (one, two) = (of(3).moved_to(&of(8)), of(8).moved_to(&of(3)));
    assert_eq!((one.place(), two.place(), of(9).place()), (8, 3, 9));
    assert_eq!(one.moved_to(&two).place(), 3);
}

#[test]
fn it_is_for_someone_by_name_or_by_trade() {
    assert_eq!(question().whom(), "the pharmacist");
    let clinician = Some(Line::from("Dr Oyelaran".to_owned()));
    let named = Question { for_whom: Whom::Clinician, clinician, ..question() };
    assert_eq!(named.whom(), "Dr Oyelaran");
    assert_eq!(named.about(), Some(("medicine", 7)));
    let of = question().for_contact(4.into(), Line::from("Dr Lind".to_owned()));
    assert_eq!(
        (of.whom(), of.for_whom, of.contact_id),
        ("Dr Lind", Whom::Clinician, Some(4.into()))
    );
    let words = Note::from("Without it?".to_owned());
    let wording = Wording { words, for_whom: Whom::Pharmacist, clinician: None, about: None };
    assert_eq!(of.reworded(wording).contact_id, None);
}
