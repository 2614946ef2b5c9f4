//! A medicine is held, stopped, resumed, or taken differently: each asks who said so, why, and
//! from when. Afterwards the page of the turn asks who has been told.
//!
//! A hold or a stop may be planned for a day to come: then the medicine stands as it is.

use super::super::{model::Medicine, store as medicines};
use super::{
    form::{Changed, Held, Turned},
    keeping,
    model::{Turn, What},
};
use crate::base::ids::MedicineId;
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::{Done, Write},
    error::Result,
    web::{form::Form, page::Page, path::At, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "turns/turn.html")]
pub struct TurnPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    what: What,
    verb: &'static str,
    explains: &'static str,
}

impl TurnPage {
    fn is_hold(&self) -> bool {
        self.what == What::Held
    }

    fn is_change(&self) -> bool {
        self.what == What::Changed
    }
}

async fn page(
    grant: &Changing,
    id: MedicineId,
    typed: Typed,
    (verb, what): (&'static str, What),
    explains: &'static str,
) -> Result<TurnPage> {
    let medicine = medicines::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", medicine.name));
    let typed = typed.over(&medicine).with_day("on", grant.today());
    Ok(TurnPage { page, typed, medicine, what, verb, explains })
}

pub async fn holding(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<TurnPage> {
    let explains = "It stays on the list and on the sheets, marked as on hold. A day to come is kept as a plan, and printed. Whether to hold or resume a medicine is for the prescriber to say.";
    page(&grant, id, typed, ("Hold", What::Held), explains).await
}

pub async fn hold(grant: Changing, At(id): At<MedicineId>, form: Form<Held>) -> Done {
    let Held { said, resume_on, version } = form.parse()?;
    let said = said.sound(grant.today())?;
    let write = grant.write().await?;
    let before = medicines::find(&write, id).await?.opened_at(version)?;
    let turn = Turn::new(&before, What::Held, said, (write.member(), write.at()));
    keep(write, &before, turn.resuming(resume_on, None)?, grant.today()).await
}

pub async fn stopping(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<TurnPage> {
    let explains = "On the sheets it is no longer among what is taken, and it stays here under Stopped. A day to come is kept as a plan, and printed. Whether to stop a medicine is for the prescriber or the pharmacist to say.";
    page(&grant, id, typed, ("Stop", What::Stopped), explains).await
}

pub async fn stop(grant: Changing, At(id): At<MedicineId>, form: Form<Turned>) -> Done {
    let Turned { said, version } = form.parse()?;
    let said = said.sound(grant.today())?;
    let write = grant.write().await?;
    let before = medicines::find(&write, id).await?.opened_at(version)?;
    let turn = Turn::new(&before, What::Stopped, said, (write.member(), write.at()));
    keep(write, &before, turn, grant.today()).await
}

pub async fn resuming(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<TurnPage> {
    let explains = "It is taken again from this day. Whether to resume a medicine is for the prescriber to say.";
    page(&grant, id, typed, ("Resume", What::Resumed), explains).await
}

pub async fn resume(grant: Changing, At(id): At<MedicineId>, form: Form<Turned>) -> Done {
    let Turned { said, version } = form.parse()?;
    let says = "This day has not come yet. Where a day to resume was given, write it at the hold.";
    let said = said.come(grant.today(), says)?;
    let write = grant.write().await?;
    let before = medicines::find(&write, id).await?.opened_at(version)?;
    let turn = Turn::new(&before, What::Resumed, said, (write.member(), write.at()));
    keep(write, &before, turn, grant.today()).await
}

async fn keep(mut write: Write<Clinical>, before: &Medicine, turn: Turn, today: Date) -> Done {
    let turn = keeping::turn(&mut write, before, turn, today).await?;
    written_down(write, before, &turn).await
}

/// Afterwards its page asks who has been told.
async fn written_down(write: Write<Clinical>, before: &Medicine, turn: &Turn) -> Done {
    let line = format!("{}: {}. Who has been told?", before.name, turn.sentence());
    write.commit().await?.then(urls::turn(turn.id)).saying(line)
}

pub async fn changing(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<TurnPage> {
    let explains = "For what the prescriber or the pharmacist changed. What was only written wrong is put right with Edit.";
    page(&grant, id, typed, ("Taken differently", What::Changed), explains).await
}

pub async fn change(grant: Changing, At(id): At<MedicineId>, form: Form<Changed>) -> Done {
    let Changed { said, taken, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = medicines::find(&write, id).await?.opened_at(version)?;
    let turn = keeping::change(&mut write, &before, (taken, said), grant.today()).await?;
    written_down(write, &before, &turn).await
}
