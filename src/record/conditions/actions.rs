//! What is done to a condition: over, struck, brought back, checked.
//!
//! Each has a page that asks what must be known, and posts to itself.

use super::{
    form::{Against, Ended, Mistake, Those},
    model::Condition,
    store,
};
use crate::base::ids::ConditionId;
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
    DayAndWhoSaidSo,
    Reason,
    Against,
    Nothing,
}

#[derive(Template, WebTemplate)]
#[template(path = "conditions/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    condition: Condition,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: ConditionId,
    typed: Typed,
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> Result<ActPage> {
    let condition = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", condition.name));
    let typed = typed.with_day("on", grant.today());
    Ok(ActPage { page, typed, condition, asks, verb, explains })
}

pub async fn ending(grant: Changing, At(id): At<ConditionId>, typed: Typed) -> Result<ActPage> {
    let explains = "It leaves the sheets and stays here under Over. Whether a condition is over is for the clinician to say.";
    act(&grant, id, typed, ("Over", Asks::DayAndWhoSaidSo), explains).await
}

pub async fn end(grant: Changing, At(id): At<ConditionId>, form: Form<Ended>) -> Done {
    let Ended { on, said_by, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.over(on, said_by, grant.today())?;
    keep(write, &before, &after, "is written down as over").await
}

pub async fn striking(grant: Changing, At(id): At<ConditionId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for an entry that was a mistake: it leaves the list and the sheets. The history keeps it, and it can be brought back from there.";
    act(&grant, id, typed, ("Strike", Asks::Reason), explains).await
}

pub async fn strike(grant: Changing, At(id): At<ConditionId>, form: Form<Mistake>) -> Done {
    let mistake = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(mistake.version)?;
    keep(write, &before, &before.struck(mistake.reason), "was struck").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<ConditionId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "What was struck is listed as it was before. What was over stands again, on the list and on the sheets.";
    act(&grant, id, typed, ("Bring back", Asks::Nothing), explains).await
}

pub async fn bring_back(grant: Changing, At(id): At<ConditionId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.brought_back(), "is on the list again").await
}

pub async fn checking(grant: Changing, At(id): At<ConditionId>, typed: Typed) -> Result<ActPage> {
    let explains = "Compare each line with the letter or the summary in your hand. If something differs, edit it first.";
    act(&grant, id, typed, ("Check", Asks::Against), explains).await
}

pub async fn check(grant: Changing, At(id): At<ConditionId>, form: Form<Against>) -> Done {
    let Against { against, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.checked(write.check(against));
    keep(write, &before, &after, "is checked").await
}

async fn keep(mut write: Write<Clinical>, old: &Condition, new: &Condition, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    let line = format!("{} {says}", new.name);
    write.commit().await?.then(urls::condition(new.id)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "conditions/check.html")]
pub struct CheckAllPage {
    page: Page,
    typed: Typed,
    standing: Vec<Condition>,
}

pub async fn checking_all(grant: Changing, typed: Typed) -> Result<CheckAllPage> {
    let mut standing = store::list(&grant.view().await?).await?;
    standing.retain(Condition::is_standing);
    Ok(CheckAllPage { page: grant.page("Check the list"), typed, standing })
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
    write.commit().await?.then(urls::conditions()).saying(line)
}
