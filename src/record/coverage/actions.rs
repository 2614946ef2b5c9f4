//! What is done to a cover: struck, brought back. Each has a page that posts to itself.

use super::{form::Mistake, model::Cover, pages::Changing, store};
use crate::base::ids::CoverId;
use crate::platform::{
    db::Done,
    error::Result,
    web::{
        form::{Form, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls::{self, Address},
    },
};
use askama::Template;
use askama_web::WebTemplate;

/// The page that asks before something is struck or brought back; of a cover, a card, a refusal or
/// a call about one.
#[derive(Template, WebTemplate)]
#[template(path = "coverage/act.html")]
pub struct ActPage {
    pub page: Page,
    pub typed: Typed,
    pub title: String,
    pub back: Address,
    pub version: i64,
    pub asks_reason: bool,
    pub verb: &'static str,
    pub explains: &'static str,
}

impl ActPage {
    /// With what is struck: its title, its own page, its version.
    pub fn strikes(page: Page, typed: Typed, it: (String, Address, i64)) -> ActPage {
        let (title, back, version) = it;
        let explains = "Only for what was written down by mistake: it leaves the lists. The history keeps it, and it can be brought back from there.";
        let (asks_reason, verb) = (true, "Strike");
        ActPage { page, typed, title, back, version, asks_reason, verb, explains }
    }

    pub fn brings_back(page: Page, typed: Typed, it: (String, Address, i64)) -> ActPage {
        let (title, back, version) = it;
        let explains = "It stands in the lists again as it was.";
        let (asks_reason, verb) = (false, "Bring back");
        ActPage { page, typed, title, back, version, asks_reason, verb, explains }
    }
}

fn shown(it: &Cover) -> (String, Address, i64) {
    (it.title(), urls::cover(it.id), it.version)
}

pub async fn striking(grant: Changing, At(id): At<CoverId>, typed: Typed) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    Ok(ActPage::strikes(grant.page(format!("Strike {}", kept.title())), typed, shown(&kept)))
}

pub async fn strike(grant: Changing, At(id): At<CoverId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::coverage()).saying("Struck; its history keeps it")
}

pub async fn bringing_back(grant: Changing, At(id): At<CoverId>, typed: Typed) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("Bring back {}", kept.title()));
    Ok(ActPage::brings_back(page, typed, shown(&kept)))
}

pub async fn bring_back(grant: Changing, At(id): At<CoverId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::cover(id)).saying("It stands again")
}
