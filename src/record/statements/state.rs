//! The three states of a statement, in the words of the page and of every sheet.

use super::model::{Answer, Statement};
use crate::base::{day, text::Line};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub enum State {
    Yes { which: Line, said_by: Line, said_on: Date },
    No { said_by: Line, said_on: Date },
    NotAsked,
}

impl State {
    pub fn of(statement: &Statement) -> State {
        let Statement { answer, which, said_by, said_on, .. } = statement.clone();
        match (answer, which, said_by, said_on) {
            (Answer::Yes, Some(which), Some(said_by), Some(said_on)) => {
                State::Yes { which, said_by, said_on }
            }
            (Answer::No, None, Some(said_by), Some(said_on)) => State::No { said_by, said_on },
            _ => State::NotAsked,
        }
    }

    /// "Yes: warfarin", "None", "Not asked yet".
    pub fn sentence(&self) -> String {
        match self {
            State::Yes { which, .. } => format!("Yes: {which}"),
            State::No { .. } => "None".into(),
            State::NotAsked => "Not asked yet".into(),
        }
    }

    /// "said by Dr Oyelaran on 12 March 2026".
    pub fn said(&self) -> Option<String> {
        match self {
            State::Yes { said_by, said_on, .. } | State::No { said_by, said_on } => {
                Some(format!("said by {said_by} on {}", day::words(*said_on)))
            }
            State::NotAsked => None,
        }
    }

    pub fn is_asked(&self) -> bool {
        *self != State::NotAsked
    }
}

#[cfg(test)]
mod tests {
    use super::super::model::{Question, Said};
    use super::*;
    use crate::base::ids::PersonId;
    use time::macros::date;

    fn state(which: Option<&str>) -> State {
        let line = |text: &str| Line::from(text.to_owned());
        let on = date!(2026 - 03 - 12);
        let said = Said { which: which.map(line), by: line("Dr Oyelaran"), on };
        let unasked = Statement::not_asked(PersonId::from(1), Question::BloodThinner);
        State::of(&unasked.said(said, on).unwrap())
    }

    #[test]
    fn an_answer_says_by_whom_and_when() {
        assert_eq!(state(Some("warfarin")).sentence(), "Yes: warfarin");
        assert_eq!(state(None).sentence(), "None");
        for state in [state(Some("warfarin")), state(None)] {
            assert_eq!(state.said().unwrap(), "said by Dr Oyelaran on 12 March 2026");
        }
    }

    #[test]
    fn where_nobody_answered_nothing_is_said() {
        let unasked = State::of(&Statement::not_asked(PersonId::from(1), Question::Implant));
        assert_eq!(unasked, State::NotAsked);
        assert_eq!((unasked.sentence().as_str(), unasked.said()), ("Not asked yet", None));
    }
}
