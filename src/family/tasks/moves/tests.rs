//! A task from hand to hand, to its end, and to its next time.

use super::super::repeats::{Repeats, Unit};
use super::*;
use time::macros::date;

const TODAY: Date = date!(2026 - 11 - 25);
const FRIDAY: Date = date!(2026 - 11 - 27);

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn at() -> (MemberId, Instant) {
    (1.into(), Instant::from_unix(0))
}

fn task() -> Task {
    Task::new(1.into(), Wording::of(line("Renew the parking placard")), at())
}

fn due(on: Date, firm: bool, repeats: Option<Repeats>) -> Task {
    task().reworded(Wording { due: Some(Due { on, firm, repeats }), ..Wording::of(line("Fetch")) })
}

fn finish(on: Date) -> Finish {
    Finish { on, proof: None, photo: None }
}

fn is_stale(result: Result<Task>) -> bool {
    matches!(result, Err(Error::Stale))
}

#[test]
fn the_second_to_take_it_is_too_late() {
    let taken = task().taken(2.into(), false).expect("free");
    assert!(taken.is_owned_by(2.into()) && taken.state == State::Taken);
    assert!(is_stale(taken.taken(3.into(), false)));
    // Who had it has left: it is free again.
    assert!(taken.taken(3.into(), true).expect("free").is_owned_by(3.into()));
    assert!(is_stale(
        taken.done(finish(TODAY), 2.into(), TODAY).expect("done").taken(3.into(), true)
    ));
}

#[test]
fn it_stays_with_the_giver_until_the_other_says_yes() {
    let taken = task().taken(2.into(), false).expect("free");
    let offered = taken.offered(3.into(), 2.into()).expect("offered");
    assert!(offered.is_owned_by(2.into()) && offered.is_offered_to(3.into()));
    assert!(is_stale(offered.accepted(4.into())), "only who was asked says yes");
    let hers = offered.accepted(3.into()).expect("hers");
    assert!(hers.is_owned_by(3.into()) && hers.offered_by.is_none());
    let no = offered.declined(3.into(), line("away that week")).expect("no");
    assert!(no.is_owned_by(2.into()) && no.offered_to.is_none());
    assert_eq!(
        (no.declined_by, no.declined_why.clone()),
        (Some(3.into()), Some(line("away that week")))
    );
    assert!(no.offered(4.into(), 2.into()).expect("again").declined_why.is_none());
    assert!(is_stale(no.accepted(3.into())), "a no stands until it is offered again");
    assert!(taken.offered(2.into(), 2.into()).is_err());
    assert_eq!(offered.withdrawn().expect("taken back"), taken);
}

#[test]
fn what_it_waits_on_goes_with_it_and_a_passed_day_is_refused() {
    let waiting = |until| task().waiting(line("the joiner"), until, 2.into(), TODAY);
    assert!(waiting(date!(2026 - 11 - 24)).is_err());
    let it = waiting(FRIDAY).expect("waits");
    assert!(it.is_owned_by(2.into()) && it.is_waiting());
    assert!(!it.wait_is_over(TODAY) && it.wait_is_over(FRIDAY));
    let other = it.taken(3.into(), true).expect("free");
    assert!(other.is_waiting() && other.waiting_on.is_some());
    assert_eq!(it.arrived().state, State::Taken);
    let back = it.given_back().expect("back");
    assert!(back.owner_id.is_none() && back.waiting_on.is_none() && back.state == State::Open);
}

#[test]
fn put_off_it_leaves_the_board_and_comes_back_by_itself() {
    let it = due(date!(2026 - 11 - 20), false, None).put_off(FRIDAY, None, TODAY).expect("off");
    assert!(it.is_put_off(TODAY) && !it.is_overdue(TODAY));
    assert!(!it.is_put_off(FRIDAY) && it.is_overdue(FRIDAY));
    assert!(task().put_off(TODAY, None, TODAY).is_err());
    let firm = due(date!(2026 - 11 - 26), true, None);
    assert!(firm.put_off(FRIDAY, None, TODAY).is_err(), "past the day it must be done by");
    assert!(firm.put_off(date!(2026 - 11 - 26), None, TODAY).is_ok());
}

#[test]
fn done_is_of_a_day_that_has_come_and_can_be_taken_back() {
    let taken = task().taken(2.into(), false).expect("free");
    assert!(taken.done(finish(FRIDAY), 2.into(), TODAY).is_err());
    let done = taken.done(finish(TODAY), 2.into(), TODAY).expect("done");
    assert!(!done.stands() && is_stale(done.done(finish(TODAY), 2.into(), TODAY)));
    assert_eq!(done.opened_again(false).expect("again"), taken);
    let open = done.opened_again(true).expect("again");
    assert_eq!((open.state, open.owner_id), (State::Open, None));
    let gone = taken.let_go(line("the old one was found"), 2.into(), TODAY).expect("let go");
    assert_eq!(gone.opened_again(false).expect("again"), taken);
    assert!(is_stale(taken.opened_again(false)));
}

#[test]
fn the_next_of_a_series_is_counted_from_its_first_day() {
    let months = Some(Repeats { every: 1, unit: Unit::Months });
    let first = due(date!(2026 - 10 - 31), true, months).taken(2.into(), false).expect("free");
    assert!(first.next(true, at()).is_none(), "not done yet");
    let done = first.done(finish(date!(2026 - 11 - 02)), 2.into(), TODAY).expect("done");
    let next = done.next(true, at()).expect("a next");
    assert_eq!((next.due_on, next.counted_from), (Some(date!(2026 - 11 - 30)), first.counted_from));
    assert!(next.firm && next.is_owned_by(2.into()) && next.stands());
    assert_eq!(done.next(false, at()).expect("a next").owner_id, None);
    // November was short; December is not.
    let third = next.done(finish(TODAY), 2.into(), TODAY).expect("done").next(true, at());
    assert_eq!(third.expect("a third").due_on, Some(date!(2026 - 12 - 31)));
    let told = Task { next_id: Some(9.into()), ..done };
    assert!(told.next(true, at()).is_none(), "it stands already");
    // Another day begins the count anew.
    let on = date!(2026 - 12 - 15);
    let moved = next.reworded(Wording {
        due: Some(Due { on, firm: true, repeats: months }),
        ..Wording::of(line("Fetch"))
    });
    assert_eq!(moved.counted_from, Some(on));
}
