//! One answer of the person, and the rules for writing it down.

use crate::audited;
use crate::base::{
    day,
    ids::{AnswerId, MemberId, PersonId},
    text::{Line, Note},
};
use crate::platform::{
    audit::Names,
    error::{Error, Result},
    web::form::Choice,
};
use serde::Serialize;
use std::fmt;
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    pub id: AnswerId,
    pub person_id: PersonId,
    /// As it was put to her, in words.
    pub question: Line,
    pub said: Said,
    /// To "hide": what, and from whom.
    pub hide_what: Option<Line>,
    pub hide_from: Option<Line>,
    pub own_words: Option<Note>,
    /// None: she wrote it down herself, unasked.
    pub asked_by: Option<MemberId>,
    pub how: Option<How>,
    pub asked_on: Date,
    /// The table of the item or place it is about, and which one, if it is about one.
    pub about_kind: Option<String>,
    pub about_item: Option<i64>,
    pub state: State,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Answer as "answer" {
    question: "question", said: "answer", hide_what: "what to hide", hide_from: "from whom",
    own_words: "own words", asked_by: "", how: "how asked", asked_on: "asked on",
    about_kind: "", about_item: "", state: "", struck_reason: "why struck",
} skip { id, person_id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Said {
    Yes,
    No,
    Hide,
    #[serde(rename = "would not say")]
    #[sqlx(rename = "would not say")]
    WouldNotSay,
    #[serde(rename = "ask again")]
    #[sqlx(rename = "ask again")]
    AskAgain,
}

impl Choice for Said {
    const ALL: &'static [Said] =
        &[Said::Yes, Said::No, Said::Hide, Said::WouldNotSay, Said::AskAgain];

    fn words(self) -> &'static str {
        match self {
            Said::Yes => "yes",
            Said::No => "no",
            Said::Hide => "hide",
            Said::WouldNotSay => "would not say",
            Said::AskAgain => "ask again",
        }
    }
}

/// How she was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
pub enum How {
    #[serde(rename = "in person")]
    #[sqlx(rename = "in person")]
    InPerson,
    #[serde(rename = "by phone")]
    #[sqlx(rename = "by phone")]
    ByPhone,
    #[serde(rename = "by video")]
    #[sqlx(rename = "by video")]
    ByVideo,
}

impl Choice for How {
    const ALL: &'static [How] = &[How::InPerson, How::ByPhone, How::ByVideo];

    fn words(self) -> &'static str {
        match self {
            How::InPerson => "in person",
            How::ByPhone => "by phone",
            How::ByVideo => "by video",
        }
    }
}

impl fmt::Display for How {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// What became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum State {
    Standing,
    /// The same was asked again, and answered.
    Replaced,
    /// It was written down by mistake.
    Struck,
}

/// The item or place that an answer is about.
#[derive(Clone, Debug, PartialEq)]
pub struct Subject {
    pub kind: String,
    pub item: i64,
}

impl Answer {
    /// As it was when the page was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Answer> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn is_standing(&self) -> bool {
        self.state == State::Standing
    }

    pub fn is_struck(&self) -> bool {
        self.state == State::Struck
    }

    /// Whether it is about this item or place.
    pub fn is_about(&self, kind: &str, item: i64) -> bool {
        self.about_kind.as_deref() == Some(kind) && self.about_item == Some(item)
    }

    /// Whether a later one answers the same question.
    pub fn is_asked_anew_in(&self, new: &Answer) -> bool {
        let asked = |it: &Answer| it.question.as_str().trim().to_lowercase();
        self.is_standing() && asked(self) == asked(new)
    }

    pub fn replaced(&self) -> Answer {
        Answer { state: State::Replaced, ..self.clone() }
    }

    pub fn struck(&self, reason: Line) -> Answer {
        Answer { state: State::Struck, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Answer {
        Answer { state: State::Standing, struck_reason: None, ..self.clone() }
    }

    /// "no"; "hide Sertraline from Bram"
    pub fn sentence(&self) -> String {
        match (&self.hide_what, &self.hide_from) {
            (Some(what), Some(from)) if self.said == Said::Hide => {
                format!("hide {what} from {from}")
            }
            _ => self.said.words().to_owned(),
        }
    }

    /// "asked by Ines, in person, on 3 March 2026"
    pub fn asked(&self, names: &Names) -> String {
        let on = day::words(self.asked_on);
        match (self.asked_by, self.how) {
            (Some(by), Some(how)) => format!("asked by {}, {how}, on {on}", names.of(by)),
            _ => format!("written down by the person, not asked, on {on}"),
        }
    }

    /// Whether there is something to be done about it elsewhere: it is never done by itself.
    pub fn asks_for_a_change(&self) -> bool {
        self.is_standing() && matches!(self.said, Said::No | Said::Hide)
    }
}

#[cfg(test)]
pub mod tests {
    use super::*;
    use time::macros::date;

    pub fn answer(question: &str, said: Said) -> Answer {
        Answer {
            id: AnswerId::default(),
            person_id: PersonId::from(1),
            question: Line::from(question.to_owned()),
            said,
            hide_what: None,
            hide_from: None,
            own_words: None,
            asked_by: None,
            how: None,
            asked_on: date!(2026 - 03 - 03),
            about_kind: None,
            about_item: None,
            state: State::Standing,
            struck_reason: None,
            version: 1,
        }
    }

    #[test]
    fn the_same_question_is_answered_once_at_a_time() {
        let first = answer("May Bram see the history?", Said::Yes);
        assert!(first.is_asked_anew_in(&answer("may Bram see the history? ", Said::No)));
        assert!(!first.is_asked_anew_in(&answer("May Bram see the essentials?", Said::No)));
        assert!(!first.replaced().is_asked_anew_in(&first));
    }

    #[test]
    fn only_no_and_hide_ask_for_something_to_be_done_and_only_while_they_stand() {
        let asks = |said| answer("May Bram see the history?", said).asks_for_a_change();
        assert_eq!([Said::Yes, Said::No, Said::Hide].map(asks), [false, true, true]);
        assert_eq!([Said::WouldNotSay, Said::AskAgain].map(asks), [false, false]);
        let mistaken = answer("x", Said::No).struck(Line::from("another person".to_owned()));
        assert!(!mistaken.asks_for_a_change() && mistaken.brought_back().asks_for_a_change());
    }

    #[test]
    fn it_says_what_to_hide_from_whom() {
        let line = |text: &str| Some(Line::from(text.to_owned()));
        let hide = Answer {
            hide_what: line("Sertraline"),
            hide_from: line("Bram"),
            ..answer("Who should not see Sertraline?", Said::Hide)
        };
        assert_eq!(hide.sentence(), "hide Sertraline from Bram");
        assert_eq!(answer("x", Said::WouldNotSay).sentence(), "would not say");
    }
}
