//! The board: what nobody has in front, then what is taken, what waits, and what was done in the
//! last two weeks. What the reader is asked to take stands above it, what is put off below.

use super::{
    rows::{Ground, Row},
    seen,
};
use crate::{
    family::tasks::store::Wanted,
    platform::{
        auth::{
            area::Tasks,
            grant::{Change, Grant, See},
        },
        error::Result,
        web::{page::Page, urls},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::Duration;

/// Which part of the board is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    All,
    /// What the reader has, or is asked to take.
    Mine,
    /// What can be done from afar.
    Afar,
    Overdue,
}

impl Shown {
    const EACH: [(Shown, &'static str, &'static str); 4] = [
        (Shown::All, "", "All"),
        (Shown::Mine, "mine", "Mine"),
        (Shown::Afar, "afar", "From afar"),
        (Shown::Overdue, "overdue", "Overdue"),
    ];

    fn named(name: &str) -> Shown {
        let found = Shown::EACH.into_iter().find(|it| it.1 == name);
        found.map_or(Shown::All, |it| it.0)
    }

    fn has(self, row: &Row) -> bool {
        match self {
            Shown::All => true,
            Shown::Mine => row.hers || row.asked,
            Shown::Afar => row.task.from_afar,
            Shown::Overdue => row.overdue,
        }
    }
}

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    show: String,
}

/// One column of the board.
struct Lane {
    title: &'static str,
    empty: &'static str,
    rows: Vec<Row>,
}

#[derive(Template, WebTemplate)]
#[template(path = "tasks/board.html")]
pub struct BoardPage {
    page: Page,
    shown: Shown,
    may_change: bool,
    /// Nothing was ever written down.
    blank: bool,
    asked: Vec<Row>,
    lanes: [Lane; 4],
    put_off: Vec<Row>,
}

impl BoardPage {
    fn is_whole(&self) -> bool {
        self.shown == Shown::All
    }

    /// The parts of the board, each with its name in the address, its label, and whether it is
    /// the one that is looked at.
    fn sieve(&self) -> Vec<(&'static str, &'static str, bool)> {
        let each = Shown::EACH.into_iter();
        each.map(|(it, name, label)| (name, label, it == self.shown)).collect()
    }
}

/// For so long what is done stands on the board.
const DONE: Duration = Duration::days(14);

pub async fn show(grant: Grant<See<Tasks>>, asked: Query<Asked>) -> Result<BoardPage> {
    let (view, page) = (grant.view().await?, grant.page("Tasks"));
    let ground = Ground::read(&grant, &view, &page).await?;
    let wanted = Wanted { since: Some(grant.today() - DONE), ..Wanted::default() };
    let rows: Vec<Row> =
        seen::list(&view, &wanted).await?.into_iter().map(|it| ground.row(it)).collect();
    let (blank, shown) = (rows.is_empty(), Shown::named(&asked.show));
    let rows = rows.into_iter().filter(|it| shown.has(it));
    let may_change = grant.may::<Change<Tasks>>();
    let (asked, rows) = rows.partition::<Vec<_>, _>(|it| it.asked);
    let (put_off, rows) = rows.into_iter().partition::<Vec<_>, _>(|it| it.put_off);
    Ok(BoardPage { page, shown, may_change, blank, asked, lanes: lanes(rows), put_off })
}

fn lanes(rows: Vec<Row>) -> [Lane; 4] {
    let lane = |title, empty| Lane { title, empty, rows: Vec::new() };
    let mut lanes = [
        lane("Nobody has it", "Nothing waits for someone to take it."),
        lane("Taken", "Nobody has taken anything."),
        lane("Waiting", "Nothing waits on others."),
        lane("Done", "Nothing in the last two weeks."),
    ];
    for row in rows {
        let at = match &row {
            it if it.task.is_closed() => 3,
            it if it.free => 0,
            it if it.task.is_waiting() => 2,
            _ => 1,
        };
        lanes[at].rows.push(row);
    }
    lanes
}
