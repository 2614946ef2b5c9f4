//! What is done to an operation: struck, brought back, checked.
//!
//! Each has a page that asks what must be known, and posts to itself.

use super::{
    form::{Against, Mistake, Those},
    model::Operation,
    store,
};
use crate::base::ids::OperationId;
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::{Done, Write},
    error::Result,
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

/// What one of these pages asks for.
#[derive(PartialEq)]
enum Asks {
    Reason,
    Against,
    Nothing,
}

#[derive(Template, WebTemplate)]
#[template(path = "operations/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    operation: Operation,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: OperationId,
    typed: Typed,
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> Result<ActPage> {
    let operation = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", operation.name));
    Ok(ActPage { page, typed, operation, asks, verb, explains })
}

pub async fn striking(grant: Changing, At(id): At<OperationId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for an entry that was a mistake: it leaves the list and the sheets. The history keeps it, and it can be brought back from there.";
    act(&grant, id, typed, ("Strike", Asks::Reason), explains).await
}

pub async fn strike(grant: Changing, At(id): At<OperationId>, form: Form<Mistake>) -> Done {
    let mistake = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(mistake.version)?;
    keep(write, &before, &before.struck(mistake.reason), "was struck").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<OperationId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It stands on the list and on the sheets again.";
    act(&grant, id, typed, ("Bring back", Asks::Nothing), explains).await
}

pub async fn bring_back(grant: Changing, At(id): At<OperationId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.brought_back(), "is on the list again").await
}

pub async fn checking(grant: Changing, At(id): At<OperationId>, typed: Typed) -> Result<ActPage> {
    let explains = "Compare each line with the letter or the card in your hand. If something differs, edit it first.";
    act(&grant, id, typed, ("Check", Asks::Against), explains).await
}

pub async fn check(grant: Changing, At(id): At<OperationId>, form: Form<Against>) -> Done {
    let Against { against, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.checked(write.check(against));
    keep(write, &before, &after, "is checked").await
}

async fn keep(mut write: Write<Clinical>, old: &Operation, new: &Operation, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    let line = format!("{} {says}", new.name);
    write.commit().await?.then(urls::operation(new.id)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "operations/check.html")]
pub struct CheckAllPage {
    page: Page,
    typed: Typed,
    listed: Vec<Operation>,
}

pub async fn checking_all(grant: Changing, typed: Typed) -> Result<CheckAllPage> {
    let listed = store::list(&grant.view().await?).await?;
    Ok(CheckAllPage { page: grant.page("Check the list"), typed, listed })
}

/// Checks what stood on the page: one that was added or changed since is not checked by this.
pub async fn check_all(grant: Changing, form: Form<Those>) -> Done {
    let those = form.parse()?;
    let mut write = grant.write().await?;
    let check = write.check(those.against);
    for (id, version) in &those.opened {
        let before = store::find(&write, *id).await?.opened_at(*version)?;
        store::save(&mut write, &before, &before.checked(check.clone())).await?;
    }
    let line = format!("Checked {} on the list", those.opened.len());
    write.commit().await?.then(urls::operations()).saying(line)
}
