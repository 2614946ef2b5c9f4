//! What is done to a turn: what was planned was done, the day to resume was given, it was entered
//! by mistake.

use super::super::{model::Medicine, store as medicines};
use super::{form::Resuming, keeping::apply, model::Turn, store};
use crate::base::ids::TurnId;
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::Done,
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

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "turns/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    turn: Turn,
    medicine: Medicine,
    verb: &'static str,
    explains: String,
    /// Whether the day to resume is asked.
    asks_day: bool,
}

async fn act(
    grant: &Changing,
    id: TurnId,
    typed: Typed,
    (verb, asks_day): (&'static str, bool),
    explains: impl Into<String>,
) -> Result<ActPage> {
    let view = grant.view().await?;
    let turn = store::find(&view, id).await?;
    let medicine = medicines::find(&view, turn.medicine_id).await?;
    let page = grant.page(format!("{verb}: {}", medicine.name));
    let typed = typed.over(&turn);
    Ok(ActPage { page, typed, turn, medicine, verb, explains: explains.into(), asks_day })
}

pub async fn doing(grant: Changing, At(id): At<TurnId>, typed: Typed) -> Result<ActPage> {
    let explains = "What was planned was done: the medicine is turned from its day on.";
    act(&grant, id, typed, ("It was done", false), explains).await
}

pub async fn done(grant: Changing, At(id): At<TurnId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let turn = store::find(&write, id).await?.opened_at(press.version)?;
    if !turn.planned {
        return Err(Error::Stale);
    }
    let before = medicines::find(&write, turn.medicine_id).await?;
    let after = turn.turned(&before, grant.today()).map_err(|_| {
        FormErrors::at(
            "done",
            "Its day has not come yet. If it was done already, strike this and enter it anew.",
        )
    })?;
    apply(&mut write, &before, &after, turn.from_on).await?;
    let done = turn.done(&before);
    store::save(&mut write, &turn, &done).await?;
    let line = format!("{}: {}", before.name, done.sentence());
    write.commit().await?.then(urls::turn(id)).saying(line)
}

pub async fn giving_day(grant: Changing, At(id): At<TurnId>, typed: Typed) -> Result<ActPage> {
    let explains = "The day as the clinician gave it. It is printed on the sheets, and Today asks on that day.";
    act(&grant, id, typed, ("The day to resume", true), explains).await
}

pub async fn give_day(grant: Changing, At(id): At<TurnId>, form: Form<Resuming>) -> Done {
    let Resuming { on, by, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    if !before.is_hold() {
        return Err(Error::NotFound);
    }
    let after = before.clone().resuming(Some(on), Some(by))?;
    store::save(&mut write, &before, &after).await?;
    let line = after.resuming_words().unwrap_or_default();
    write.commit().await?.then(urls::turn(id)).saying(format!("Kept: {line}"))
}

pub async fn striking(grant: Changing, At(id): At<TurnId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for what was entered by mistake. The medicine stands again as it was before, and the history keeps both.";
    act(&grant, id, typed, ("Strike this change", false), explains).await
}

pub async fn strike(grant: Changing, At(id): At<TurnId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let turn = store::find(&write, id).await?.opened_at(press.version)?;
    let now = medicines::find(&write, turn.medicine_id).await?;
    let newest = store::newest(&write, now.id).await?.is_some_and(|it| it.id == id);
    let says = "The medicine was changed since. Put it right on its own page.";
    let before = turn.taken_back(&now).filter(|_| newest || turn.planned);
    let before = before.ok_or_else(|| FormErrors::at("struck", says))?;
    medicines::save(&mut write, &now, &before).await?;
    store::save(&mut write, &turn, &turn.struck()).await?;
    let line = format!("{} stands as before", now.name);
    write.commit().await?.then(urls::medicine(now.id)).saying(line)
}
