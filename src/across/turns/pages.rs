//! What changed since a day, with who was told; and one turn.

use super::told;
use crate::{
    base::{
        day,
        ids::{ContactId, MedicineId, TurnId},
    },
    platform::{
        audit::Names,
        auth::{
            area::{Clinical, Essentials, History},
            grant::{Change, Grant, See},
        },
        db::View,
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
    record::{
        contacts::{model::Contact, store as contacts},
        medicines::{
            model::Medicine,
            schedule::store as schedule,
            store as medicines,
            turns::{
                model::{Telling, Turn},
                store::{self, Wanted},
            },
        },
        questions::{model::Question, store as questions},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use std::collections::HashMap;
use time::{Date, Duration};

/// From which day; a month back where none is named, or none that can be read.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    pub since: String,
}

impl Asked {
    pub fn day(&self, today: Date) -> Date {
        day::parse(&self.since).unwrap_or(today - Duration::days(30))
    }

    /// What was typed and is no day.
    pub fn unread(&self) -> Option<String> {
        let no_day = !self.since.trim().is_empty() && day::parse(&self.since).is_none();
        no_day.then(|| self.since.clone())
    }
}

/// A turn with its medicine, and who was told.
pub struct Row {
    pub turn: Turn,
    pub title: String,
    pub told: Vec<Told>,
}

pub struct Told {
    pub telling: Telling,
    pub by: String,
}

impl Row {
    fn of(turn: Turn, title: String, tellings: &[Telling], names: &Names) -> Row {
        let of = tellings.iter().filter(|it| it.turn_id == turn.id);
        let told = of.map(|it| Told { telling: it.clone(), by: names.of(it.told_by).to_owned() });
        Row { title, told: told.collect(), turn }
    }
}

/// The medicines that this reader is shown, by id.
pub async fn shown(view: &View<Clinical>) -> Result<HashMap<MedicineId, Medicine>> {
    Ok(medicines::list(view).await?.into_iter().map(|it| (it.id, it)).collect())
}

#[derive(Template, WebTemplate)]
#[template(path = "turns/list.html")]
pub struct ListPage {
    page: Page,
    since: Date,
    unread: Option<String>,
    rows: Vec<Row>,
    /// Who treats her and has not been told, and of how many.
    untold: Vec<(ContactId, String, usize)>,
    may_change: bool,
    may_read_history: bool,
}

pub async fn list(grant: Grant<See<Clinical>>, Query(asked): Query<Asked>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (shown, names) = (shown(&view).await?, view.names().await?);
    let since = asked.day(grant.today());
    let wanted = Wanted { since: Some(since), ..Wanted::default() };
    let mut turns = store::list(&view, &wanted).await?;
    turns.retain(|it| shown.contains_key(&it.medicine_id));
    let tellings = store::tellings(&view, None).await?;
    let contacts = contacts_of(&view).await?;
    let untold = told::count(&contacts, &turns, &tellings);
    let title = |it: &Turn| shown.get(&it.medicine_id).map(Medicine::title).unwrap_or_default();
    let rows = turns.into_iter().map(|it| Row::of(it.clone(), title(&it), &tellings, &names));
    Ok(ListPage {
        rows: rows.collect(),
        since,
        unread: asked.unread(),
        untold,
        may_change: grant.may::<Change<Clinical>>(),
        may_read_history: grant.may::<See<History>>(),
        page: grant.page("Changes of the medicines"),
    })
}

/// The contacts, as far as the reader's place reaches.
pub async fn contacts_of(view: &View<Clinical>) -> Result<Vec<Contact>> {
    match view.area::<Essentials>() {
        Some(view) => contacts::list(&view).await,
        None => Ok(Vec::new()),
    }
}

impl ListPage {
    fn words(&self) -> String {
        day::words(self.since)
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "turns/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    medicine: Medicine,
    was: Option<String>,
    /// In whose place it is taken, as that one stands now.
    replaces: Option<Medicine>,
    /// What the steps of the schedule say, where it is taken differently.
    steps: Vec<String>,
    question: Option<Question>,
    asker: Option<String>,
    untold: Vec<String>,
    by: String,
    may_change: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<TurnId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let turn = store::find(&view, id).await?;
    let mut shown = shown(&view).await?;
    let medicine = shown.remove(&turn.medicine_id).ok_or(Error::NotFound)?;
    let names = view.names().await?;
    let tellings = store::tellings(&view, Some(id)).await?;
    let question = question(&view, &turn).await?;
    let contacts = contacts_of(&view).await?;
    let untold = contacts.iter().filter(|it| told::treats(it));
    let untold = untold.filter(|it| told::is_untold(it, &turn, &tellings));
    let steps = match turn.is_change() {
        true => schedule::of_medicine(&view, medicine.id).await?,
        false => Vec::new(),
    };
    Ok(ShowPage {
        page: grant.page(format!("{}, {}", medicine.title(), turn.sentence())),
        was: turn.was_taken(&medicine),
        replaces: turn.replaces_id.and_then(|it| shown.remove(&it)),
        steps: steps.iter().map(|it| it.directions()).collect(),
        asker: question.as_ref().and_then(|it| it.owner_id).map(|it| names.of(it).to_owned()),
        question,
        untold: untold.map(|it| it.name.to_string()).collect(),
        by: names.of(turn.entered_by).to_owned(),
        may_change: grant.may::<Change<Clinical>>(),
        may_read_history: grant.may::<See<History>>(),
        row: Row::of(turn, medicine.title(), &tellings, &names),
        medicine,
    })
}

/// The question when to resume, where there is one and it is not hidden from the reader.
pub async fn question(view: &View<Clinical>, turn: &Turn) -> Result<Option<Question>> {
    let Some(id) = turn.question_id else { return Ok(None) };
    match questions::find(view, id).await {
        Ok(question) => Ok(Some(question)),
        Err(Error::NotFound) => Ok(None),
        Err(e) => Err(e),
    }
}
