//! Contacts to be saved in a phone: the card of one, and the cards of all that are listed.
//!
//! The names of the files say nothing of anyone: they stay behind in a folder of downloads.

use super::{card::Card, model::Contact, store};
use crate::base::ids::ContactId;
use crate::platform::{
    auth::{
        area::Essentials,
        grant::{Grant, See},
    },
    db::View,
    error::{Error, Result},
    web::path::At,
};
use axum::{
    http::header,
    response::{IntoResponse, Response},
};

type Seeing = Grant<See<Essentials>>;

pub async fn one(grant: Seeing, At(id): At<ContactId>) -> Result<Response> {
    let view = grant.view().await?;
    let contact = store::find(&view, id).await?;
    if contact.struck {
        return Err(Error::NotFound);
    }
    Ok(file(&format!("contact-{id}.vcf"), card(&grant, &view, &contact).await?))
}

pub async fn all(grant: Seeing) -> Result<Response> {
    let view = grant.view().await?;
    let mut cards = String::new();
    for contact in store::list(&view).await? {
        cards.push_str(&card(&grant, &view, &contact).await?);
    }
    Ok(file("contacts.vcf", cards))
}

async fn card(grant: &Seeing, view: &View<Essentials>, contact: &Contact) -> Result<String> {
    let touch = view.last_change("contact", contact.id.into()).await?;
    let house = grant.house().config.base().absolute("");
    // A phone may be anywhere, so the hours always name their place.
    let zone = contact.zone(grant.zone());
    let card = Card {
        contact,
        house: &house,
        revised: touch.map_or(grant.now(), |it| it.at),
        hours: contact.hours.as_ref().map(|it| it.at(zone)),
    };
    Ok(card.text())
}

fn file(name: &str, cards: String) -> Response {
    let kind = (header::CONTENT_TYPE, "text/vcard; charset=utf-8".to_owned());
    let named = (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\""));
    ([kind, named], cards).into_response()
}
