//! An answer that was written down by mistake is struck, and can be brought back.

use super::{super::places::pages::Changing, form::Mistake, model::Answer, store};
use crate::base::ids::AnswerId;
use crate::platform::{
    auth::area::Members,
    db::{Done, Write},
    error::Result,
    web::{
        form::{Form, FormErrors, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "answers/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    answer: Answer,
    verb: &'static str,
    explains: &'static str,
    asks_why: bool,
}

pub async fn striking(grant: Changing, At(id): At<AnswerId>, typed: Typed) -> Result<ActPage> {
    let answer = store::find(&grant.view().await?, id).await?;
    let explains = "Only for what was written down by mistake. Where the answer is another one now, ask again instead: then both stay.";
    let page = grant.page("Strike an answer");
    Ok(ActPage { page, typed, answer, verb: "Strike", explains, asks_why: true })
}

pub async fn strike(grant: Changing, At(id): At<AnswerId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    keep(write, &before, &before.struck(reason), "The answer was struck").await
}

pub async fn bringing_back(grant: Changing, At(id): At<AnswerId>, typed: Typed) -> Result<ActPage> {
    let answer = store::find(&grant.view().await?, id).await?;
    let explains = "It stands again as it was written down.";
    let page = grant.page("Bring back an answer");
    Ok(ActPage { page, typed, answer, verb: "Bring back", explains, asks_why: false })
}

pub async fn bring_back(grant: Changing, At(id): At<AnswerId>, form: Form<Press>) -> Done {
    let version = form.parse()?.version;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.brought_back();
    let anew = |it: &Answer| it.id != before.id && it.is_asked_anew_in(&after);
    if store::list(&write).await?.iter().any(anew) {
        let says = "The same was asked since, and that answer stands. Strike it first.";
        return Err(FormErrors::at("turn", says).into());
    }
    keep(write, &before, &after, "The answer stands again").await
}

async fn keep(mut write: Write<Members>, before: &Answer, after: &Answer, says: &str) -> Done {
    store::save(&mut write, before, after).await?;
    write.commit().await?.then(urls::answer(before.id)).saying(says)
}
