//! What was not read of the papers, and why; how many were, and how many wait.

use super::super::Seeing;
use crate::{
    platform::{
        auth::{
            area::{Members, Papers},
            grant::Change,
        },
        error::Result,
        web::{page::Page, urls},
    },
    record::papers::{model::Paper, store, text::store as texts},
};
use askama::Template;
use askama_web::WebTemplate;

/// A paper with why it was not read.
pub struct Row {
    paper: Paper,
    why: String,
}

#[derive(Template, WebTemplate)]
#[template(path = "papers/words/unread.html")]
pub struct UnreadPage {
    page: Page,
    not_read: Vec<Row>,
    read: usize,
    waiting: usize,
    /// A program that is not there, and whether the reader can do something about it.
    missing: Option<&'static str>,
    decides: bool,
    may_change: bool,
}

pub async fn show(grant: Seeing) -> Result<UnreadPage> {
    let view = grant.view().await?;
    let papers = [store::filed(&view).await?, store::waiting(&view).await?].concat();
    let mut texts = texts::of(&view, &papers).await?;
    let all: Vec<_> =
        papers.into_iter().filter_map(|it| Some((texts.remove(&it.id)?, it))).collect();
    let not_read = all.iter().filter_map(|(text, paper)| {
        Some(Row { paper: paper.clone(), why: text.not_read.clone()? })
    });
    Ok(UnreadPage {
        page: grant.page("What was read"),
        not_read: not_read.collect(),
        read: all.iter().filter(|(text, _)| text.is_whole() && text.not_read.is_none()).count(),
        waiting: all.iter().filter(|(text, _)| !text.is_whole()).count(),
        missing: grant.house().ocr.missing(),
        may_change: grant.may::<Change<Papers>>(),
        decides: grant.may::<Change<Members>>(),
    })
}
