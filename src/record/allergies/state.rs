//! The three states of the list: something is listed, none known, or not asked.

use super::{
    answer::{AllergyAnswer, Answer},
    model::Allergy,
};
use crate::base::{day, text::Line};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Never empty.
    Listed(Vec<Allergy>),
    NoneKnown {
        said_by: Line,
        said_on: Date,
    },
    NotAsked,
}

impl State {
    /// What is listed wins over any answer; what was struck does not count.
    pub fn of(mut allergies: Vec<Allergy>, answer: AllergyAnswer) -> State {
        allergies.retain(|it| !it.struck);
        match (allergies.is_empty(), answer) {
            (false, _) => State::Listed(allergies),
            (
                true,
                AllergyAnswer {
                    answer: Answer::NoneKnown,
                    said_by: Some(said_by),
                    said_on: Some(said_on),
                    ..
                },
            ) => State::NoneKnown { said_by, said_on },
            _ => State::NotAsked,
        }
    }

    pub fn listed(&self) -> &[Allergy] {
        match self {
            State::Listed(allergies) => allergies,
            _ => &[],
        }
    }

    /// The one line at the top of the page and of every sheet.
    pub fn sentence(&self) -> String {
        match self {
            State::Listed(one) if one.len() == 1 => "1 allergy or intolerance".into(),
            State::Listed(many) => format!("{} allergies or intolerances", many.len()),
            State::NoneKnown { .. } => "No known allergies".into(),
            State::NotAsked => "Not asked yet".into(),
        }
    }

    /// "said by Emeric on 12 March 2026", under "No known allergies".
    pub fn said(&self) -> Option<String> {
        match self {
            State::NoneKnown { said_by, said_on } => {
                Some(format!("said by {said_by} on {}", day::words(*said_on)))
            }
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::model::{Account, Nature};
    use super::*;
    use crate::base::ids::PersonId;
    use time::macros::date;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn unasked() -> AllergyAnswer {
        AllergyAnswer::not_asked(PersonId::from(1))
    }

    fn none_known() -> AllergyAnswer {
        let said = (line("Emeric"), date!(2026 - 03 - 12));
        unasked().none_known(said, 0, date!(2026 - 11 - 25)).unwrap()
    }

    fn allergy() -> Allergy {
        let (substance, nature) = (line("Penicillin"), Nature::Allergy);
        let account = Account { substance, nature, reaction: None, since: None, source: None };
        Allergy::new(PersonId::from(1), account)
    }

    #[test]
    fn what_is_listed_wins_over_none_known() {
        let state = State::of(vec![allergy()], none_known());
        assert_eq!(state, State::Listed(vec![allergy()]));
    }

    #[test]
    fn none_known_says_by_whom_and_when() {
        let state = State::of(Vec::new(), none_known());
        assert_eq!(state.sentence(), "No known allergies");
        assert_eq!(state.said().unwrap(), "said by Emeric on 12 March 2026");
    }

    #[test]
    fn an_empty_list_is_not_asked_and_so_is_one_whose_last_was_struck() {
        assert_eq!(State::of(Vec::new(), unasked()), State::NotAsked);
        let struck = allergy().struck(line("it is her sister's"));
        let taken_back = none_known().retracted();
        assert_eq!(State::of(vec![struck], taken_back), State::NotAsked);
    }
}
