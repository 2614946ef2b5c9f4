//! One thing that is to be renewed: its days, how the latest day to begin was reckoned, what the rule
//! says and who says so, and what can be done.

use super::{
    item::{self, State},
    list::Row,
};
use crate::platform::{
    auth::{
        area::{History, Members, Papers},
        grant::{Change, Grant, See},
    },
    error::Result,
    web::{
        page::Page,
        urls::{self, Address},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

#[derive(Template, WebTemplate)]
#[template(path = "renewals/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    says: Vec<String>,
    /// Where it is kept, if elsewhere; and where a task about it is made.
    kept_at: Option<String>,
    task: Option<String>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

impl ShowPage {
    /// Whether it stands, and someone may do something about it.
    fn acts(&self) -> bool {
        let state = self.row.item.state();
        self.may_change && matches!(state, State::Stands | State::Renewing(_))
    }

    fn rests(&self) -> bool {
        self.may_change && (self.row.is_lapsed() || self.row.is_done() || self.row.by.is_some())
    }

    /// Whether something was said of it that has a history.
    fn is_kept(&self) -> bool {
        self.row.item.kept.version > 0
    }
}

pub type At = Path<(String, String, i64)>;

pub async fn show(grant: Grant<See<Papers>>, Path((_, about, number)): At) -> Result<ShowPage> {
    let (view, today) = (grant.view().await?, grant.today());
    let item = item::find(&view, (&about, number), today).await?;
    let (names, born) = (view.names().await?, item::born(&view).await?);
    let page = grant.page(item.title.clone());
    Ok(ShowPage {
        says: item.rule_says(born),
        kept_at: item.to.as_ref().map(|it| page.at(it)),
        task: page.has_tasks.then(|| page.at(task(&item))),
        row: Row::of(item, &names, today),
        may_change: grant.may::<Change<Papers>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
    })
}

/// The tasks about the entry, about what is kept elsewhere, or a task about nothing that is listed.
fn task(item: &item::Item) -> Address {
    match item.named() {
        ("medicine", id) => urls::tasks_about("medicine", id),
        _ if item.kept.version > 0 => urls::tasks_about("renewal", item.kept.id),
        _ => urls::tasks().and("add"),
    }
}
