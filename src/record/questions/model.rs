//! What a question is, and what may happen to it.

use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{ContactId, MemberId, PersonId, QuestionId},
    text::{Line, Note, first_words},
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::Date;

/// Whom it is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Whom {
    Pharmacist,
    Prescriber,
    /// Someone with a name.
    Clinician,
}

impl Choice for Whom {
    const ALL: &'static [Whom] = &[Whom::Pharmacist, Whom::Prescriber, Whom::Clinician];

    fn words(self) -> &'static str {
        match self {
            Whom::Pharmacist => "the pharmacist",
            Whom::Prescriber => "the prescriber",
            Whom::Clinician => "a clinician by name",
        }
    }
}

impl fmt::Display for Whom {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum State {
    #[serde(rename = "open")]
    #[sqlx(rename = "open")]
    Open,
    /// Put to someone, and not answered yet.
    #[serde(rename = "asked")]
    #[sqlx(rename = "asked")]
    Asked,
    #[serde(rename = "answered")]
    #[sqlx(rename = "answered")]
    Answered,
    #[serde(rename = "let go")]
    #[sqlx(rename = "let go")]
    LetGo,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    pub id: QuestionId,
    pub person_id: PersonId,
    pub words: Note,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub for_whom: Whom,
    /// The clinician's name, where it is for one.
    pub clinician: Option<Line>,
    /// The same clinician among the contacts; the name is then as it was when this was chosen.
    pub contact_id: Option<ContactId>,
    pub about_kind: Option<String>,
    pub about_item: Option<i64>,
    /// What its words name beside that, as JSON: hidden from whom one of these is hidden.
    pub names: Option<String>,
    /// Who will ask it.
    pub owner_id: Option<MemberId>,
    pub state: State,
    pub asked_on: Option<Date>,
    pub answer: Option<Note>,
    pub answered_by: Option<Line>,
    pub answered_on: Option<Date>,
    pub let_go_reason: Option<Line>,
    /// Its place among those for the same clinician, where it was moved: see [`Question::place`].
    pub ask_order: Option<i64>,
    /// The starter question that it came from.
    pub starter: Option<String>,
    pub version: i64,
}

audited!(Question as "question" {
    words: "words", entered_by: "", entered_at: "", for_whom: "one it is for",
    clinician: "clinician", contact_id: "", about_kind: "", about_item: "", names: "", owner_id: "", state: "",
    asked_on: "day it was asked", answer: "answer", answered_by: "one who answered",
    answered_on: "day of the answer", let_go_reason: "reason", ask_order: "", starter: "",
} skip { id, person_id, version });

/// What is written down of a question.
#[derive(Clone, Debug)]
pub struct Wording {
    pub words: Note,
    pub for_whom: Whom,
    pub clinician: Option<Line>,
    pub about: Option<(String, i64)>,
}

/// What was answered.
#[derive(Clone, Debug)]
pub struct Answer {
    pub answer: Note,
    pub by: Line,
    pub on: Date,
}

/// A title is the first words, up to so many letters.
const TITLE: usize = 70;

impl Question {
    pub fn new(person_id: PersonId, wording: Wording, (by, at): (MemberId, Instant)) -> Question {
        let (about_kind, about_item) = wording.about.unzip();
        Question {
            id: QuestionId::default(),
            person_id,
            words: wording.words,
            entered_by: by,
            entered_at: at,
            for_whom: wording.for_whom,
            clinician: wording.clinician,
            contact_id: None,
            about_kind,
            about_item,
            names: None,
            owner_id: None,
            state: State::Open,
            asked_on: None,
            answer: None,
            answered_by: None,
            answered_on: None,
            let_go_reason: None,
            ask_order: None,
            starter: None,
            version: 1,
        }
    }

    /// With what the program put into its words, by kind and id.
    pub fn naming(self, items: &[(&str, i64)]) -> Question {
        Question { names: serde_json::to_string(items).ok(), ..self }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Question> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn reworded(&self, wording: Wording) -> Question {
        let (about_kind, about_item) = wording.about.unzip();
        Question {
            words: wording.words,
            for_whom: wording.for_whom,
            clinician: wording.clinician,
            contact_id: None,
            about_kind,
            about_item,
            ..self.clone()
        }
    }

    /// For one of the contacts, by the name it has now.
    pub fn for_contact(self, contact: ContactId, name: Line) -> Question {
        let (for_whom, contact_id) = (Whom::Clinician, Some(contact));
        Question { for_whom, contact_id, clinician: Some(name), ..self }
    }

    /// With the starter question that it came from.
    pub fn begun_from(self, starter: &str) -> Question {
        Question { starter: Some(starter.to_owned()), ..self }
    }

    /// Where it stands among the others: ids are places until someone moves one, so a new question
    /// comes last and no two ever share a place.
    pub fn place(&self) -> i64 {
        self.ask_order.unwrap_or(self.id.into())
    }

    /// At the place of another one.
    pub fn moved_to(&self, other: &Question) -> Question {
        Question { ask_order: Some(other.place()), ..self.clone() }
    }

    /// With who will ask it; none: nobody yet.
    pub fn owned(&self, owner_id: Option<MemberId>) -> Question {
        Question { owner_id, ..self.clone() }
    }

    pub fn asked(&self, on: Date, today: Date) -> Result<Question> {
        FormErrors::unless_come("on", on, today)?;
        Ok(Question { state: State::Asked, asked_on: Some(on), ..self.clone() })
    }

    pub fn answered(&self, answer: Answer, today: Date) -> Result<Question> {
        FormErrors::unless_come("on", answer.on, today)?;
        Ok(Question {
            state: State::Answered,
            answer: Some(answer.answer),
            answered_by: Some(answer.by),
            answered_on: Some(answer.on),
            ..self.clone()
        })
    }

    pub fn let_go(&self, reason: Line) -> Question {
        Question { state: State::LetGo, let_go_reason: Some(reason), ..self.clone() }
    }

    /// Open again. What was answered stays in its history.
    pub fn brought_back(&self) -> Question {
        Question {
            state: State::Open,
            asked_on: None,
            answer: None,
            answered_by: None,
            answered_on: None,
            let_go_reason: None,
            ..self.clone()
        }
    }

    /// Whether someone still has to do something: to ask it, or to write down the answer.
    pub fn waits(&self) -> bool {
        matches!(self.state, State::Open | State::Asked)
    }

    /// Whether it is still to be asked, and nobody has said that she will.
    pub fn needs_someone(&self) -> bool {
        self.state == State::Open && self.owner_id.is_none()
    }

    pub fn is_open(&self) -> bool {
        self.state == State::Open
    }

    pub fn is_let_go(&self) -> bool {
        self.state == State::LetGo
    }

    pub fn is_owned_by(&self, member: MemberId) -> bool {
        self.owner_id == Some(member)
    }

    pub fn about(&self) -> Option<(&str, i64)> {
        Some((self.about_kind.as_deref()?, self.about_item?))
    }

    /// "the pharmacist", or the clinician's name.
    pub fn whom(&self) -> &str {
        self.clinician.as_ref().map_or(self.for_whom.words(), Line::as_str)
    }

    pub fn asked_day(&self) -> Option<String> {
        self.asked_on.map(day::words)
    }

    pub fn answered_day(&self) -> Option<String> {
        self.answered_on.map(day::words)
    }

    /// Its first words, for lists and the history.
    pub fn title(&self) -> String {
        title(self.words.as_str())
    }
}

/// The first words of a question.
pub fn title(words: &str) -> String {
    first_words(words, TITLE)
}

#[cfg(test)]
mod tests;
