//! The calendar: what comes, by day; and what is over, newest first.

use super::{
    clash::{self, Seeing},
    row::{Row, Words},
};
use crate::{
    base::{clock::Instant, day, zone::Zone},
    platform::{
        auth::{
            area::{Role, Tasks},
            grant::Change,
        },
        error::Result,
        web::{page::Page, urls},
    },
    record::appointments::{meeting::Meeting, store},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::{Date, Duration, Time};

/// So many days stand on one page.
const DAYS: i64 = 56;
/// How far ahead it is looked for what comes after those.
const AHEAD: i64 = 800;
/// How long it is asked what became of one.
const ASKED: i64 = 14;
/// So many that are over stand on one page.
const MOST: usize = 40;

/// The rows of one day.
pub struct Day {
    pub name: String,
    pub rows: Vec<Row>,
}

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    from: String,
    before: String,
}

#[derive(Template, WebTemplate)]
#[template(path = "appointments/list.html")]
pub struct ListPage {
    page: Page,
    may_book: bool,
    /// Whose day the series no longer has.
    orphans: Vec<Row>,
    /// Over, and nobody has said what became of it.
    unsaid: Vec<Row>,
    days: Vec<Day>,
    /// The next one of each that has none on this page.
    further: Vec<Row>,
    first: bool,
    next: Option<Date>,
    earlier_zone: usize,
    until: String,
}

fn morning(zone: &Zone, day: Date) -> Instant {
    zone.instant(day, Time::MIDNIGHT)
}

pub async fn coming(grant: Seeing, Query(asked): Query<Asked>) -> Result<ListPage> {
    let page = grant.page("Appointments");
    let (zone, today) = (page.local().clone(), grant.today());
    let from = day::iso(&asked.from).filter(|it| *it > today).unwrap_or(today);
    let until = from.saturating_add(Duration::days(DAYS));
    let (start, end) = (morning(&zone, from), morning(&zone, until));
    let view = grant.view().await?;
    let words = Words::read(&view, &page).await?;
    let far = morning(&zone, until.saturating_add(Duration::days(AHEAD)));
    let calendar = store::calendar(&view).await?;
    drop(view);
    let mut all = calendar.meetings(morning(&zone, today - Duration::days(ASKED)), far);
    let orphans = calendar.orphans();
    let elsewhere = clash::elsewhere(&grant, (start, end)).await?;
    all.retain(|it| !it.orphan);
    let row = |it: &Meeting| Row::of(&words, it.clone(), &page);
    let within = |it: &&Meeting| start <= it.starts && it.starts < end;
    let mut rows: Vec<Row> = all.iter().filter(within).map(row).collect();
    clash::warn(&mut rows, &all, &elsewhere, &words);
    let unsaid = all.iter().filter(|it| it.starts < start && it.ends() < page.now);
    let unsaid = unsaid.filter(|it| it.status.is_open() && from == today).map(row).collect();
    let further = further(&all, end, (&words, &page));
    let earlier_zone = rows.iter().filter(|it| it.earlier_zone.is_some()).count();
    Ok(ListPage {
        may_book: grant.may::<Change<Tasks>>() && grant.role() != Role::Aide,
        orphans: if from == today { orphans.iter().map(row).collect() } else { Vec::new() },
        unsaid,
        next: (!further.is_empty()).then_some(until),
        further,
        first: from == today,
        days: by_day(rows),
        earlier_zone,
        until: day::short_words(until - Duration::days(1)),
        page,
    })
}

/// Of each appointment the next one after a moment, where it is open and has none before.
fn further(all: &[Meeting], end: Instant, (words, page): (&Words, &Page)) -> Vec<Row> {
    let mut seen = Vec::new();
    let mut rows = Vec::new();
    for it in all.iter().filter(|it| it.status.is_open() && it.starts >= page.now) {
        if !seen.contains(&it.id()) {
            seen.push(it.id());
            if it.starts >= end {
                rows.push(Row::of(words, it.clone(), page));
            }
        }
    }
    rows
}

pub fn by_day(rows: Vec<Row>) -> Vec<Day> {
    let mut days: Vec<(Date, Day)> = Vec::new();
    for row in rows {
        let date = row.when.date;
        if days.last().is_none_or(|(last, _)| *last != date) {
            days.push((date, Day { name: row.when.day.clone(), rows: Vec::new() }));
        }
        if let Some((_, day)) = days.last_mut() {
            day.rows.push(row);
        }
    }
    days.into_iter().map(|(_, day)| day).collect()
}

#[derive(Template, WebTemplate)]
#[template(path = "appointments/past.html")]
pub struct PastPage {
    page: Page,
    days: Vec<Day>,
    earlier: Option<String>,
}

pub async fn past(grant: Seeing, Query(asked): Query<Asked>) -> Result<PastPage> {
    let page = grant.page("Past appointments");
    let view = grant.view().await?;
    let words = Words::read(&view, &page).await?;
    let before = Instant::parse(&asked.before).unwrap_or(page.now).min(page.now);
    let mut all = store::meetings(&view, Instant::from_unix(0), before).await?;
    all.reverse();
    let earlier = (all.len() > MOST).then(|| all[MOST - 1].starts.to_string());
    // Two of the same moment never part.
    let last = all.get(MOST - 1).map(|it| it.starts);
    all.retain(|it| last.is_none_or(|last| it.starts >= last));
    let rows = all.into_iter().map(|it| Row::of(&words, it, &page)).collect();
    Ok(PastPage { days: by_day(rows), earlier, page })
}
