//! What is kept of a second list: the list, and its lines.

use super::lines::{self, Understood};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{ListLineId, MemberId, PersonId, SecondListId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use crate::record::medicines::abbreviations;
use std::fmt;
use time::Date;

/// What kind of list it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Paper {
    #[serde(rename = "discharge list")]
    #[sqlx(rename = "discharge list")]
    Discharge,
    #[serde(rename = "clinic printout")]
    #[sqlx(rename = "clinic printout")]
    Printout,
    #[serde(rename = "bottles")]
    #[sqlx(rename = "bottles")]
    Bottles,
    #[serde(rename = "other list")]
    #[sqlx(rename = "other list")]
    Other,
}

impl Choice for Paper {
    const ALL: &'static [Paper] =
        &[Paper::Discharge, Paper::Printout, Paper::Bottles, Paper::Other];

    fn words(self) -> &'static str {
        match self {
            Paper::Discharge => "the hospital's discharge list",
            Paper::Printout => "a clinic's printout",
            Paper::Bottles => "the bottles on the table",
            Paper::Other => "another list",
        }
    }
}

impl Paper {
    fn short(self) -> &'static str {
        match self {
            Paper::Discharge => "discharge list",
            Paper::Printout => "clinic printout",
            Paper::Bottles => "bottles on the table",
            Paper::Other => "list",
        }
    }
}

impl fmt::Display for Paper {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum ListState {
    Open,
    Finished,
    /// Entered by mistake.
    Struck,
}

#[derive(Clone, Debug, PartialEq)]
pub struct SecondList {
    pub id: SecondListId,
    pub person_id: PersonId,
    pub paper: Paper,
    pub dated_on: Date,
    /// Whose list it is.
    pub source: Line,
    /// The birth date that stands on it, where it has one.
    pub born: Option<Date>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub state: ListState,
    pub finished_on: Option<Date>,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(SecondList as "second_list" {
    paper: "kind", dated_on: "date", source: "source", born: "birth date on it", entered_by: "", entered_at: "",
    state: "", finished_on: "", struck_reason: "reason",
} skip { id, person_id, version });

impl SecondList {
    /// "discharge list of 24 November 2026, Lakeside Hospital": the source of what is accepted.
    pub fn title(&self) -> String {
        format!("{} of {}, {}", self.paper.short(), day::words(self.dated_on), self.source)
    }

    pub fn opened_at(self, version: i64) -> Result<SecondList> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn is_open(&self) -> bool {
        self.state == ListState::Open
    }

    pub fn is_struck(&self) -> bool {
        self.state == ListState::Struck
    }

    pub fn finished_day(&self) -> Option<String> {
        self.finished_on.map(day::words)
    }

    /// Nothing is finished while a row waits for a decision.
    pub fn finished(&self, waiting: usize, today: Date) -> Result<SecondList> {
        let says = match waiting {
            0 => {
                return Ok(SecondList {
                    state: ListState::Finished,
                    finished_on: Some(today),
                    ..self.clone()
                });
            }
            1 => "One row is still open. Accept it, keep what the record says, or ask.".to_owned(),
            many => format!(
                "{many} rows are still open. Accept each, keep what the record says, or ask."
            ),
        };
        Err(FormErrors::at("rows", says).into())
    }

    pub fn struck(&self, reason: Line) -> SecondList {
        SecondList {
            state: ListState::Struck,
            finished_on: None,
            struck_reason: Some(reason),
            ..self.clone()
        }
    }

    /// Open again: after striking, or when what was accepted is taken back.
    pub fn reopened(&self) -> SecondList {
        SecondList {
            state: ListState::Open,
            finished_on: None,
            struck_reason: None,
            ..self.clone()
        }
    }
}

/// A line: its own words, and how they were understood.
#[derive(Clone, Debug, PartialEq)]
pub struct ListLine {
    pub id: ListLineId,
    pub person_id: PersonId,
    pub list_id: SecondListId,
    pub words: Line,
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub directions: Option<Line>,
    /// The list says that it was stopped.
    pub stopped: bool,
    /// It names no medicine: a heading, a remark.
    pub left_out: bool,
    /// Why it is not understood, until a person has edited it.
    pub unclear: Option<Line>,
    pub version: i64,
}

audited!(ListLine as "second_list_line" {
    list_id: "", words: "words", name: "name", strength: "strength", form: "form",
    directions: "how it is taken", stopped: "stopped", left_out: "left out", unclear: "",
} skip { id, person_id, version });

impl ListLine {
    pub fn new(list: &SecondList, words: Line, it: Understood) -> ListLine {
        let line = |it: Option<String>| it.map(Line::from);
        ListLine {
            id: ListLineId::default(),
            person_id: list.person_id,
            list_id: list.id,
            words,
            name: Line::from(it.name),
            strength: line(it.strength),
            form: line(it.form),
            directions: line(it.directions),
            stopped: it.stopped,
            left_out: false,
            unclear: line(it.unclear),
            version: 1,
        }
    }

    /// Whether a number that was understood does not stand in its words. No reader of lines does
    /// that any more; an earlier one took ".1 mg" for "1 mg". What a person typed is no misreading.
    pub fn is_misread(&self) -> bool {
        let parts = [Some(&self.name), self.strength.as_ref(), self.directions.as_ref()];
        let parts: Vec<_> = parts.into_iter().flatten().map(Line::as_str).collect();
        self.version == 1 && !lines::has_numbers(self.words.as_str(), &parts.join(" "))
    }

    /// Why nothing of it can be accepted, where that is so.
    pub fn unclear(&self) -> Option<String> {
        let misread = || {
            let says = "A number of it was read otherwise than it is written. Edit the line as the paper has it";
            self.is_misread().then(|| says.to_owned())
        };
        self.unclear.as_ref().map(Line::to_string).or_else(misread)
    }

    /// What has been misread in lines like it: "written \".5 mg\": usually means 0.5 mg".
    pub fn error_prone(&self) -> Vec<String> {
        let found = abbreviations::find(self.words.as_str()).into_iter();
        found.map(|it| format!("written \"{}\": usually means {}", it.typed, it.means)).collect()
    }

    pub fn opened_at(self, version: i64) -> Result<ListLine> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn understood(&self) -> Understood {
        let text = |it: &Option<Line>| it.as_ref().map(Line::to_string);
        Understood {
            name: self.name.to_string(),
            strength: text(&self.strength),
            form: text(&self.form),
            directions: text(&self.directions),
            stopped: self.stopped,
            unclear: self.unclear(),
        }
    }

    /// "Furosemide 40 mg tablet", as it was understood.
    pub fn title(&self) -> String {
        let strength = self.strength.as_ref().map(|it| it.as_str().replace(' ', "\u{a0}"));
        let parts =
            [Some(self.name.as_str()), strength.as_deref(), self.form.as_ref().map(Line::as_str)];
        parts.into_iter().flatten().collect::<Vec<_>>().join(" ")
    }
}
