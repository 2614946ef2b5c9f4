//! Writing down what was carried, putting it right, striking a mistake. Each writes her own; a
//! steward or the person also what someone did who does not sign in.

use super::door::Carrying;
use crate::{
    base::ids::CarriedId,
    family::carried::{
        form::{Mistake, Told},
        model::{Carried, Kind},
        store,
    },
    platform::{
        auth::{
            area::Tasks,
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Choice, Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "carried/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Carried>,
    /// Whether she may enter it for someone who does not sign in.
    for_others: bool,
}

impl EditPage {
    fn kinds(&self) -> impl Iterator<Item = &'static str> {
        Kind::ALL.iter().map(|it| it.words())
    }
}

pub async fn blank(Carrying(grant): Carrying, typed: Typed) -> EditPage {
    let typed = typed.with_day("day_on", grant.today()).with("kind", Kind::Hours.words());
    let for_others = grant.role().decides();
    EditPage { page: grant.page("Write down what you did"), typed, kept: None, for_others }
}

pub async fn add(Carrying(grant): Carrying, form: Form<Told>) -> Done {
    let entry = form.parse()?.entry;
    if entry.name.is_some() && !grant.role().decides() {
        let says = "Only a steward or the person writes down what another did.";
        return Err(FormErrors::at("name", says).into());
    }
    let mut write = grant.write().await?;
    let by = (write.member(), write.at());
    let new = Carried::new(write.person(), entry, by, grant.today())?;
    store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::carried()).saying(format!("Kept: {}", new.says()))
}

/// Her own, or what she entered for another; of everybody else's only the reading is hers.
async fn hers(grant: &Grant<Change<Tasks>>, view: &View<Tasks>, id: CarriedId) -> Result<Carried> {
    let carried = store::find(view, id).await?;
    match carried.may_be_changed_by(grant.member()) {
        true => Ok(carried),
        false => Err(Error::Forbidden),
    }
}

pub async fn edit(
    Carrying(grant): Carrying,
    At(id): At<CarriedId>,
    typed: Typed,
) -> Result<EditPage> {
    let kept = hers(&grant, &grant.view().await?, id).await?;
    let minutes = kept.minutes.unwrap_or(0);
    let shown = |it: i64| if it > 0 { it.to_string() } else { String::new() };
    let typed = typed.over(&kept).with("hours", shown(minutes / 60));
    let typed = typed.with("rest", shown(minutes % 60));
    let for_others = kept.name.is_some();
    Ok(EditPage { page: grant.page("Put it right"), typed, kept: Some(kept), for_others })
}

pub async fn save(Carrying(grant): Carrying, At(id): At<CarriedId>, form: Form<Told>) -> Done {
    let Told { entry, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&grant, &write, id).await?.opened_at(version)?;
    let after = before.put_right(entry, grant.today())?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::carried_entry(id)).saying("Saved")
}

#[derive(Template, WebTemplate)]
#[template(path = "carried/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    carried: Carried,
    verb: &'static str,
    asks_reason: bool,
    explains: &'static str,
}

pub async fn striking(
    Carrying(grant): Carrying,
    At(id): At<CarriedId>,
    typed: Typed,
) -> Result<ActPage> {
    let carried = hers(&grant, &grant.view().await?, id).await?;
    let explains = "Only for what was a mistake: it leaves the sums. The history keeps it, and it can be brought back from there.";
    let page = grant.page(format!("Strike: {}", carried.title()));
    Ok(ActPage { page, typed, carried, verb: "Strike", asks_reason: true, explains })
}

pub async fn strike(Carrying(grant): Carrying, At(id): At<CarriedId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&grant, &write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::carried_entry(id)).saying("Struck; its history keeps it")
}

pub async fn bringing_back(
    Carrying(grant): Carrying,
    At(id): At<CarriedId>,
    typed: Typed,
) -> Result<ActPage> {
    let carried = hers(&grant, &grant.view().await?, id).await?;
    let explains = "It counts again as it was.";
    let page = grant.page(format!("Bring back: {}", carried.title()));
    Ok(ActPage { page, typed, carried, verb: "Bring back", asks_reason: false, explains })
}

pub async fn bring_back(
    Carrying(grant): Carrying,
    At(id): At<CarriedId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&grant, &write, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::carried_entry(id)).saying("It counts again")
}
