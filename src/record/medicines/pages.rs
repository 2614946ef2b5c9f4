//! The list of medicines, one medicine, and its form.

use super::{
    abbreviations,
    form::Labelled,
    ingredients::{self, model::Ingredient},
    model::{Medicine, Status, Supply},
    schedule::{self, model::Step},
    store,
    turns::{
        form::Added,
        keeping,
        model::Turn,
        standing,
        store::{self as turns, Wanted},
    },
};
use crate::base::{day as calendar, ids::MedicineId};
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Clinical, History, Members, Papers},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::Result,
    web::{
        form::{Choice, Form},
        page::Page,
        path::At,
        stamp::Stamp,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

#[derive(Template, WebTemplate)]
#[template(path = "medicines/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    taking: Vec<Row>,
    held: Vec<Row>,
    stopped: Vec<Row>,
    stamp: Stamp,
}

/// One line of the list.
struct Row {
    medicine: Medicine,
    stamp: Stamp,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Medicines"), view.names().await?);
    let all = store::list(&view).await?;
    let current = all.iter().filter(|it| it.is_current());
    let stamp = Stamp::of_list(&page, &names, current.map(Medicine::check));
    let rows = |status| {
        let those = all.iter().filter(move |it| it.status == status);
        let row = |it: &Medicine| Row {
            stamp: Stamp::of(&page, &names, it.check()),
            medicine: it.clone(),
        };
        those.map(row).collect()
    };
    let (taking, held, stopped) =
        (rows(Status::Taking), rows(Status::OnHold), rows(Status::Stopped));
    let may_change = grant.may::<Change<Clinical>>();
    Ok(ListPage { page, may_change, taking, held, stopped, stamp })
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/show.html")]
pub struct ShowPage {
    page: Page,
    medicine: Medicine,
    steps: Vec<Step>,
    turns: Vec<Turn>,
    ingredients: Vec<Ingredient>,
    today: Date,
    stamp: Stamp,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
    sees_coverage: bool,
}

impl ShowPage {
    /// The day it was last changed how it is taken, where no step of the schedule begins since.
    fn steps_are_older(&self) -> Option<String> {
        let changed = self.turns.iter().find(|it| it.is_change())?.from_on;
        let older = !self.steps.is_empty() && self.steps.iter().all(|it| it.from_on < changed);
        older.then(|| calendar::words(changed))
    }

    fn standing(&self) -> Option<String> {
        standing::on_paper(&self.medicine, &self.turns)
    }
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<MedicineId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let medicine = store::find(&view, id).await?;
    let names = view.names().await?;
    let touch = view.last_change("medicine", id.into()).await?;
    let page = grant.page(medicine.title());
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, medicine.check()),
        may_change: grant.may::<Change<Clinical>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        sees_coverage: grant.may::<See<Papers>>(),
        steps: schedule::store::of_medicine(&view, id).await?,
        turns: turns::list(&view, &Wanted { medicine: Some(id), ..Wanted::default() }).await?,
        ingredients: ingredients::store::of_medicine(&view, id).await?,
        today: grant.today(),
        page,
        medicine,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being added.
    kept: Option<Medicine>,
    /// Those in whose place a new one may be taken.
    current: Vec<Medicine>,
    touch: Option<Touch>,
}

impl EditPage {
    fn supplies(&self) -> impl Iterator<Item = &'static str> {
        Supply::ALL.iter().map(|it| it.words())
    }
}

pub async fn blank(grant: Grant<Change<Clinical>>, typed: Typed) -> Result<EditPage> {
    Ok(EditPage {
        page: grant.page("Add a medicine"),
        typed: typed.with("supply", Supply::Prescription),
        kept: None,
        current: store::current(&grant.view().await?).await?,
        touch: None,
    })
}

/// One that is taken already; or one that is newly started, with who said so.
pub async fn add(grant: Grant<Change<Clinical>>, form: Form<Added>) -> Done {
    let Added { label, start } = form.parse()?;
    let label = label.sound(grant.today())?;
    let (mut write, line) = (grant.write().await?, format!("Added {}", label.name));
    let Some(start) = start else {
        let new = Medicine::new(write.person(), label);
        let id = store::add(&mut write, &new).await?;
        return write.commit().await?.then(urls::medicine(id)).saying(line);
    };
    let turn = keeping::start(&mut write, label, start, grant.today()).await?;
    let line = format!("{line}. Who has been told?");
    write.commit().await?.then(urls::turn(turn.id)).saying(line)
}

pub async fn edit(
    grant: Grant<Change<Clinical>>,
    At(id): At<MedicineId>,
    typed: Typed,
) -> Result<EditPage> {
    let view = grant.view().await?;
    let medicine = store::find(&view, id).await?;
    let touch = view.last_change("medicine", id.into()).await?;
    let page = grant.page(format!("Edit {}", medicine.name));
    Ok(EditPage {
        page,
        typed: typed.over(&medicine),
        kept: Some(medicine),
        current: Vec::new(),
        touch,
    })
}

pub async fn save(
    grant: Grant<Change<Clinical>>,
    At(id): At<MedicineId>,
    form: Form<Labelled>,
) -> Done {
    let Labelled { label, version } = form.parse()?;
    let label = label.sound(grant.today())?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.relabelled(label);
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::medicine(id)).saying(format!("Saved {}", after.name))
}
