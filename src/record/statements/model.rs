//! What was stated, and the rules for stating it.

use crate::audited;
use crate::base::{
    ids::{PathId, PersonId, StatementId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::{fmt, str::FromStr};
use time::Date;

/// The answer to one question; at most one of each for a person.
#[derive(Clone, Debug, PartialEq)]
pub struct Statement {
    pub id: StatementId,
    pub person_id: PersonId,
    pub question: Question,
    pub answer: Answer,
    /// To "yes": which one.
    pub which: Option<Line>,
    pub said_by: Option<Line>,
    pub said_on: Option<Date>,
    pub version: i64,
}

audited!(Statement as "statement" {
    question: "", answer: "answer", which: "name given", said_by: "said by", said_on: "said on",
} skip { id, person_id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Question {
    #[serde(rename = "blood thinner")]
    #[sqlx(rename = "blood thinner")]
    BloodThinner,
    #[serde(rename = "implant")]
    #[sqlx(rename = "implant")]
    Implant,
}

impl Question {
    pub const ALL: [Question; 2] = [Question::BloodThinner, Question::Implant];

    pub fn words(self) -> &'static str {
        match self {
            Question::BloodThinner => "Takes a blood thinner?",
            Question::Implant => "Has an implant or device?",
        }
    }

    /// What it is about, where the answer stands beside it.
    pub fn subject(self) -> &'static str {
        match self {
            Question::BloodThinner => "Blood thinner",
            Question::Implant => "Implant or device",
        }
    }

    /// Its name in an address.
    pub fn slug(self) -> &'static str {
        match self {
            Question::BloodThinner => "blood-thinner",
            Question::Implant => "implant",
        }
    }
}

impl PathId for Question {
    const PARAM: &'static str = "question";
}

impl FromStr for Question {
    type Err = Error;

    fn from_str(text: &str) -> Result<Question> {
        Question::ALL.into_iter().find(|it| it.slug() == text).ok_or(Error::NotFound)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Answer {
    #[serde(rename = "yes")]
    #[sqlx(rename = "yes")]
    Yes,
    #[serde(rename = "none")]
    #[sqlx(rename = "none")]
    No,
    #[serde(rename = "not asked")]
    #[sqlx(rename = "not asked")]
    NotAsked,
}

impl Choice for Answer {
    const ALL: &'static [Answer] = &[Answer::Yes, Answer::No, Answer::NotAsked];

    fn words(self) -> &'static str {
        match self {
            Answer::Yes => "yes",
            Answer::No => "none",
            Answer::NotAsked => "not asked",
        }
    }
}

impl fmt::Display for Answer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// What someone said on a day: yes, which one; or none.
pub struct Said {
    pub which: Option<Line>,
    pub by: Line,
    pub on: Date,
}

impl Statement {
    /// Where nobody has written an answer down.
    pub fn not_asked(person_id: PersonId, question: Question) -> Statement {
        Statement {
            id: StatementId::default(),
            person_id,
            question,
            answer: Answer::NotAsked,
            which: None,
            said_by: None,
            said_on: None,
            version: 0,
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Statement> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Said on a day that has come.
    pub fn said(&self, said: Said, today: Date) -> Result<Statement> {
        FormErrors::unless_come("said_on", said.on, today)?;
        let answer = if said.which.is_some() { Answer::Yes } else { Answer::No };
        let (said_by, said_on) = (Some(said.by), Some(said.on));
        Ok(Statement { answer, which: said.which, said_by, said_on, ..self.clone() })
    }

    /// Taken back: not asked.
    pub fn retracted(&self) -> Statement {
        let (which, said_by, said_on) = (None, None, None);
        Statement { answer: Answer::NotAsked, which, said_by, said_on, ..self.clone() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn nothing_is_said_on_a_day_to_come_and_what_was_said_can_be_taken_back() {
        let unasked = Statement::not_asked(PersonId::from(1), Question::Implant);
        let said = |which: Option<&str>, on| {
            let line = |text: &str| Line::from(text.to_owned());
            let said = Said { which: which.map(line), by: line("Emeric"), on };
            unasked.said(said, date!(2026 - 11 - 25))
        };
        assert_eq!(said(Some("hip joint"), date!(2026 - 11 - 25)).unwrap().answer, Answer::Yes);
        assert!(said(None, date!(2026 - 11 - 26)).is_err());
        let none = said(None, date!(2026 - 11 - 25)).unwrap();
        assert_eq!(none.answer, Answer::No);
        assert_eq!(none.retracted(), unasked);
    }

    #[test]
    fn a_question_is_found_by_its_name_in_an_address() {
        for question in Question::ALL {
            assert_eq!(question.slug().parse().ok(), Some(question));
        }
        assert!("blood thinner".parse::<Question>().is_err());
    }
}
