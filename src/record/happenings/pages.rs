//! Noting what happened, putting the words right, and the photo.

use super::{
    form::Told,
    model::{Happening, Noted},
    store,
};
use crate::base::ids::HappeningId;
use crate::platform::{
    auth::{
        area::Log,
        grant::{Change, Grant, See},
    },
    db::Done,
    error::{Error, Result},
    web::{
        form::{Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    http::header,
    response::{IntoResponse, Response},
};

type Changing = Grant<Change<Log>>;

#[derive(Template, WebTemplate)]
#[template(path = "happenings/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Happening>,
}

pub async fn blank(grant: Changing, typed: Typed) -> EditPage {
    EditPage { page: grant.page("What happened?"), typed, kept: None }
}

pub async fn add(grant: Changing, form: Form<Told>) -> Done {
    let noted = form.parse()?.noted;
    let noted = with_its_photo(&grant, noted).await?;
    let mut write = grant.write().await?;
    let by = (write.member(), write.at());
    let new = Happening::new(write.person(), noted, by)?;
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::happening(id)).saying("Kept, with your name and the time")
}

/// A sum that a form names must be one of a photo that was sent.
async fn with_its_photo(grant: &Changing, noted: Noted) -> Result<Noted> {
    match &noted.photo {
        Some(sum) if !grant.house().files.has(sum).await => {
            Err(FormErrors::at("photo", "The photo did not arrive. Choose it again.").into())
        }
        _ => Ok(noted),
    }
}

pub async fn edit(grant: Changing, At(id): At<HappeningId>, typed: Typed) -> Result<EditPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    if !kept.is_of(grant.member()) {
        return Err(Error::Forbidden);
    }
    let page = grant.page("Put the words right");
    Ok(EditPage { page, typed: typed.over(&kept), kept: Some(kept) })
}

pub async fn save(grant: Changing, At(id): At<HappeningId>, form: Form<Told>) -> Done {
    let Told { noted, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.put_right(noted, write.member())?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::happening(id)).saying("The words are put right")
}

/// The photo as it was sent, under a name of our own.
pub async fn photo(grant: Grant<See<Log>>, At(id): At<HappeningId>) -> Result<Response> {
    let happening = store::find(&grant.view().await?, id).await?;
    let photo = grant.house().files.open(&happening.photo.ok_or(Error::NotFound)?).await?;
    Ok(([(header::CONTENT_TYPE, photo.media)], photo.bytes).into_response())
}
