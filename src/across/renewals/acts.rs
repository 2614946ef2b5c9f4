//! What is done to something that is to be renewed: someone renews it, it is renewed until another day,
//! it is let lapse, it stands again; an entry of the family's own is struck and brought back. Each has
//! a page that posts to itself.

use super::{
    edit::Changing,
    item::{self, Item},
    show::At,
};
use crate::{
    base::ids::MemberId,
    platform::{
        auth::area::Papers,
        db::{Done, View, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, Press},
            page::Page,
            typed::Typed,
            urls,
        },
    },
    record::renewals::{
        form::{Because, Begun, Renewed, WHO},
        model::Renewal,
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

/// What one of these pages asks for.
enum Asks {
    Who(Vec<(MemberId, String)>),
    /// The new last day.
    Day,
    /// Why, with an example.
    Reason(&'static str),
    Nothing,
}

#[derive(Template, WebTemplate)]
#[template(path = "renewals/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    item: Item,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

fn act(
    grant: &Changing,
    (typed, item): (Typed, Item),
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> ActPage {
    let page = grant.page(format!("{verb}: {}", item.title));
    ActPage { page, typed, item, asks, verb, explains }
}

async fn find(grant: &Changing, view: &View<Papers>, (about, number): (&str, i64)) -> Result<Item> {
    item::find(view, (about, number), grant.today()).await
}

/// One of the family's own: what is kept elsewhere is struck there.
async fn own(grant: &Changing, view: &View<Papers>, at: (&str, i64)) -> Result<Item> {
    let found = find(grant, view, at).await?;
    if found.kept.is_own() { Ok(found) } else { Err(Error::NotFound) }
}

async fn keep(mut write: Write<Papers>, item: &Item, after: Renewal, says: &str) -> Done {
    store::save(&mut write, &item.kept, &after).await?;
    write.commit().await?.then(item.address()).saying(says)
}

fn opened(item: &Item, version: i64) -> Result<()> {
    item.kept.clone().opened_at(version).map(|_| ())
}

pub async fn beginning(
    grant: Changing,
    Path((_, about, number)): At,
    typed: Typed,
) -> Result<ActPage> {
    let view = grant.view().await?;
    let item = find(&grant, &view, (&about, number)).await?;
    let hands = store::hands(&view, &item.kept).await?;
    let who = item.kept.renewer_id.unwrap_or(grant.member());
    let typed = typed.with("renewer_id", who).with_day("renewing_since", grant.today());
    let explains = "Then it leaves Today, and the others see that it is in someone’s hands.";
    Ok(act(&grant, (typed, item), ("It is being renewed", Asks::Who(hands)), explains))
}

pub async fn begin(grant: Changing, Path((_, about, number)): At, form: Form<Begun>) -> Done {
    let Begun { by, since, version } = form.parse()?;
    let write = grant.write().await?;
    let item = find(&grant, &write, (&about, number)).await?;
    opened(&item, version)?;
    if !store::hands(&write, &item.kept).await?.iter().any(|(id, _)| *id == by) {
        return Err(FormErrors::at("renewer_id", WHO).into());
    }
    let after = item.kept.begun(item.last, (by, since), grant.today())?;
    keep(write, &item, after, "Kept who renews it").await
}

pub async fn renewing(
    grant: Changing,
    Path((_, about, number)): At,
    typed: Typed,
) -> Result<ActPage> {
    let item = find(&grant, &grant.view().await?, (&about, number)).await?;
    if item.is_window() {
        let explains = "Someone looked at it, whether anything was changed or not. It comes again next year by itself.";
        return Ok(act(
            &grant,
            (typed, item),
            ("It is done for this time", Asks::Nothing),
            explains,
        ));
    }
    let typed = match item.kept.next(item.last) {
        Some(next) => typed.with_day("last_on", next),
        None => typed,
    };
    let explains = "Write the last day as it stands on the new one.";
    Ok(act(&grant, (typed, item), ("It is renewed", Asks::Day), explains))
}

pub async fn renew(grant: Changing, Path((_, about, number)): At, form: Form<Renewed>) -> Done {
    let Renewed { until, version } = form.parse()?;
    let write = grant.write().await?;
    let item = find(&grant, &write, (&about, number)).await?;
    opened(&item, version)?;
    if item.is_window() {
        let after = item.kept.done(item.last);
        return keep(write, &item, after, "Done for this time").await;
    }
    let needed = FormErrors::at("last_on", "Enter the new last day, like 9 Mar 2037.");
    let after = item.kept.renewed(until.ok_or(needed)?, item.last)?;
    keep(write, &item, after, "Renewed").await
}

pub async fn letting_lapse(
    grant: Changing,
    Path((_, about, number)): At,
    typed: Typed,
) -> Result<ActPage> {
    let item = find(&grant, &grant.view().await?, (&about, number)).await?;
    let asks = Asks::Reason("for example: she does not travel any more");
    let explains =
        "Nobody is reminded of it any more. It stays listed with the reason, and can stand again.";
    Ok(act(&grant, (typed, item), ("We let it lapse", asks), explains))
}

pub async fn let_lapse(grant: Changing, Path((_, about, number)): At, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let item = find(&grant, &write, (&about, number)).await?;
    opened(&item, version)?;
    let after = item.kept.let_lapse(item.last, reason, grant.today());
    keep(write, &item, after, "Let lapse; it stays listed").await
}

pub async fn standing_again(
    grant: Changing,
    Path((_, about, number)): At,
    typed: Typed,
) -> Result<ActPage> {
    let item = find(&grant, &grant.view().await?, (&about, number)).await?;
    let explains =
        "Nobody renews it, and it is not let lapse: it stands on Today again when its day comes.";
    Ok(act(&grant, (typed, item), ("It stands again", Asks::Nothing), explains))
}

pub async fn stand_again(grant: Changing, Path((_, about, number)): At, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let item = find(&grant, &write, (&about, number)).await?;
    opened(&item, press.version)?;
    let again = item.kept.again();
    let after = if item.is_window() { Renewal { last_on: None, ..again } } else { again };
    keep(write, &item, after, "It stands again").await
}

pub async fn striking(
    grant: Changing,
    Path((_, about, number)): At,
    typed: Typed,
) -> Result<ActPage> {
    let item = own(&grant, &grant.view().await?, (&about, number)).await?;
    let asks = Asks::Reason("for example: entered twice");
    let explains = "Only for what was written down by mistake: it leaves the list. Its history keeps it, and it can be brought back.";
    Ok(act(&grant, (typed, item), ("Strike", asks), explains))
}

pub async fn strike(grant: Changing, Path((_, about, number)): At, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let item = own(&grant, &write, (&about, number)).await?;
    opened(&item, version)?;
    keep(write, &item, item.kept.struck(reason), "Struck; its history keeps it").await
}

pub async fn bringing_back(
    grant: Changing,
    Path((_, about, number)): At,
    typed: Typed,
) -> Result<ActPage> {
    let item = own(&grant, &grant.view().await?, (&about, number)).await?;
    Ok(act(
        &grant,
        (typed, item),
        ("Bring back", Asks::Nothing),
        "It stands in the list again as it was.",
    ))
}

pub async fn bring_back(grant: Changing, Path((_, about, number)): At, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let item = own(&grant, &write, (&about, number)).await?;
    opened(&item, press.version)?;
    keep(write, &item, item.kept.brought_back(), "It stands in the list again").await
}
