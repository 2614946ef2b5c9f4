//! The sheet before a visit: who, when, with whom; what changed since the last visit with this very
//! clinician; the questions in their order with room to write below each; what is overdue.
//!
//! It says what is written down and draws nothing from it. What the one who prints does not see is
//! not on it; an area that she does not see at all is named as not listed. Of what was noticed only
//! that stands here which was ticked for this visit.

mod changes;
mod earlier;
mod occasion;
pub mod pages;

use super::{
    emergency::Allergies,
    medicines::{Ground, Head},
};
use crate::platform::{auth::area::Clinical, db::View, error::Result};
use occasion::Occasion;
pub use occasion::Which;
use serde::Serialize;
use time::Date;

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: &'static str,
    pub person: Head,
    /// When, with whom, where, who goes along.
    pub lines: Vec<String>,
    /// "Since the visit with Dr Lind on 3 March 2026"
    pub since: String,
    pub parts: Vec<Part>,
    pub questions: Questions,
    pub overdue: Part,
    pub allergies: Allergies,
    /// Where the whole list is.
    pub medicines: String,
}

/// One block of the sheet; its sentence stands where there is nothing else to say.
#[derive(Serialize)]
pub struct Part {
    pub title: &'static str,
    pub sentence: Option<String>,
    pub notice: Option<String>,
    pub items: Vec<Item>,
}

#[derive(Serialize)]
pub struct Item {
    pub head: String,
    pub lines: Vec<String>,
}

#[derive(Serialize)]
pub struct Questions {
    pub title: &'static str,
    pub sentence: Option<String>,
    pub items: Vec<Asked>,
}

#[derive(Serialize)]
pub struct Asked {
    pub words: String,
    /// Who will ask, or that it was asked and has no answer.
    pub says: String,
}

/// Who prints the sheet, and on which day.
pub struct Reader {
    pub name: String,
    pub today: Date,
}

impl Part {
    fn of(title: &'static str, none: String, items: Vec<Item>) -> Part {
        let sentence = items.is_empty().then_some(none);
        Part { title, sentence, notice: None, items }
    }

    /// In place of an area that the reader does not see.
    fn closed(title: &'static str, reader: &str) -> Part {
        let says = format!("Not listed here: {reader} does not see this.");
        Part { title, sentence: Some(says), notice: None, items: Vec::new() }
    }
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Clinical>, which: &Which, reader: &Reader) -> Result<Facts> {
        let ground = Ground::read(view).await?;
        let occasion = Occasion::read(view, which, reader.today).await?;
        let (asked, overdue) = occasion.open(view, reader).await?;
        let mut parts = vec![
            changes::medicines(view, &occasion).await?,
            changes::illnesses(view, &occasion, &ground).await?,
            changes::noticed(view, &occasion, reader).await?,
        ];
        parts.extend(changes::papers(view, &occasion).await?);
        Ok(Facts {
            paper: ground.paper(),
            lang: "en",
            title: "Before the visit",
            lines: occasion.lines(),
            since: occasion.since_words(),
            parts,
            questions: asked,
            overdue,
            allergies: ground.allergies(view, &reader.name).await?,
            medicines: ground.reference(),
            person: ground.head(),
        })
    }
}
