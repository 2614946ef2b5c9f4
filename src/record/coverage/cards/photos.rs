//! The photos of a card: both sides as they were sent, and the new one of a new year.

use super::{
    super::{noted::noted, pages::Changing},
    form::{Photographed, arrived},
    model::Card,
    store,
};
use crate::base::ids::CardId;
use crate::platform::{
    auth::{
        area::Papers,
        grant::{Grant, See},
    },
    db::Done,
    error::{Error, Result},
    web::{form::Form, page::Page, path::At, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    http::header,
    response::{IntoResponse, Response},
};

type Seeing = Grant<See<Papers>>;

pub async fn front(grant: Seeing, At(id): At<CardId>) -> Result<Response> {
    side(&grant, id, |it| Some(it.front)).await
}

pub async fn back(grant: Seeing, At(id): At<CardId>) -> Result<Response> {
    side(&grant, id, |it| it.back).await
}

/// One side, under a name of our own; asked for by itself, it is noted like the page that shows it.
async fn side(grant: &Seeing, id: CardId, of: impl Fn(Card) -> Option<String>) -> Result<Response> {
    let view = grant.view().await?;
    let sum = of(store::find(&view, id).await?).ok_or(Error::NotFound)?;
    let photo = grant.house().files.open(&sum).await?;
    noted(grant, &view, ("opened the card", "card", id.into())).await;
    Ok(([(header::CONTENT_TYPE, photo.media)], photo.bytes).into_response())
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/photograph.html")]
pub struct PhotographPage {
    page: Page,
    typed: Typed,
    kept: Card,
}

pub async fn photographing(
    grant: Changing,
    At(id): At<CardId>,
    typed: Typed,
) -> Result<PhotographPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("Photograph the new one: {}", kept.title));
    Ok(PhotographPage { page, typed, kept })
}

pub async fn photograph(grant: Changing, At(id): At<CardId>, form: Form<Photographed>) -> Done {
    let Photographed { sides, expires_on, version } = form.parse()?;
    let sides = arrived(&grant.house().files, sides).await?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let by = (write.member(), grant.today());
    let after = before.photographed((sides, expires_on), by);
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::card(id)).saying("The new card is kept")
}
