//! Conditions that began after a directive was last signed or looked at, while no new diagnosis was written
//! down among what happened: a question to the family, never an event by itself.
//!
//! A new diagnosis is one of the triggers of the ABA Commission on Law and Aging (`events`).

use super::{
    events::{DirectiveEvent, Happened},
    model::Directive,
};
use crate::base::day;
use time::Date;

/// When something began, as far as it is remembered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Since {
    On(Date),
    In(i32),
}

impl Since {
    /// A day or a year; of other words nothing is made.
    pub fn read(typed: &str) -> Option<Since> {
        let typed = typed.trim();
        let year = typed.len() == 4 && typed.bytes().all(|it| it.is_ascii_digit());
        match year {
            true => typed.parse().ok().map(Since::In),
            false => day::parse(typed).map(Since::On),
        }
    }

    /// Whether it surely was after that day.
    fn is_after(self, on: Date) -> bool {
        match self {
            Since::On(began) => began > on,
            Since::In(year) => year > on.year(),
        }
    }

    /// Whether what happened that day can have been this.
    fn can_be(self, happened_on: Date) -> bool {
        match self {
            Since::On(began) => happened_on >= began,
            Since::In(year) => happened_on.year() >= year,
        }
    }
}

/// Whether it is to be asked of something that began then.
pub fn is_unsaid(since: Since, all: &[Directive], events: &[DirectiveEvent]) -> bool {
    let looked_before = |it: &Directive| {
        let looked = it.signed_on.max(it.reviewed_on);
        it.is_in_force() && looked.is_some_and(|on| since.is_after(on))
    };
    let said = |it: &DirectiveEvent| {
        !it.struck && it.kind == Happened::Diagnosis && since.can_be(it.happened_on)
    };
    all.iter().any(looked_before) && !events.iter().any(said)
}

#[cfg(test)]
mod tests {
    use super::super::{
        kind::Kind,
        model::tests::{TODAY, directive},
    };
    use super::*;
    use time::macros::date;

    /// Signed on 3 May 2022, unless another day is said.
    fn signed(on: Date) -> Vec<Directive> {
        vec![Directive { signed_on: Some(on), ..directive(1, Kind::LivingWill) }]
    }

    fn event(kind: Happened, on: Date) -> DirectiveEvent {
        DirectiveEvent::new(1.into(), (kind, None), (on, None), TODAY).expect("an event")
    }

    #[test]
    fn a_day_or_a_year_is_read_and_nothing_else() {
        assert_eq!(Since::read(" 2024 "), Some(Since::In(2024)));
        assert_eq!(Since::read("9 Mar 2024"), Some(Since::On(date!(2024 - 03 - 09))));
        for words in ["", "as a child", "about 2024", "20244", "spring 2024"] {
            assert_eq!(Since::read(words), None, "{words:?}");
        }
    }

    #[test]
    fn what_surely_began_later_is_asked_until_a_diagnosis_is_written_down() {
        let all = signed(date!(2022 - 05 - 03));
        let began = Since::On(date!(2024 - 03 - 09));
        assert!(is_unsaid(began, &all, &[]) && is_unsaid(Since::In(2023), &all, &[]));
        assert!(!is_unsaid(Since::In(2022), &all, &[]), "it may have been before");
        assert!(!is_unsaid(Since::On(date!(2022 - 05 - 03)), &all, &[]));
        let (before, after) = (date!(2024 - 03 - 08), date!(2024 - 03 - 12));
        assert!(is_unsaid(began, &all, &[event(Happened::Diagnosis, before)]));
        assert!(is_unsaid(began, &all, &[event(Happened::Decline, after)]));
        assert!(!is_unsaid(began, &all, &[event(Happened::Diagnosis, after)]));
        let struck = DirectiveEvent { struck: true, ..event(Happened::Diagnosis, after) };
        assert!(is_unsaid(began, &all, &[struck]));
    }

    #[test]
    fn what_was_looked_at_since_or_is_over_asks_nothing() {
        let began = Since::On(date!(2024 - 03 - 09));
        let mut all = signed(date!(2022 - 05 - 03));
        all[0].reviewed_on = Some(date!(2024 - 04 - 01));
        assert!(!is_unsaid(began, &all, &[]));
        let over = vec![signed(date!(2022 - 05 - 03))[0].superseded(9.into())];
        assert!(!is_unsaid(began, &over, &[]) && !is_unsaid(began, &[], &[]));
    }
}
