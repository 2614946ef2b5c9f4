//! The pages of a death: entered with a second question, and taken back.

use super::{
    super::{
        form::{Told, Undone},
        model::Person,
        store,
    },
    may_enter, may_take_back,
};
use crate::base::day;
use crate::platform::{
    auth::{
        area::Essentials,
        grant::{Change, Grant},
    },
    db::Done,
    error::{Error, Result},
    web::{form::Form, page::Page, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::response::{IntoResponse, Response};

type Changing = Grant<Change<Essentials>>;

fn allowed(yes: bool) -> Result<()> {
    if yes { Ok(()) } else { Err(Error::Forbidden) }
}

#[derive(Template, WebTemplate)]
#[template(path = "people/died.html")]
pub struct DiedPage {
    page: Page,
    typed: Typed,
    person: Person,
    /// What was told, when it is asked a second time.
    asked: Option<Told>,
}

impl DiedPage {
    fn on(&self) -> String {
        self.asked.as_ref().map(|it| day::words(it.on)).unwrap_or_default()
    }
}

pub async fn entering(grant: Changing, typed: Typed) -> Result<DiedPage> {
    allowed(may_enter(grant.role()))?;
    let person = store::find(&grant.view().await?).await?;
    Ok(DiedPage { page: grant.page("A death"), typed, person, asked: None })
}

/// The first press is answered with what will happen, the second is kept.
pub async fn enter(grant: Changing, form: Form<Told>) -> Result<Response> {
    allowed(may_enter(grant.role()))?;
    let told = form.parse()?;
    if !told.sure {
        let person = store::find(&grant.view().await?).await?.opened_at(told.version)?;
        person.died(&told, grant.member(), grant.today())?;
        let (page, typed) = (grant.page("A death"), Typed::default());
        return Ok(DiedPage { page, typed, person, asked: Some(told) }.into_response());
    }
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(told.version)?;
    let after = before.died(&told, write.member(), grant.today())?;
    store::save(&mut write, &before, &after).await?;
    let line = format!("The record now says that {} has died", after.name);
    write.commit().await?.then(urls::person()).saying(line).map(IntoResponse::into_response)
}

#[derive(Template, WebTemplate)]
#[template(path = "people/lives.html")]
pub struct LivesPage {
    page: Page,
    typed: Typed,
    person: Person,
}

pub async fn taking_back(grant: Changing, typed: Typed) -> Result<LivesPage> {
    allowed(may_take_back(grant.role()))?;
    let person = store::find(&grant.view().await?).await?;
    Ok(LivesPage { page: grant.page("Take the death back"), typed, person })
}

pub async fn take_back(grant: Changing, form: Form<Undone>) -> Done {
    allowed(may_take_back(grant.role()))?;
    let mistake = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(mistake.version)?;
    let after = if before.is_living() { before.clone() } else { before.lives(mistake.reason) };
    store::save(&mut write, &before, &after).await?;
    let line = format!("The record no longer says that {} has died", after.name);
    write.commit().await?.then(urls::person()).saying(line)
}
