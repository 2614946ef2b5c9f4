//! What is done to an entry: struck, brought back, checked. Holds and stops are `turns`.
//!
//! Each has a page that asks what must be known, and posts to itself.

use super::{
    form::{Against, Mistake, Those},
    model::Medicine,
    store,
};
use crate::base::ids::MedicineId;
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
#[template(path = "medicines/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: MedicineId,
    typed: Typed,
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> Result<ActPage> {
    let medicine = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", medicine.name));
    Ok(ActPage { page, typed, medicine, asks, verb, explains })
}

pub async fn striking(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for an entry that was a mistake: it leaves every list. The history keeps it, and it can be brought back from there.";
    act(&grant, id, typed, ("Strike", Asks::Reason), explains).await
}

pub async fn strike(grant: Changing, At(id): At<MedicineId>, form: Form<Mistake>) -> Done {
    let mistake = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(mistake.version)?;
    let after = before.struck(mistake.reason, grant.today());
    keep(write, &before, &after, "was struck").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<MedicineId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It stands on the list of what is taken again.";
    act(&grant, id, typed, ("Bring back", Asks::Nothing), explains).await
}

pub async fn bring_back(grant: Changing, At(id): At<MedicineId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.brought_back(), "is on the list again").await
}

pub async fn checking(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<ActPage> {
    let explains = "Compare each line with the label or list in your hand. If something differs, edit it first.";
    act(&grant, id, typed, ("Check", Asks::Against), explains).await
}

pub async fn check(grant: Changing, At(id): At<MedicineId>, form: Form<Against>) -> Done {
    let Against { against, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.checked(write.check(against));
    keep(write, &before, &after, "is checked").await
}

async fn keep(mut write: Write<Clinical>, old: &Medicine, new: &Medicine, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    let line = format!("{} {says}", new.name);
    write.commit().await?.then(urls::medicine(new.id)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/check.html")]
pub struct CheckAllPage {
    page: Page,
    typed: Typed,
    current: Vec<Medicine>,
}

pub async fn checking_all(grant: Changing, typed: Typed) -> Result<CheckAllPage> {
    let mut current = store::list(&grant.view().await?).await?;
    current.retain(Medicine::is_current);
    Ok(CheckAllPage { page: grant.page("Check the list"), typed, current })
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
    let line = format!("Checked {} medicines", those.opened.len());
    write.commit().await?.then(urls::medicines()).saying(line)
}
