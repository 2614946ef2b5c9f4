//! Finding a paper by the words on it, and what was not read.

use super::super::Seeing;
use crate::{
    base::text::first_words,
    platform::{
        auth::{area::Members, grant::Change},
        error::Result,
        web::{page::Page, urls},
    },
    record::papers::{
        model::Paper,
        store,
        text::{self, store as texts},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

/// A paper with one of its lines, or with why it was not read.
pub struct Row {
    paper: Paper,
    line: String,
}

#[derive(Template, WebTemplate)]
#[template(path = "papers/words/find.html")]
pub struct FindPage {
    page: Page,
    asked: String,
    /// Nothing was asked for: none.
    found: Option<Vec<Row>>,
    not_read: Vec<Row>,
    read: usize,
    waiting: usize,
    /// A program that is not there, and whether the reader can do something about it.
    missing: Option<&'static str>,
    decides: bool,
}

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    words: String,
}

/// So much of a line is shown.
const LINE: usize = 90;

pub async fn show(grant: Seeing, Query(asked): Query<Asked>) -> Result<FindPage> {
    let view = grant.view().await?;
    let papers = [store::filed(&view).await?, store::waiting(&view).await?].concat();
    let mut texts = texts::of(&view, &papers).await?;
    let all: Vec<_> =
        papers.into_iter().filter_map(|it| Some((texts.remove(&it.id)?, it))).collect();
    let asked = first_words(asked.words.trim(), 200);
    let not_read = all.iter().filter_map(|(text, paper)| {
        Some(Row { paper: paper.clone(), line: text.not_read.clone()? })
    });
    let found =
        all.iter().filter(|(text, _)| text::has(&text.words, &asked)).map(|(text, paper)| {
            let line = text::line_with(&text.words, &asked).unwrap_or_default();
            Row { paper: paper.clone(), line: first_words(line, LINE) }
        });
    Ok(FindPage {
        page: grant.page("Words on papers"),
        found: (!asked.is_empty()).then(|| found.collect()),
        not_read: not_read.collect(),
        read: all.iter().filter(|(text, _)| text.is_whole() && text.not_read.is_none()).count(),
        waiting: all.iter().filter(|(text, _)| !text.is_whole()).count(),
        missing: grant.house().ocr.missing(),
        decides: grant.may::<Change<Members>>(),
        asked,
    })
}
