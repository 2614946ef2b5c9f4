//! The page of what does not agree; what a save has just made so stands in front.

use super::{
    question::asked,
    read::{Side, Sources, written},
    rows::Row,
};
use crate::{
    across::reconciliation,
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant, See},
        },
        error::Result,
        web::{page::Page, urls},
    },
    record::questions::{
        model::Question,
        store::{self as questions, Wanted},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

#[derive(Template, WebTemplate)]
#[template(path = "disagreements/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    /// What was just saved made these so.
    new: Vec<Shown>,
    rows: Vec<Shown>,
    /// Medicines without a word on what they are for.
    silent: Vec<Shown>,
}

/// A row with where its sides come from, and the question that stands about it.
struct Shown {
    key: String,
    headline: String,
    sides: [Side; 2],
    asked: Option<Question>,
}

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Marked {
    new: String,
}

pub async fn list(grant: Grant<See<Clinical>>, Query(marked): Query<Marked>) -> Result<ListPage> {
    reconciliation::shown(grant.role())?;
    let view = grant.view().await?;
    let (page, names) = (grant.page("Where records disagree"), view.names().await?);
    let questions = questions::list(&view, &Wanted::default()).await?;
    let sources = Sources { view: &view, page: &page, names: &names };
    let (mut new, mut rows, mut silent) = (Vec::new(), Vec::new(), Vec::new());
    for row in written(&view).await?.rows() {
        let shown = Shown {
            key: row.key(),
            headline: row.headline(),
            sides: sources.sides(&row).await?,
            asked: asked(&row, &questions).cloned(),
        };
        let of = match row {
            Row::ForNothing { .. } => &mut silent,
            _ if marked.new.split(' ').any(|it| it == shown.key) => &mut new,
            _ => &mut rows,
        };
        of.push(shown);
    }
    Ok(ListPage { may_change: grant.may::<Change<Clinical>>(), page, new, rows, silent })
}
