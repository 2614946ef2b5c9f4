//! The answer that counts where nothing is listed.
//!
//! "No known allergies" is never an empty list: someone said it, on a day. Without that, nobody
//! has been asked.

use crate::audited;
use crate::base::{
    ids::{AllergyAnswerId, PersonId},
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
pub struct AllergyAnswer {
    pub id: AllergyAnswerId,
    pub person_id: PersonId,
    pub answer: Answer,
    pub said_by: Option<Line>,
    pub said_on: Option<Date>,
    pub version: i64,
}

audited!(AllergyAnswer as "allergy_answer" {
    answer: "answer", said_by: "said by", said_on: "said on",
} skip { id, person_id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Answer {
    #[serde(rename = "none known")]
    #[sqlx(rename = "none known")]
    NoneKnown,
    #[serde(rename = "not asked")]
    #[sqlx(rename = "not asked")]
    NotAsked,
}

impl Choice for Answer {
    const ALL: &'static [Answer] = &[Answer::NoneKnown, Answer::NotAsked];

    fn words(self) -> &'static str {
        match self {
            Answer::NoneKnown => "no known allergies",
            Answer::NotAsked => "not asked yet",
        }
    }
}

impl fmt::Display for Answer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl AllergyAnswer {
    /// Where nobody has written an answer down.
    pub fn not_asked(person_id: PersonId) -> AllergyAnswer {
        let (id, answer) = (AllergyAnswerId::default(), Answer::NotAsked);
        AllergyAnswer { id, person_id, answer, said_by: None, said_on: None, version: 0 }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<AllergyAnswer> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// None known: only while nothing is listed, and only said on a day that has come.
    pub fn none_known(
        &self,
        (said_by, said_on): (Line, Date),
        listed: usize,
        today: Date,
    ) -> Result<AllergyAnswer> {
        if listed > 0 {
            let says = "An allergy or intolerance is listed. If it was entered by mistake, strike it first.";
            return Err(FormErrors::at("answer", says).into());
        }
        FormErrors::unless_come("said_on", said_on, today)?;
        let (said_by, said_on) = (Some(said_by), Some(said_on));
        Ok(AllergyAnswer { answer: Answer::NoneKnown, said_by, said_on, ..self.clone() })
    }

    /// Taken back: not asked.
    pub fn retracted(&self) -> AllergyAnswer {
        AllergyAnswer { answer: Answer::NotAsked, said_by: None, said_on: None, ..self.clone() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn none_known_is_refused_beside_a_list_and_on_a_day_to_come() {
        let said = |on, listed| {
            let unasked = AllergyAnswer::not_asked(PersonId::from(1));
            let said = (Line::from("Emeric".to_owned()), on);
            unasked.none_known(said, listed, date!(2026 - 11 - 25))
        };
        assert!(said(date!(2026 - 11 - 25), 0).is_ok());
        assert!(said(date!(2026 - 11 - 25), 1).is_err());
        assert!(said(date!(2026 - 11 - 26), 0).is_err());
    }
}
