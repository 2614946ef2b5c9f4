//! What is done to a note: struck, brought back, read.
//!
//! What came of the visit stays as it was written: a change of a medicine, an answer and a task are
//! put right on their own pages.

use super::{form::Mistake, model::Visit, store};
use crate::base::ids::VisitId;
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant, See},
    },
    db::{Done, Write},
    error::{Error, Result},
    web::{
        form::{Form, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "visits/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    visit: Visit,
    verb: &'static str,
    explains: &'static str,
    asks_reason: bool,
}

async fn act(
    grant: &Changing,
    id: VisitId,
    typed: Typed,
    (verb, asks_reason): (&'static str, bool),
    explains: &'static str,
) -> Result<ActPage> {
    let visit = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", visit.title()));
    Ok(ActPage { page, typed, visit, verb, explains, asks_reason })
}

pub async fn striking(grant: Changing, At(id): At<VisitId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for a note that was a mistake: it leaves the list. What came of it stays: changes of medicines, answers and tasks are put right on their own pages.";
    act(&grant, id, typed, ("Strike", true), explains).await
}

pub async fn strike(grant: Changing, At(id): At<VisitId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    keep(write, &before, &before.struck(reason), "The note was struck").await
}

pub async fn bringing_back(grant: Changing, At(id): At<VisitId>, typed: Typed) -> Result<ActPage> {
    let explains = "It stands among the visits again.";
    act(&grant, id, typed, ("Bring back", false), explains).await
}

pub async fn bring_back(grant: Changing, At(id): At<VisitId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.brought_back(), "The note is back").await
}

async fn keep(mut write: Write<Clinical>, old: &Visit, new: &Visit, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    write.commit().await?.then(urls::visit(new.id)).saying(says)
}

/// By herself only, and only where she was asked to read it: nothing is concluded from opening.
pub async fn read(grant: Grant<See<Clinical>>, At(id): At<VisitId>) -> Done {
    store::find(&grant.view().await?, id).await?;
    let mut write = grant.note().await?;
    let readers = store::readers(&write, id).await?;
    let own = readers.into_iter().find(|it| it.member_id == grant.member());
    let own = own.ok_or(Error::NotFound)?;
    let after = own.read(write.at());
    store::mark_read(&mut write, &own, &after).await?;
    write.commit().await?.then(urls::visit(id)).saying("Noted that you have read this")
}
