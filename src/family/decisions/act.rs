//! What else is done to a decision: looked at again, replaced by another, withdrawn, brought back.
//! Each has a page that posts to itself.

use super::{
    form::{Left, Replaced, Withdrawn},
    model::Decision,
    pages::{Changing, Told},
    store,
};
use crate::base::ids::DecisionId;
use crate::platform::{
    auth::area::Clinical,
    db::{Done, View, Write},
    error::{Error, Result},
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

/// What one of these pages asks for.
enum Asks {
    Day,
    Which(Vec<Decision>),
    Reason,
    Nothing,
}

#[derive(Template, WebTemplate)]
#[template(path = "decisions/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    kept: Decision,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

fn act(
    grant: &Changing,
    (typed, kept): (Typed, Decision),
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> ActPage {
    let page = grant.page(format!("{verb}: {}", kept.matter));
    ActPage { page, typed, kept, asks, verb, explains }
}

async fn keep(mut write: Write<Clinical>, old: &Decision, new: &Decision, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    write.commit().await?.then(urls::decision(new.id)).saying(says)
}

/// One that was decided and stands.
async fn decided(view: &View<Clinical>, id: DecisionId) -> Result<Decision> {
    let found = store::find(view, id).await?;
    if found.is_decided() { Ok(found) } else { Err(Error::NotFound) }
}

pub async fn looking_again(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    typed: Typed,
) -> Result<ActPage> {
    let kept = decided(&grant.view().await?, id).await?;
    let explains = "It was looked at again and stays as it is. Where something else is decided, put that up as a new one, and replace this by it.";
    Ok(act(&grant, (typed, kept), ("It stays as it is", Asks::Day), explains))
}

pub async fn look_again(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    form: Form<Left>,
) -> Done {
    let Left { until, version } = form.parse()?;
    let write = grant.write().await?;
    let before = decided(&write, id).await?.opened_at(version)?;
    let after = before.left_until(until, grant.today())?;
    keep(write, &before, &after, "It stays as it is").await
}

/// Those that could stand in its place.
async fn others(view: &View<Clinical>, id: DecisionId) -> Result<Vec<Decision>> {
    let mut all = store::list(view).await?;
    all.retain(|it| it.is_decided() && it.id != id);
    Ok(all)
}

pub async fn replacing(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    typed: Typed,
) -> Result<ActPage> {
    let view = grant.view().await?;
    let kept = decided(&view, id).await?;
    let asks = Asks::Which(others(&view, id).await?);
    let explains = "Both stay written down; this one leads to the other from now on.";
    Ok(act(&grant, (typed, kept), ("Replace by another", asks), explains))
}

pub async fn replace(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    form: Form<Replaced>,
) -> Done {
    let Replaced { by, version } = form.parse()?;
    let write = grant.write().await?;
    let before = decided(&write, id).await?.opened_at(version)?;
    if !others(&write, id).await?.iter().any(|it| it.id == by) {
        let says = "Choose the decision that stands in its place.";
        return Err(FormErrors::at("replaced_by", says).into());
    }
    keep(write, &before, &before.replaced(by), "Replaced by the other").await
}

pub async fn withdrawing(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    typed: Typed,
) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let explains = "It need not be decided, or does not hold any more, or was written down by mistake. It stays listed with the reason.";
    Ok(act(&grant, (typed, kept), ("Withdraw", Asks::Reason), explains))
}

pub async fn withdraw(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    form: Form<Withdrawn>,
) -> Done {
    let Withdrawn { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    if !before.stands() {
        return Err(Error::Stale);
    }
    keep(write, &before, &before.withdrawn(reason), "Withdrawn; it stays listed").await
}

pub async fn bringing_back(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    typed: Typed,
) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let explains = "It stands again as it was.";
    Ok(act(&grant, (typed, kept), ("Bring back", Asks::Nothing), explains))
}

pub async fn bring_back(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.brought_back(), "It stands again").await
}
