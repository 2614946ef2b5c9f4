//! One task, those about one item, and those that are done or let go.

use super::{
    rows::{Ground, Row},
    seen,
};
use crate::{
    across::history::kinds,
    base::ids::TaskId,
    family::tasks::{model::Task, store::Wanted},
    platform::{
        auth::{
            area::{History, Members, Tasks},
            grant::{Change, Grant, See},
        },
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    extract::{Path, Query},
    http::header,
    response::{IntoResponse, Response},
};

#[derive(Template, WebTemplate)]
#[template(path = "tasks/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    next: Option<Task>,
    may_change: bool,
    /// Whether the reader may give it back, hand it over, put it off.
    may_move: bool,
    may_withdraw: bool,
    may_strike: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Tasks>>, At(id): At<TaskId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let task = seen::find(&view, id).await?;
    let page = grant.page(task.title.to_string());
    let ground = Ground::read(&grant, &view, &page).await?;
    let next = match task.next_id {
        Some(next) => seen::find(&view, next).await.ok().filter(|it| !it.struck),
        None => None,
    };
    let may_change = grant.may::<Change<Tasks>>();
    let (member, role) = (grant.member(), grant.role());
    let may_move = may_change
        && task.stands()
        && (ground.hands.is_free(&task) || task.may_be_moved_by(member, role));
    Ok(ShowPage {
        next,
        may_change,
        may_move,
        may_withdraw: task.offered_to.is_some()
            && (may_move || may_change && task.offered_by == Some(member)),
        may_strike: may_change && task.may_be_struck_by(member, role),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        row: ground.row(task),
        page,
    })
}

/// The photo that shows it is done, as it was sent, under a name of our own.
pub async fn photo(grant: Grant<See<Tasks>>, At(id): At<TaskId>) -> Result<Response> {
    let task = seen::find(&grant.view().await?, id).await?;
    let photo = grant.house().files.open(&task.photo.ok_or(Error::NotFound)?).await?;
    Ok(([(header::CONTENT_TYPE, photo.media)], photo.bytes).into_response())
}

#[derive(Template, WebTemplate)]
#[template(path = "tasks/about.html")]
pub struct AboutPage {
    page: Page,
    title: String,
    back: String,
    /// The item, as the form for a new task takes it.
    item: String,
    may_change: bool,
    rows: Vec<Row>,
}

type Item = Path<(String, String, i64)>;

pub async fn about(grant: Grant<See<Tasks>>, Path((_, kind, item)): Item) -> Result<AboutPage> {
    let view = grant.view().await?;
    let ground = Ground::read(&grant, &view, &grant.page("Tasks")).await?;
    let title = ground.titles().of(&kind, item).ok_or(Error::NotFound)?.to_owned();
    let page = grant.page(format!("Tasks about {title}"));
    let back = page.at(kinds::page(&kind, item).ok_or(Error::NotFound)?);
    let named = format!("{kind}/{item}");
    let wanted = Wanted { about: Some((kind, item)), ..Wanted::default() };
    let rows = seen::list(&view, &wanted).await?.into_iter();
    let rows = rows.map(|it| ground.row(it)).collect();
    let may_change = grant.may::<Change<Tasks>>();
    Ok(AboutPage { page, title, back, item: named, may_change, rows })
}

#[derive(Template, WebTemplate)]
#[template(path = "tasks/closed.html")]
pub struct ClosedPage {
    page: Page,
    rows: Vec<Row>,
    /// How many stand before these, where there are later ones.
    later: Option<i64>,
    earlier: Option<i64>,
}

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct After {
    skip: i64,
}

/// So many on one page.
const PAGE: i64 = 50;

pub async fn closed(grant: Grant<See<Tasks>>, Query(after): Query<After>) -> Result<ClosedPage> {
    let (view, page) = (grant.view().await?, grant.page("Done, or let go"));
    let ground = Ground::read(&grant, &view, &page).await?;
    let skip = after.skip.clamp(0, i64::from(u32::MAX));
    let wanted = Wanted { closed: true, most: PAGE, skip, ..Wanted::default() };
    let (tasks, goes_on) = seen::page(&view, &wanted).await?;
    Ok(ClosedPage {
        rows: tasks.into_iter().map(|it| ground.row(it)).collect(),
        later: (skip > 0).then(|| (skip - PAGE).max(0)),
        earlier: goes_on.then_some(skip + PAGE),
        page,
    })
}
