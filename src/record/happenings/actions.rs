//! What is done to a happening: struck, brought back. Each has a page that posts to itself.

use super::{form::Mistake, model::Happening, store};
use crate::base::ids::HappeningId;
use crate::platform::{
    auth::{
        area::Log,
        grant::{Change, Grant},
    },
    db::Done,
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

type Changing = Grant<Change<Log>>;

#[derive(Template, WebTemplate)]
#[template(path = "happenings/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    happening: Happening,
    asks_reason: bool,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: HappeningId,
    typed: Typed,
    (verb, asks_reason, explains): (&'static str, bool, &'static str),
) -> Result<ActPage> {
    let happening = hers(grant, store::find(&grant.view().await?, id).await?)?;
    let page = grant.page(format!("{verb}: {}", happening.title()));
    Ok(ActPage { page, typed, happening, asks_reason, verb, explains })
}

/// Her own, or one she decides about.
fn hers(grant: &Changing, happening: Happening) -> Result<Happening> {
    match happening.may_be_struck_by(grant.member(), grant.role()) {
        true => Ok(happening),
        false => Err(Error::Forbidden),
    }
}

pub async fn striking(grant: Changing, At(id): At<HappeningId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for a note that was a mistake: it leaves the lists. The history keeps it, and it can be brought back from there.";
    act(&grant, id, typed, ("Strike", true, explains)).await
}

pub async fn strike(grant: Changing, At(id): At<HappeningId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&grant, store::find(&write, id).await?.opened_at(version)?)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::happenings()).saying("Struck; its history keeps it")
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<HappeningId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It stands in the lists again as it was.";
    act(&grant, id, typed, ("Bring back", false, explains)).await
}

pub async fn bring_back(grant: Changing, At(id): At<HappeningId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&grant, store::find(&write, id).await?.opened_at(press.version)?)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::happening(id)).saying("It stands in the lists again")
}
