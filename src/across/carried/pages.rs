//! The page of what each carries over a window of days, and one entry.

use super::{
    door::Carrying,
    sums::{self, Named, Part},
};
use crate::{
    across::tasks::{
        rows::{Ground, Row},
        seen,
    },
    base::{
        day,
        ids::{CarriedId, MemberId},
    },
    family::{
        carried::{
            model::Carried,
            store::{self, Wanted, Wishes},
        },
        tasks::store as tasks,
    },
    platform::{
        audit::Names,
        auth::{
            area::{Essentials, History, Tasks},
            grant::{Change, Grant, See},
        },
        db::View,
        error::Result,
        web::{page::Page, path::At, urls},
    },
    record::{
        contacts::{kind::Kind as ContactKind, model::Contact, store as contacts},
        people::{model::Person, store as people},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::{Date, Duration};

/// The days that are looked at, and what was typed into them.
pub struct Window {
    from: Date,
    to: Date,
    typed_from: String,
    typed_to: String,
    /// What was typed and could not be read.
    unread: Option<String>,
}

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Between {
    from: String,
    to: String,
}

/// So many days where no others are chosen.
const DAYS: i64 = 28;

impl Window {
    fn read(between: &Between, today: Date) -> Window {
        let usual = today - Duration::days(DAYS - 1);
        let typed = |text: &str, or: Date| match text.trim() {
            "" => Ok(or),
            text => day::parse(text).ok_or_else(|| text.to_owned()),
        };
        let (from, to) = (typed(&between.from, usual), typed(&between.to, today));
        let unread = from.clone().err().or(to.clone().err());
        let (from, to) = match (from, to) {
            (Ok(from), Ok(to)) if from <= to => (from, to),
            // The other way round is meant as well.
            (Ok(from), Ok(to)) => (to, from),
            _ => (usual, today),
        };
        let (typed_from, typed_to) = (day::words(from), day::words(to));
        Window { from, to, typed_from, typed_to, unread }
    }

    fn says(&self) -> String {
        format!("{} to {}", day::short_words(self.from), day::short_words(self.to))
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "carried/list.html")]
pub struct ListPage {
    page: Page,
    window: Window,
    parts: Vec<Part>,
    entries: Vec<Named>,
    wishes: Wishes,
    /// The reader is there for her own entries alone: an aide.
    own_only: bool,
    may_decide: bool,
    afar: Vec<Row>,
    may_change: bool,
    phones: Option<Phones>,
}

/// Whom to phone for a rest, in a crisis, in an emergency.
struct Phones {
    person: Person,
    /// Each with when it answers.
    numbers: Vec<(Contact, Option<String>)>,
}

pub async fn list(Carrying(grant): Carrying, Query(between): Query<Between>) -> Result<ListPage> {
    let (view, page) = (grant.view().await?, grant.page("What each carries"));
    let window = Window::read(&between, grant.today());
    let (from, to) = (Some(window.from), Some(window.to));
    let wanted = Wanted { from, to, ..Wanted::default() };
    let names = view.names().await?;
    let entries: Vec<_> =
        store::list(&view, &wanted).await?.into_iter().map(|it| named(it, &names)).collect();
    let wishes = store::wishes(&view, grant.today()).await?;
    let own_only = view.own_only();
    let nobody_left_out = !own_only && !wishes.someone && !wishes.of_all.hides;
    Ok(ListPage {
        parts: sums::parts(&entries, nobody_left_out),
        afar: afar(&grant, &view, &page).await?,
        phones: phones(&grant, &view).await?,
        may_decide: grant.role().decides(),
        may_change: true,
        entries,
        wishes,
        own_only,
        window,
        page,
    })
}

fn named(carried: Carried, names: &Names) -> Named {
    let member = |it: MemberId| names.of(it).to_owned();
    let who = carried.member_id.map(member).or(carried.name.as_ref().map(ToString::to_string));
    Named { who: who.unwrap_or_default(), carried }
}

/// The open tasks that can be done from afar.
async fn afar(grant: &Grant<Change<Tasks>>, view: &View<Tasks>, page: &Page) -> Result<Vec<Row>> {
    let ground = Ground::read(grant, view, page).await?;
    let wanted = tasks::Wanted { since: Some(grant.today()), ..tasks::Wanted::default() };
    let rows = seen::list(view, &wanted).await?.into_iter().map(|it| ground.row(it));
    Ok(rows.filter(|it| it.free && it.task.from_afar && !it.put_off).collect())
}

async fn phones(grant: &Grant<Change<Tasks>>, view: &View<Tasks>) -> Result<Option<Phones>> {
    let Some(view) = view.area::<Essentials>() else { return Ok(None) };
    let mut numbers = contacts::list(&view).await?;
    numbers.retain(|it| matches!(it.kind, ContactKind::Respite | ContactKind::Crisis));
    let hours = |it: &Contact| it.hours_there(grant.zone(), grant.today());
    let numbers = numbers.into_iter().map(|it| (hours(&it), it)).map(|(hours, it)| (it, hours));
    Ok(Some(Phones { person: people::find(&view).await?, numbers: numbers.collect() }))
}

#[derive(Template, WebTemplate)]
#[template(path = "carried/show.html")]
pub struct ShowPage {
    page: Page,
    it: Named,
    by: String,
    hers: bool,
    may_read_history: bool,
}

pub async fn show(Carrying(grant): Carrying, At(id): At<CarriedId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (carried, names) = (store::find(&view, id).await?, view.names().await?);
    Ok(ShowPage {
        page: grant.page(carried.title()),
        by: names.of(carried.entered_by).to_owned(),
        hers: carried.may_be_changed_by(grant.member()),
        may_read_history: grant.may::<See<History>>(),
        it: named(carried, &names),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn window(from: &str, to: &str) -> Window {
        let between = Between { from: from.to_owned(), to: to.to_owned() };
        Window::read(&between, date!(2026 - 11 - 25))
    }

    #[test]
    fn the_window_is_four_weeks_unless_others_are_chosen() {
        let days = |it: &Window| (it.from, it.to);
        let usual = (date!(2026 - 10 - 29), date!(2026 - 11 - 25));
        assert_eq!(days(&window("", "")), usual);
        assert_eq!((usual.1 - usual.0).whole_days() + 1, 28);
        let chosen = (date!(2026 - 01 - 01), date!(2026 - 01 - 31));
        assert_eq!(days(&window("1 Jan 2026", "31 Jan 2026")), chosen);
        assert_eq!(days(&window("31 Jan 2026", "1 Jan 2026")), chosen);
        let unread = window("31 Feb 2026", "");
        assert_eq!((days(&unread), unread.unread.as_deref()), (usual, Some("31 Feb 2026")));
    }
}
