//! The notes: those that wait for a place first, then the others, the newest first.

use crate::{
    across::history::{
        kinds,
        titles::{Thing, Titles},
    },
    base::ids::HappeningId,
    platform::{
        audit::Names,
        auth::{
            area::{History, Log, Members},
            grant::{Change, Grant, See},
        },
        db::View,
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
    record::happenings::{
        model::{Happening, Place},
        store::{self, PAGE, Wanted},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::{Path, Query};

/// One note as it is listed.
pub struct Row {
    pub happening: Happening,
    pub by: String,
    pub about: Option<Thing>,
}

impl Row {
    pub fn of(happening: Happening, names: &Names, titles: &Titles) -> Row {
        let about = happening.about().and_then(|(kind, item)| titles.thing(kind, item));
        Row { by: names.of(happening.noted_by).to_owned(), about, happening }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "happenings/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    waiting: Vec<Row>,
    rows: Vec<Row>,
    earlier: Option<HappeningId>,
}

/// Which page of the list.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    before: String,
}

pub async fn list(grant: Grant<See<Log>>, Query(asked): Query<Asked>) -> Result<ListPage> {
    let view = grant.view().await?;
    let before = asked.before.parse().ok();
    let waiting = Wanted { place: Some(Place::Waiting), most: 200, ..Wanted::default() };
    let told = (view.names().await?, Titles::read(&view, &[]).await?);
    let waiting = if before.is_none() { rows(&view, &waiting, &told).await? } else { Vec::new() };
    let found = Wanted { before, most: PAGE, ..Wanted::default() };
    let found = rows(&view, &found, &told).await?;
    let earlier = (found.len() as i64 == PAGE).then(|| found.last().map(|it| it.happening.id));
    let placed = found.into_iter().filter(|it| !it.happening.waits()).collect();
    Ok(ListPage {
        page: grant.page("What happened"),
        may_change: grant.may::<Change<Log>>(),
        waiting,
        rows: placed,
        earlier: earlier.flatten(),
    })
}

async fn rows(
    view: &View<Log>,
    wanted: &Wanted,
    (names, titles): &(Names, Titles),
) -> Result<Vec<Row>> {
    let found = store::list(view, wanted).await?.into_iter();
    Ok(found.map(|it| Row::of(it, names, titles)).collect())
}

#[derive(Template, WebTemplate)]
#[template(path = "happenings/about.html")]
pub struct AboutPage {
    page: Page,
    title: String,
    back: String,
    rows: Vec<Row>,
}

/// What was noted about one item.
pub async fn about(
    grant: Grant<See<Log>>,
    Path((_, kind, item)): Path<(String, String, i64)>,
) -> Result<AboutPage> {
    let view = grant.view().await?;
    let told = (view.names().await?, Titles::read(&view, &[]).await?);
    let title = told.1.of(&kind, item).ok_or(Error::NotFound)?.to_owned();
    let page = grant.page(format!("Noted about {title}"));
    let back = page.at(kinds::page(&kind, item).ok_or(Error::NotFound)?);
    let wanted = Wanted { about: Some((kind, item)), most: PAGE, ..Wanted::default() };
    Ok(AboutPage { page, title, back, rows: rows(&view, &wanted, &told).await? })
}

#[derive(Template, WebTemplate)]
#[template(path = "happenings/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    may_place: bool,
    may_put_right: bool,
    may_strike: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Log>>, At(id): At<HappeningId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let happening = store::find(&view, id).await?;
    let (names, titles) = (view.names().await?, Titles::read(&view, &[]).await?);
    let may_change = grant.may::<Change<Log>>();
    let (member, role) = (grant.member(), grant.role());
    Ok(ShowPage {
        page: grant.page(happening.title()),
        may_place: may_change && !happening.struck,
        may_put_right: may_change && happening.is_of(member) && !happening.struck,
        may_strike: may_change && happening.may_be_struck_by(member, role),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        row: Row::of(happening, &names, &titles),
    })
}
