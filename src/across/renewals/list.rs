//! The list of all that is to be renewed, by the latest day to begin.

use super::item::{self, Item, State};
use crate::across::{directives, today::needs::Need};
use crate::platform::{
    audit::Names,
    auth::{
        area::{Directives, Papers},
        grant::{Change, Grant, See},
    },
    error::Result,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

/// One of them, with what is shown beside it.
pub struct Row {
    pub item: Item,
    /// Who renews it.
    pub by: Option<String>,
    pub since: Option<String>,
    pub needs: bool,
    pub begin: String,
    pub source: String,
}

impl Row {
    pub fn of(item: Item, names: &Names, today: Date) -> Row {
        let by = match item.state() {
            State::Renewing(by) => Some(names.of(by).to_owned()),
            _ => None,
        };
        let since = item.kept.renewing_since.map(crate::base::day::words);
        Row {
            needs: item.needs_someone(today),
            begin: item.begin_words(today),
            source: item.source(),
            by,
            since,
            item,
        }
    }

    pub fn is_lapsed(&self) -> bool {
        self.item.state() == State::Lapsed
    }

    pub fn is_done(&self) -> bool {
        self.item.state() == State::Done
    }

    pub fn is_struck(&self) -> bool {
        self.item.state() == State::Struck
    }

    /// Nobody has to do anything.
    fn rests(&self) -> bool {
        self.is_lapsed() || self.is_done()
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "renewals/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    rows: Vec<Row>,
    /// Let lapse, or done for this time.
    past: Vec<Row>,
    /// Directives that are to be looked at again, after what happened.
    reviews: Vec<Need>,
}

pub async fn list(grant: Grant<See<Papers>>) -> Result<ListPage> {
    let (view, today) = (grant.view().await?, grant.today());
    let names = view.names().await?;
    let all = item::all(&view, today).await?.into_iter().map(|it| Row::of(it, &names, today));
    let (past, rows) = all.filter(|it| !it.is_struck()).partition(Row::rests);
    let reviews = match view.area::<Directives>() {
        Some(view) => directives::needs::reviews(&view).await?,
        None => Vec::new(),
    };
    let may_change = grant.may::<Change<Papers>>();
    Ok(ListPage { page: grant.page("To be renewed"), may_change, rows, past, reviews })
}
