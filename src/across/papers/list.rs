//! What is filed, by kind or by date. What a newer version replaced stands apart, and is found too.

use super::{
    Seeing,
    row::{Row, Senders},
};
use crate::{
    platform::{
        auth::{area::Papers, grant::Change},
        error::Result,
        web::{form::Choice, page::Page, urls},
    },
    record::papers::{kind::Kind, lapse::Lapse, store},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

#[derive(Template, WebTemplate)]
#[template(path = "papers/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    by_date: bool,
    waiting: usize,
    /// Those that have lapsed or will soon, first.
    lapsing: Vec<Row>,
    groups: Vec<(String, Vec<Row>)>,
    replaced: Vec<Row>,
}

/// In which order.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    by: String,
}

pub async fn list(grant: Seeing, Query(asked): Query<Asked>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, senders) = (grant.page("Papers"), Senders::read(&view).await?);
    let all = store::filed(&view).await?;
    let lapsing = all.iter().filter(|it| it.lapse(grant.today()).is_some()).cloned();
    let mut lapsing: Vec<_> = lapsing.collect();
    lapsing.sort_by_key(|it| (it.lapse(grant.today()) == Some(Lapse::Over), it.expires_on));
    let row = |it| Row::of(it, &senders, &page);
    let lapsing = lapsing.into_iter().map(row).collect();
    let (standing, replaced): (Vec<_>, Vec<_>) = all.into_iter().partition(|it| it.stands());
    let by_date = asked.by == "date";
    let standing: Vec<Row> = standing.into_iter().map(row).collect();
    Ok(ListPage {
        may_change: grant.may::<Change<Papers>>(),
        waiting: store::waiting(&view).await?.len(),
        groups: if by_date { by_year(standing, &page) } else { by_kind(standing) },
        replaced: replaced.into_iter().map(row).collect(),
        lapsing,
        by_date,
        page,
    })
}

/// Under each kind by title.
fn by_kind(mut rows: Vec<Row>) -> Vec<(String, Vec<Row>)> {
    rows.sort_by_key(|it| it.paper.title().to_lowercase());
    let mut groups: Vec<(String, Vec<Row>)> =
        Kind::ALL.iter().map(|it| (capital(it.words()), Vec::new())).collect();
    for row in rows {
        let at = Kind::ALL.iter().position(|it| row.paper.kind == Some(*it));
        groups[at.unwrap_or(Kind::ALL.len() - 1)].1.push(row);
    }
    groups.retain(|it| !it.1.is_empty());
    groups
}

/// Under each year by the date on the paper, the newest first; one without a date by the day it was
/// filed.
fn by_year(mut rows: Vec<Row>, page: &Page) -> Vec<(String, Vec<Row>)> {
    let day =
        |it: &Row| it.paper.dated_on.or_else(|| it.paper.filed_at.map(|at| page.local().day(at)));
    rows.sort_by_key(|it| std::cmp::Reverse((day(it), it.paper.id)));
    let mut groups: Vec<(String, Vec<Row>)> = Vec::new();
    for row in rows {
        let year = day(&row).map(|it| it.year().to_string()).unwrap_or_default();
        match groups.last_mut() {
            Some((last, rows)) if *last == year => rows.push(row),
            _ => groups.push((year, vec![row])),
        }
    }
    groups
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|it| it.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
