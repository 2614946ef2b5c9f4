//! The pairs of names that the family confirmed to be of one ingredient; each can be taken back.

use super::{pages::shown, settled::SameIngredient, settled_store};
use crate::{
    base::ids::SameIngredientId,
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant, See},
        },
        db::Done,
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/pairs.html")]
pub struct PairsPage {
    page: Page,
    rows: Vec<Row>,
    may_change: bool,
}

/// A pair with who confirmed it.
struct Row {
    pair: SameIngredient,
    by: String,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<PairsPage> {
    shown(grant.role())?;
    let view = grant.view().await?;
    let names = view.names().await?;
    let pairs = settled_store::pairs(&view).await?.into_iter().filter(|it| it.standing);
    let row = |pair: SameIngredient| Row { by: names.of(pair.confirmed_by).to_owned(), pair };
    let page = grant.page("Names of one ingredient");
    Ok(PairsPage {
        page,
        rows: pairs.map(row).collect(),
        may_change: grant.may::<Change<Clinical>>(),
    })
}

pub async fn take_back(grant: Grant<Change<Clinical>>, At(id): At<SameIngredientId>) -> Done {
    let mut write = grant.write().await?;
    let pairs = settled_store::pairs(&write).await?;
    let before = pairs.into_iter().find(|it| it.id == id && it.standing).ok_or(Error::NotFound)?;
    let after = SameIngredient { standing: false, ..before.clone() };
    settled_store::save_pair(&mut write, &before, &after).await?;
    let line = format!("{} count as two again", before.title());
    write.commit().await?.then(urls::second_lists().and("pairs")).saying(line)
}
