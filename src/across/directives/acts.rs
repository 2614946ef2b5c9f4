//! What is done to a directive: signed, voided, superseded, put back in force, marked, looked at
//! again, struck, brought back. Each has a page that asks what must be known, and posts to itself.

use super::{Changing, ground::Ground};
use crate::{
    base::ids::DirectiveId,
    platform::{
        auth::area::Directives,
        db::{Done, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::directives::{
        form::{Because, Differs, Reviewed, Signed, Superseded, Voided},
        model::Directive,
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;

/// What one of these pages asks for.
enum Asks {
    Signing,
    Voiding,
    /// By which of these.
    Which(Vec<Directive>),
    Differs(Vec<Directive>),
    Review,
    Reason,
    Nothing,
}

#[derive(Template, WebTemplate)]
#[template(path = "directives/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    kept: Directive,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

/// The page, for a directive of which this can be done now.
async fn act(
    grant: &Changing,
    id: DirectiveId,
    typed: Typed,
    fits: fn(&Directive) -> bool,
    (verb, asks, explains): (&'static str, impl FnOnce(&Ground) -> Asks, &'static str),
) -> Result<ActPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let kept = fitting(ground.find(id)?.clone(), fits)?;
    let (page, asks) = (grant.page(format!("{verb}: {}", kept.title())), asks(&ground));
    Ok(ActPage { page, typed: typed.over(&kept), kept, asks, verb, explains })
}

fn fitting(it: Directive, fits: fn(&Directive) -> bool) -> Result<Directive> {
    if fits(&it) { Ok(it) } else { Err(Error::NotFound) }
}

/// As it was when the page was opened, and such that this can be done.
async fn opened(
    write: &Write<Directives>,
    id: DirectiveId,
    version: i64,
    fits: fn(&Directive) -> bool,
) -> Result<Directive> {
    fitting(store::find(write, id).await?.opened_at(version)?, fits)
}

async fn keep(mut write: Write<Directives>, old: &Directive, new: &Directive, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    let line = format!("{}: {says}", new.title());
    write.commit().await?.then(urls::directive(new.id)).saying(line)
}

/// The others that are in force.
fn others(ground: &Ground, id: DirectiveId) -> Vec<Directive> {
    ground.all.iter().filter(|it| it.is_in_force() && it.id != id).cloned().collect()
}

fn listed(it: &Directive) -> bool {
    !it.struck
}

pub async fn signing(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<ActPage> {
    let explains = "From now on it is in force, as far as the family knows, and stands on the emergency sheet. How it must be signed, and before whom, differs by state: ask your state’s form, the clinician or a lawyer.";
    let asks = |_: &Ground| Asks::Signing;
    act(&grant, id, typed, Directive::is_draft, ("It is signed", asks, explains)).await
}

pub async fn sign(grant: Changing, At(id): At<DirectiveId>, form: Form<Signed>) -> Done {
    let Signed { on, witnesses, notary, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, version, Directive::is_draft).await?;
    let after = Directive { witnesses, notary, ..before.signed(on, grant.today())? };
    keep(write, &before, &after, "it is signed").await
}

pub async fn voiding(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<ActPage> {
    let explains = "It does not hold any more and leaves every sheet. Afterwards the page lists who has a copy and must hear. How one is voided differs by state: ask your state’s form, the clinician or a lawyer.";
    let asks = |_: &Ground| Asks::Voiding;
    act(&grant, id, typed, Directive::is_in_force, ("It is voided", asks, explains)).await
}

pub async fn void(grant: Changing, At(id): At<DirectiveId>, form: Form<Voided>) -> Done {
    let Voided { it, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, version, Directive::is_in_force).await?;
    let after = before.voided(it, grant.today())?;
    keep(write, &before, &after, "written down as voided").await
}

pub async fn superseding(
    grant: Changing,
    At(id): At<DirectiveId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "Another one stands in its place. It leaves every sheet; afterwards the page lists who has a copy and must hear.";
    let asks = |ground: &Ground| Asks::Which(others(ground, id));
    act(&grant, id, typed, Directive::is_in_force, ("It is superseded", asks, explains)).await
}

pub async fn supersede(grant: Changing, At(id): At<DirectiveId>, form: Form<Superseded>) -> Done {
    let Superseded { by, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, version, Directive::is_in_force).await?;
    another(&write, id, by, "superseded_by").await?;
    keep(write, &before, &before.superseded(by), "superseded by the other").await
}

/// The other one must be in force.
async fn another(
    write: &Write<Directives>,
    id: DirectiveId,
    other: DirectiveId,
    field: &'static str,
) -> Result<()> {
    let all = store::list(write).await?;
    match all.iter().any(|it| it.is_in_force() && it.id == other && it.id != id) {
        true => Ok(()),
        false => Err(FormErrors::at(field, "Choose another one that is in force.").into()),
    }
}

pub async fn standing(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<ActPage> {
    let explains = "That it does not hold any more was a mistake: it is in force again, as far as the family knows, and stands on the emergency sheet.";
    let asks = |_: &Ground| Asks::Nothing;
    act(&grant, id, typed, Directive::is_over, ("It stands after all", asks, explains)).await
}

pub async fn stand(grant: Changing, At(id): At<DirectiveId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, press.version, Directive::is_over).await?;
    keep(write, &before, &before.stands_again(), "it is in force again").await
}

pub async fn differing(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<ActPage> {
    let explains = "Where two papers say something else, mark one of them: both are named on the emergency sheet with “show both to the clinician”. Nothing here says which is right. Choose nothing and leave the line empty to take the mark off.";
    let asks = |ground: &Ground| Asks::Differs(others(ground, id));
    let verb = "Says something else than another";
    act(&grant, id, typed, Directive::is_in_force, (verb, asks, explains)).await
}

pub async fn differ(grant: Changing, At(id): At<DirectiveId>, form: Form<Differs>) -> Done {
    let Differs { from, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, version, Directive::is_in_force).await?;
    if let Some((other, _)) = &from {
        another(&write, id, *other, "differs_from").await?;
    }
    let says = if from.is_some() { "the mark is kept" } else { "the mark is taken off" };
    keep(write, &before, &before.differing(from), says).await
}

pub async fn reviewing(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<ActPage> {
    let explains = "Read the paper again together. If something else is wanted, a new one is signed and takes its place. Laws differ by state: ask the clinician, your state’s form, or a lawyer.";
    let asks = |_: &Ground| Asks::Review;
    let mut page = act(&grant, id, typed, listed, ("Looked at again", asks, explains)).await?;
    // Each time anew: what was said last time stands on its page.
    page.typed = std::mem::take(&mut page.typed)
        .with_day("reviewed_on", grant.today())
        .with("reviewed_by", "")
        .with("reviewed_why", "");
    Ok(page)
}

pub async fn review(grant: Changing, At(id): At<DirectiveId>, form: Form<Reviewed>) -> Done {
    let Reviewed { it, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, version, listed).await?;
    let after = before.reviewed(it, grant.today())?;
    keep(write, &before, &after, "looked at again").await
}

pub async fn striking(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for an entry that was a mistake: it leaves the list and the sheets, and can be brought back. A paper that does not hold any more is voided or superseded instead.";
    let asks = |_: &Ground| Asks::Reason;
    act(&grant, id, typed, |_| true, ("Strike", asks, explains)).await
}

pub async fn strike(grant: Changing, At(id): At<DirectiveId>, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, version, |_| true).await?;
    keep(write, &before, &before.struck(reason), "struck").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<DirectiveId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It stands on the list again as it was. Where the answer was “no directives”, that is taken back.";
    let asks = |_: &Ground| Asks::Nothing;
    act(&grant, id, typed, |_| true, ("Bring back", asks, explains)).await
}

pub async fn bring_back(grant: Changing, At(id): At<DirectiveId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = opened(&write, id, press.version, |_| true).await?;
    keep(write, &before, &before.brought_back(), "on the list again").await
}
