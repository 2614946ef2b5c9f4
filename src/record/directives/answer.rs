//! The answer that counts where nothing is listed, and the states of the list.
//!
//! "No directives" is never an empty list: someone said it, on a day. Without that nobody has been
//! asked. What is listed wins, also a draft and what is over.

use super::model::Directive;
use crate::audited;
use crate::base::{
    day,
    ids::{DirectiveAnswerId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::Date;

/// What was answered; one for each person.
#[derive(Clone, Debug, PartialEq)]
pub struct DirectiveAnswer {
    pub id: DirectiveAnswerId,
    pub person_id: PersonId,
    pub answer: Answer,
    pub said_by: Option<Line>,
    pub said_on: Option<Date>,
    pub version: i64,
}

audited!(DirectiveAnswer as "directive_answer" {
    answer: "answer", said_by: "said by", said_on: "said on",
} skip { id, person_id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Answer {
    #[serde(rename = "none")]
    #[sqlx(rename = "none")]
    No,
    #[serde(rename = "not asked")]
    #[sqlx(rename = "not asked")]
    NotAsked,
}

impl Choice for Answer {
    const ALL: &'static [Answer] = &[Answer::No, Answer::NotAsked];

    fn words(self) -> &'static str {
        match self {
            Answer::No => "no directives",
            Answer::NotAsked => "not asked yet",
        }
    }
}

impl fmt::Display for Answer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl DirectiveAnswer {
    /// Where nobody has written an answer down.
    pub fn not_asked(person_id: PersonId) -> DirectiveAnswer {
        let (id, answer) = (DirectiveAnswerId::default(), Answer::NotAsked);
        DirectiveAnswer { id, person_id, answer, said_by: None, said_on: None, version: 0 }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<DirectiveAnswer> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// None: only while nothing is listed, and only said on a day that has come.
    pub fn none(
        &self,
        (said_by, said_on): (Line, Date),
        listed: usize,
        today: Date,
    ) -> Result<DirectiveAnswer> {
        if listed > 0 {
            let says = "A directive is listed. If it was entered by mistake, strike it first.";
            return Err(FormErrors::at("answer", says).into());
        }
        FormErrors::unless_come("said_on", said_on, today)?;
        let (said_by, said_on) = (Some(said_by), Some(said_on));
        Ok(DirectiveAnswer { answer: Answer::No, said_by, said_on, ..self.clone() })
    }

    /// Taken back: not asked.
    pub fn retracted(&self) -> DirectiveAnswer {
        DirectiveAnswer { answer: Answer::NotAsked, said_by: None, said_on: None, ..self.clone() }
    }
}

/// Yes, none, or not asked.
#[derive(Clone, Debug, PartialEq)]
pub enum Asked {
    /// So many are in force, of those that are listed.
    Listed {
        in_force: usize,
    },
    No {
        said_by: Line,
        said_on: Date,
    },
    NotAsked,
}

impl Asked {
    pub fn of(all: &[Directive], answer: &DirectiveAnswer) -> Asked {
        let DirectiveAnswer { answer, said_by, said_on, .. } = answer.clone();
        if all.iter().any(|it| !it.struck) {
            return Asked::Listed { in_force: all.iter().filter(|it| it.is_in_force()).count() };
        }
        match (answer, said_by, said_on) {
            (Answer::No, Some(said_by), Some(said_on)) => Asked::No { said_by, said_on },
            _ => Asked::NotAsked,
        }
    }

    /// The one line at the top of the page and of every sheet.
    pub fn sentence(&self) -> String {
        match self {
            Asked::Listed { in_force: 0 } => "None is in force, as far as the family knows".into(),
            Asked::Listed { in_force: 1 } => "1 in force, as far as the family knows".into(),
            Asked::Listed { in_force } => {
                format!("{in_force} in force, as far as the family knows")
            }
            Asked::No { said_by, said_on } => {
                format!("No directives, said by {said_by} on {}", day::words(*said_on))
            }
            Asked::NotAsked => "Not asked yet".into(),
        }
    }

    pub fn is_asked(&self) -> bool {
        *self != Asked::NotAsked
    }
}

#[cfg(test)]
mod tests {
    use super::super::{
        kind::Kind,
        model::tests::{TODAY, directive, line},
    };
    use super::*;
    use time::macros::date;

    fn none(listed: usize, on: Date) -> Result<DirectiveAnswer> {
        DirectiveAnswer::not_asked(1.into()).none((line("Emeric"), on), listed, TODAY)
    }

    #[test]
    fn none_is_refused_beside_a_list_and_on_a_day_to_come() {
        assert!(none(0, TODAY).is_ok());
        assert!(none(1, TODAY).is_err());
        assert!(none(0, date!(2026 - 11 - 26)).is_err());
    }

    #[test]
    fn an_empty_list_is_not_asked_and_what_is_listed_wins() {
        let unasked = DirectiveAnswer::not_asked(1.into());
        let none = none(0, date!(2026 - 03 - 12)).unwrap();
        let kept = directive(1, Kind::LivingWill);
        assert_eq!(Asked::of(&[], &unasked).sentence(), "Not asked yet");
        let said = "No directives, said by Emeric on 12 March 2026";
        assert_eq!(Asked::of(&[], &none).sentence(), said);
        assert_eq!(Asked::of(&[kept.struck(line("x"))], &none).sentence(), said);
        let listed = Asked::of(&[kept.clone(), kept.superseded(2.into())], &none);
        assert_eq!(listed, Asked::Listed { in_force: 1 });
        let over = Asked::of(&[kept.superseded(2.into())], &unasked);
        assert_eq!(over.sentence(), "None is in force, as far as the family knows");
        assert_eq!(Asked::of(&[], &none.retracted()), Asked::NotAsked);
    }
}
