//! The questions: those that wait in front, of these the ones nobody will ask; then the others.

use super::occasion;
use crate::{
    across::{
        history::{
            kinds,
            titles::{Thing, Titles},
        },
        visits::meeting::Met,
    },
    base::ids::QuestionId,
    platform::{
        audit::Names,
        auth::{
            area::{Clinical, History, Members},
            grant::{Change, Grant, See},
        },
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
    record::{
        questions::{
            model::Question,
            store::{self, Wanted},
        },
        visits::store as visits,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;
use std::collections::HashMap;

/// One question as it is listed.
pub struct Row {
    pub question: Question,
    pub by: String,
    pub owner: Option<String>,
    pub about: Option<Thing>,
    /// At how many visits it stood and was not answered.
    pub carried: usize,
}

/// How often each question was carried on.
type Carried = HashMap<QuestionId, usize>;

impl Row {
    pub(super) fn of(
        question: Question,
        (names, titles): (&Names, &Titles),
        carried: &Carried,
    ) -> Row {
        let about = question.about().and_then(|(kind, item)| titles.thing(kind, item));
        let owner = question.owner_id.map(|it| names.of(it).to_owned());
        let carried = carried.get(&question.id).copied().unwrap_or(0);
        Row { by: names.of(question.entered_by).to_owned(), owner, about, carried, question }
    }

    /// "stood at 2 visits", while it waits.
    pub(super) fn stood(&self) -> Option<String> {
        match self.carried {
            _ if !self.question.waits() => None,
            0 => None,
            1 => Some("stood at one visit already".to_owned()),
            many => Some(format!("stood at {many} visits already")),
        }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "questions/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    waiting: Vec<Row>,
    done: Vec<Row>,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (names, titles) = (view.names().await?, Titles::read(&view, &[]).await?);
    let carried = visits::carried(&view).await?;
    let all = store::list(&view, &Wanted::default()).await?.into_iter();
    let rows = all.map(|it| Row::of(it, (&names, &titles), &carried));
    let (waiting, done) = rows.partition(|it: &Row| it.question.waits());
    let may_change = grant.may::<Change<Clinical>>();
    Ok(ListPage { page: grant.page("Questions"), may_change, waiting, done })
}

#[derive(Template, WebTemplate)]
#[template(path = "questions/about.html")]
pub struct AboutPage {
    page: Page,
    title: String,
    back: String,
    /// The item, as the form for a new question takes it.
    item: String,
    may_change: bool,
    rows: Vec<Row>,
}

type Item = Path<(String, String, i64)>;

pub async fn about(grant: Grant<See<Clinical>>, Path((_, kind, item)): Item) -> Result<AboutPage> {
    let view = grant.view().await?;
    let (names, titles) = (view.names().await?, Titles::read(&view, &[]).await?);
    let carried = visits::carried(&view).await?;
    let title = titles.of(&kind, item).ok_or(Error::NotFound)?.to_owned();
    let page = grant.page(format!("Questions about {title}"));
    let back = page.at(kinds::page(&kind, item).ok_or(Error::NotFound)?);
    let named = format!("{kind}/{item}");
    let wanted = Wanted { about: Some((kind, item)), ..Wanted::default() };
    let rows = store::list(&view, &wanted).await?.into_iter();
    let rows = rows.map(|it| Row::of(it, (&names, &titles), &carried)).collect();
    let may_change = grant.may::<Change<Clinical>>();
    Ok(AboutPage { page, title, back, item: named, may_change, rows })
}

#[derive(Template, WebTemplate)]
#[template(path = "questions/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    /// The next visit at which it is asked, while it waits.
    next: Option<Met>,
    hers: bool,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<QuestionId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let question = store::find(&view, id).await?;
    let (names, titles) = (view.names().await?, Titles::read(&view, &[]).await?);
    let carried = visits::carried(&view).await?;
    Ok(ShowPage {
        page: grant.page(question.title()),
        next: match question.waits() {
            true => occasion::next(&view, &question, grant.now()).await?,
            false => None,
        },
        hers: question.is_owned_by(grant.member()),
        may_change: grant.may::<Change<Clinical>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        row: Row::of(question, (&names, &titles), &carried),
    })
}
