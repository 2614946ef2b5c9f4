//! Where the answer about implants and the list of operations do not say the same.
//!
//! The answer about a blood thinner is laid beside no list: that would need to know what a
//! medicine does.

use crate::record::{
    operations::model::Operation,
    statements::{
        model::{Question, Statement},
        state::State,
    },
};

/// Both, as they stand; nothing where they agree.
pub fn beside(statement: &Statement, operations: &[Operation]) -> Option<String> {
    if statement.question != Question::Implant {
        return None;
    }
    let listed = operations.iter().any(|it| it.implant.is_some());
    match (State::of(statement), listed) {
        (State::Yes { said_by, .. }, false) => {
            Some(format!("Stated: yes, by {said_by}; no operation with an implant is listed."))
        }
        (State::No { said_by, .. }, true) => {
            Some(format!("Stated: none, by {said_by}; an operation with an implant is listed."))
        }
        (State::NotAsked, true) => {
            Some("Not asked; an operation with an implant is listed.".into())
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{ids::PersonId, text::Line};
    use crate::record::{operations::model::Entry, statements::model::Said};
    use time::macros::date;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn operation(implant: Option<&str>) -> Operation {
        let entry = Entry {
            name: line("Left hip replaced"),
            done_when: None,
            done_where: None,
            implant: implant.map(line),
            implant_card: None,
            note: None,
            source: None,
        };
        Operation::new(PersonId::from(1), entry)
    }

    fn unasked(question: Question) -> Statement {
        Statement::not_asked(PersonId::from(1), question)
    }

    fn said(which: Option<&str>) -> Statement {
        let on = date!(2026 - 11 - 25);
        let said = Said { which: which.map(line), by: line("Emeric"), on };
        unasked(Question::Implant).said(said, on).unwrap()
    }

    #[test]
    fn an_answer_and_a_list_that_differ_stand_side_by_side() {
        let (with, without) = ([operation(Some("hip joint"))], [operation(None)]);
        let told = |statement: &Statement, listed: &[Operation]| beside(statement, listed);
        assert_eq!(
            told(&said(None), &with).unwrap(),
            "Stated: none, by Emeric; an operation with an implant is listed."
        );
        assert_eq!(
            told(&unasked(Question::Implant), &with).unwrap(),
            "Not asked; an operation with an implant is listed."
        );
        assert_eq!(
            told(&said(Some("hip joint")), &without).unwrap(),
            "Stated: yes, by Emeric; no operation with an implant is listed."
        );
        assert_eq!(told(&said(Some("hip joint")), &with), None);
        assert_eq!(told(&said(None), &without), None);
        assert_eq!(told(&unasked(Question::Implant), &without), None);
        assert_eq!(told(&unasked(Question::BloodThinner), &with), None);
    }
}
