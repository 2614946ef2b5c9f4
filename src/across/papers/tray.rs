//! The tray: what waits, how much of it, and on request by which day it would be sorted at so many a day.

use super::{
    Seeing,
    alike::found::Finder,
    words::propose::{Proposal, Proposer},
};
use crate::{
    base::day,
    platform::{
        auth::{area::Papers, grant::Change},
        error::Result,
        web::{page::Page, urls},
    },
    record::papers::{
        lapse::{A_DAY, sorted_by},
        model::Paper,
        page::PaperPage,
        page_store, store,
        text::PaperText,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

/// A paper that waits: its first page, and who sent it.
pub struct Row {
    paper: Paper,
    first: Option<PaperPage>,
    by: String,
    /// What its words propose, or else why they do not: they are still to be read, or could not be.
    proposal: Option<Proposal>,
    unread: Option<String>,
    /// What it looks like, the nearest first.
    alike: Vec<Paper>,
}

#[derive(Template, WebTemplate)]
#[template(path = "papers/tray.html")]
pub struct TrayPage {
    page: Page,
    may_change: bool,
    rows: Vec<Row>,
    filed_today: usize,
    a_day: String,
    /// The day on which the last one would be filed; or that what was typed is no number.
    aim: Option<std::result::Result<String, String>>,
}

/// So many a day.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    a_day: Option<String>,
}

impl TrayPage {
    /// Single keys, what each does, and to what.
    fn keys(&self) -> &'static [(&'static str, &'static str, &'static str)] {
        &[("f", "begins with the first of them", "file-first")]
    }
}

pub async fn show(grant: Seeing, Query(asked): Query<Asked>) -> Result<TrayPage> {
    let others = grant.others().await?;
    let view = grant.view().await?;
    let (page, names) = (grant.page("Tray"), view.names().await?);
    let waiting = page_store::first_of(&view, store::waiting(&view).await?).await?.into_iter();
    let proposer = Proposer::read(&view, others, grant.today()).await?;
    let mut finder = Finder::read(&view).await?;
    let mut rows: Vec<Row> = Vec::new();
    for (paper, first) in waiting {
        rows.push(Row {
            by: names.of(paper.sent_by).to_owned(),
            proposal: proposer.of(&paper),
            unread: proposer.text(paper.id).and_then(PaperText::unread),
            alike: finder.named(&view, paper.id).await?,
            paper,
            first,
        });
    }
    let filed = store::filed(&view).await?.into_iter().filter_map(|it| it.filed_at);
    let filed_today = filed.filter(|at| grant.zone().day(*at) == grant.today()).count();
    let aim = asked.a_day.as_ref().map(|typed| match a_day(typed) {
        Some(many) => Ok(day::short_words(sorted_by(rows.len(), many, filed_today, grant.today()))),
        None => Err(typed.clone()),
    });
    Ok(TrayPage {
        may_change: grant.may::<Change<Papers>>(),
        a_day: asked.a_day.unwrap_or_else(|| A_DAY.to_string()),
        rows,
        filed_today,
        aim,
        page,
    })
}

/// A number of papers that someone could file on one day.
fn a_day(typed: &str) -> Option<usize> {
    typed.trim().parse().ok().filter(|it| (1..=500).contains(it))
}

#[cfg(test)]
mod tests {
    use super::a_day;

    #[test]
    fn only_a_number_of_papers_is_taken() {
        assert_eq!(a_day(" 15 "), Some(15));
        for typed in ["", "0", "-3", "501", "1e3", "fifteen"] {
            assert_eq!(a_day(typed), None, "{typed}");
        }
    }
}
