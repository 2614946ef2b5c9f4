//! What was said of a paper that is expected: that it is there and where, that it does not apply, or
//! that she would rather not; and of the person: whether she served, drives, which Medicare she has.
//!
//! Said by someone, on a day; taken back it is "not asked". Nothing is concluded from what is filed.

use super::expected::Fact;
use crate::audited;
use crate::base::{
    day,
    ids::{PaperWordId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors, FromForm, Reader},
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct PaperWord {
    pub id: PaperWordId,
    pub person_id: PersonId,
    /// By its name in the list of what is expected, or of what is asked.
    pub about: String,
    pub answer: Answer,
    pub detail: Option<Line>,
    pub said_by: Option<Line>,
    pub said_on: Option<Date>,
    pub version: i64,
}

audited!(PaperWord as "paper_word" {
    about: "", answer: "answer", detail: "detail", said_by: "said by", said_on: "said on",
} skip { id, person_id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Answer {
    #[serde(rename = "yes")]
    #[sqlx(rename = "yes")]
    Yes,
    #[serde(rename = "none")]
    #[sqlx(rename = "none")]
    No,
    #[serde(rename = "Original Medicare")]
    #[sqlx(rename = "Original Medicare")]
    Original,
    #[serde(rename = "Medicare Advantage")]
    #[sqlx(rename = "Medicare Advantage")]
    Advantage,
    #[serde(rename = "it is there")]
    #[sqlx(rename = "it is there")]
    There,
    #[serde(rename = "it does not apply")]
    #[sqlx(rename = "it does not apply")]
    NotApplying,
    #[serde(rename = "would rather not")]
    #[sqlx(rename = "would rather not")]
    RatherNot,
    #[serde(rename = "not asked")]
    #[sqlx(rename = "not asked")]
    NotAsked,
}

impl Choice for Answer {
    const ALL: &'static [Answer] = &[
        Answer::Yes,
        Answer::No,
        Answer::Original,
        Answer::Advantage,
        Answer::There,
        Answer::NotApplying,
        Answer::RatherNot,
        Answer::NotAsked,
    ];

    fn words(self) -> &'static str {
        match self {
            Answer::Yes => "yes",
            Answer::No => "no",
            Answer::Original => "Original Medicare",
            Answer::Advantage => "Medicare Advantage",
            Answer::There => "it is there",
            Answer::NotApplying => "it does not apply",
            Answer::RatherNot => "would rather not",
            Answer::NotAsked => "not asked",
        }
    }
}

impl Answer {
    /// The answers to a question about the person, or to whether a paper is there.
    pub fn to(fact: Option<Fact>) -> &'static [Answer] {
        match fact {
            Some(Fact::Medicare) => {
                &[Answer::Original, Answer::Advantage, Answer::No, Answer::NotAsked]
            }
            Some(_) => &[Answer::Yes, Answer::No, Answer::NotAsked],
            None => &[Answer::There, Answer::NotApplying, Answer::RatherNot, Answer::NotAsked],
        }
    }
}

/// What someone said on a day.
#[derive(Clone, Debug)]
pub struct Said {
    pub answer: Answer,
    pub detail: Option<Line>,
    pub by: Line,
    pub on: Date,
}

impl PaperWord {
    /// Where nobody has said anything.
    pub fn not_asked(person_id: PersonId, about: &str) -> PaperWord {
        PaperWord {
            id: PaperWordId::default(),
            person_id,
            about: about.to_owned(),
            answer: Answer::NotAsked,
            detail: None,
            said_by: None,
            said_on: None,
            version: 0,
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<PaperWord> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Said on a day that has come; the answer must be one of those that are asked for.
    pub fn said(&self, said: Said, fact: Option<Fact>, today: Date) -> Result<PaperWord> {
        FormErrors::unless_come("said_on", said.on, today)?;
        if !Answer::to(fact).contains(&said.answer) {
            return Err(FormErrors::at("answer", "Choose one of these.").into());
        }
        let (said_by, said_on) = (Some(said.by), Some(said.on));
        Ok(PaperWord { answer: said.answer, detail: said.detail, said_by, said_on, ..self.clone() })
    }

    /// Taken back: not asked.
    pub fn retracted(&self) -> PaperWord {
        let (detail, said_by, said_on) = (None, None, None);
        PaperWord { answer: Answer::NotAsked, detail, said_by, said_on, ..self.clone() }
    }

    pub fn answer_words(&self) -> &'static str {
        self.answer.words()
    }

    /// "said by Ottoline on 12 March 2026"
    pub fn who_said(&self) -> Option<String> {
        let (by, on) = (self.said_by.as_ref()?, self.said_on?);
        Some(format!("said by {by} on {}", day::words(on)))
    }
}

/// What was said, or nothing where it is taken back.
pub struct Answered {
    pub said: Option<Said>,
    pub version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> std::result::Result<Answered, FormErrors> {
        let (answer, version) = (form.choice("answer"), form.version());
        if answer == Some(Answer::NotAsked) {
            return Ok(Answered { said: None, version });
        }
        let detail = form.line("detail");
        let by = form.needed_line("said_by", "Enter who said so.");
        let on = form.needed_day("said_on", "Enter the day on which it was said, like 9 Mar 2026.");
        form.finish(|| {
            let said = Said { answer: answer?, detail, by: by?, on: on? };
            Some(Answered { said: Some(said), version })
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn said(answer: Answer, on: Date) -> Said {
        Said { answer, detail: None, by: Line::from("Ottoline".to_owned()), on }
    }

    #[test]
    fn a_word_is_said_by_someone_on_a_day_and_can_be_taken_back() {
        let unasked = PaperWord::not_asked(1.into(), "funeral-contract");
        let word = unasked.said(said(Answer::RatherNot, TODAY), None, TODAY).expect("said");
        assert_eq!(word.who_said().as_deref(), Some("said by Ottoline on 25 November 2026"));
        assert_eq!((word.retracted(), unasked.who_said()), (unasked.clone(), None));
        let tomorrow = said(Answer::RatherNot, date!(2026 - 11 - 26));
        assert!(unasked.said(tomorrow, None, TODAY).is_err());
    }

    #[test]
    fn each_question_has_its_own_answers() {
        let word = PaperWord::not_asked(1.into(), "veteran");
        let takes = |fact, answer| word.said(said(answer, TODAY), fact, TODAY).is_ok();
        assert!(takes(Some(Fact::Veteran), Answer::No) && takes(Some(Fact::Driver), Answer::Yes));
        assert!(takes(Some(Fact::Medicare), Answer::Advantage));
        assert!(!takes(Some(Fact::Medicare), Answer::Yes) && !takes(None, Answer::Yes));
        assert!(!takes(Some(Fact::Veteran), Answer::RatherNot));
    }
}
