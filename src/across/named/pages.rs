//! The page of all places of a contact, and the same after a number was changed.

use super::places::{self, Place};
use crate::{
    across::search::by_words::{self, Standing},
    base::{ids::ContactId, text::Phone},
    platform::{
        auth::{
            area::Essentials,
            grant::{Grant, See},
        },
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
    record::contacts::{model::Contact, store},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

#[derive(Template, WebTemplate)]
#[template(path = "named/show.html")]
pub struct NamedPage {
    page: Page,
    contact: Contact,
    /// A number that is hers no more.
    before: Option<String>,
    chosen: Vec<Place>,
    /// A number or the name, and where it stands in words.
    words: Vec<(String, Standing)>,
}

pub async fn show(grant: Grant<See<Essentials>>, At(id): At<ContactId>) -> Result<NamedPage> {
    named(grant, id, None).await
}

pub async fn changed(
    grant: Grant<See<Essentials>>,
    At(id): At<ContactId>,
    Path((_, _, number)): Path<(String, String, String)>,
) -> Result<NamedPage> {
    let number = Phone::parse(&number).ok_or(Error::NotFound)?;
    named(grant, id, Some(number.groups())).await
}

async fn named(
    grant: Grant<See<Essentials>>,
    id: ContactId,
    before: Option<String>,
) -> Result<NamedPage> {
    let view = grant.view().await?;
    let contact = store::find(&view, id).await?;
    let asked: Vec<String> = match &before {
        Some(number) => vec![number.clone()],
        None => {
            let phones = contact.phones().map(Phone::groups);
            [contact.name.to_string()].into_iter().chain(phones).collect()
        }
    };
    let mut words = Vec::new();
    for it in asked {
        let standing = by_words::standing(&grant, &view, &it, ("contact", id.into())).await?;
        words.push((it, standing));
    }
    let chosen = if before.is_none() { places::of(&view, id).await? } else { Vec::new() };
    let page = grant.page(format!("Where {} stands", contact.name));
    Ok(NamedPage { page, contact, before, chosen, words })
}
