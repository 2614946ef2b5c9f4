//! The visits: what she is typing, those that were kept and have no note yet, and the notes.

use super::{contacts, meeting::Met, needs};
use crate::{
    platform::{
        auth::{
            area::{Clinical, Tasks},
            grant::{Change, Grant, See},
        },
        db::View,
        error::Result,
        web::{page::Page, urls},
    },
    record::{
        appointments::{model::Status, store as appointments},
        visits::{
            drafts::{model::Draft, store as drafts},
            model::Visit,
            store,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Duration;

#[derive(Template, WebTemplate)]
#[template(path = "visits/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    drafts: Vec<(Draft, String)>,
    unwritten: Vec<Met>,
    rows: Vec<Row>,
}

/// A note with who wrote it.
struct Row {
    visit: Visit,
    by: String,
    /// Whether the reader was asked to read it and has not said that she has.
    unread: bool,
}

/// How many days a visit without a note is asked about here.
const DAYS: i64 = 60;

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (names, unread) = (view.names().await?, store::unread(&view).await?);
    let all = store::list(&view).await?;
    let may_change = grant.may::<Change<Clinical>>();
    let drafts = if may_change { drafts::list(&view).await? } else { Vec::new() };
    let contacts = contacts::listed(&view).await?;
    let drafts = drafts.into_iter().map(|it| (it.clone(), needs::title(&it, &contacts)));
    let row = |visit: &Visit| Row {
        by: names.of(visit.entered_by).to_owned(),
        unread: unread.iter().any(|it| it.id == visit.id),
        visit: visit.clone(),
    };
    Ok(ListPage {
        drafts: drafts.collect(),
        unwritten: if may_change { unwritten(&grant, &view, &all).await? } else { Vec::new() },
        rows: all.iter().map(row).collect(),
        page: grant.page("Visits"),
        may_change,
    })
}

/// What was in the calendar lately and has neither a note nor been missed or cancelled.
async fn unwritten(
    grant: &Grant<See<Clinical>>,
    view: &View<Clinical>,
    noted: &[Visit],
) -> Result<Vec<Met>> {
    let Some(view) = view.area::<Tasks>() else { return Ok(Vec::new()) };
    let now = grant.now();
    let mut all = appointments::meetings(&view, now.minus(Duration::days(DAYS)), now).await?;
    all.retain(|it| !matches!(it.status, Status::Missed | Status::Cancelled));
    let is_noted = |it: &Met| {
        let (id, on) = it.key();
        noted.iter().any(|one| one.appointment_id.zip(one.occurrence_on) == Some((id, on)))
    };
    let all = all.into_iter().rev().map(|meeting| Met { meeting });
    Ok(all.filter(|it| !is_noted(it)).collect())
}
