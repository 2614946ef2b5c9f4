//! Coverage at one look: what was refused and stands, the covers that hold, the cards.

use super::titles::Medicines;
use crate::{
    platform::{
        auth::{
            area::{Clinical, Papers},
            grant::{Change, Grant, See},
        },
        error::Result,
        web::{page::Page, urls},
    },
    record::coverage::{
        cards::{model::Card, store as cards},
        model::Cover,
        refusals::{model::Refusal, store as refusals},
        store as covers,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "coverage/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    /// Whether refusals are there for the reader.
    has_refusals: bool,
    refused: Vec<Row>,
    covers: Vec<Cover>,
    /// Over, not begun yet, or struck.
    others: Vec<Cover>,
    cards: Vec<Card>,
}

/// A refusal as a line of a list.
pub struct Row {
    pub title: String,
    pub refusal: Refusal,
}

impl Row {
    pub fn of(refusal: Refusal, medicines: &Medicines) -> Row {
        Row { title: medicines.title(&refusal), refusal }
    }
}

pub async fn list(grant: Grant<See<Papers>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (medicines, today) = (Medicines::read(&view).await?, grant.today());
    let refused = refusals::standing(&view).await?.into_iter();
    let refused = refused.map(|it| Row::of(it, &medicines)).collect();
    let all = covers::list(&view).await?.into_iter();
    let (covers, others) = all.partition(|it| it.holds_on(today));
    Ok(ListPage {
        page: grant.page("Coverage"),
        may_change: grant.may::<Change<Papers>>(),
        has_refusals: grant.may::<See<Clinical>>(),
        refused,
        covers,
        others,
        cards: cards::standing(&view).await?,
    })
}
