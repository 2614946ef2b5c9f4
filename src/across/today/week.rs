//! The next seven days, by day: appointments with their place and who goes along, and the tasks that
//! are due, with who has them.
//!
//! A list to extend: another kind of thing adds its lines in `lines`, each at its moment.

use crate::{
    across::{
        appointments::row::{Words, place},
        tasks::seen as tasks,
    },
    base::{clock::Instant, day, zone::Zone},
    family::tasks::{model::Task, store::Wanted},
    platform::{
        auth::area::{Essentials, Tasks},
        db::View,
        error::Result,
        web::{
            page::Page,
            urls::{self, Address},
        },
    },
    record::appointments::{meeting::Meeting, store},
};
use time::{Date, Duration, Time};

pub struct Day {
    pub name: String,
    pub lines: Vec<Line>,
}

/// One thing of a day.
pub struct Line {
    pub at: Instant,
    pub date: Date,
    /// "9:30 am", "9:30 am Duluth · 7:30 am for you"
    pub time: String,
    pub title: String,
    pub to: Address,
    pub detail: String,
    /// Whether nobody has said that she will.
    pub needs: bool,
}

pub const DAYS: i64 = 7;

/// None: the reader sees nothing of this kind.
pub async fn read(view: &View<Essentials>, page: &Page) -> Result<Option<Vec<Day>>> {
    let Some(view) = view.area::<Tasks>() else { return Ok(None) };
    let (zone, today) = (page.local(), page.today());
    let morning = |day: Date| zone.instant(day, Time::MIDNIGHT);
    let span = (morning(today), morning(today.saturating_add(Duration::days(DAYS))));
    Ok(Some(by_day(lines(&view, page, span).await?, today)))
}

async fn lines(
    view: &View<Tasks>,
    page: &Page,
    (from, to): (Instant, Instant),
) -> Result<Vec<Line>> {
    let words = Words::read(view, page).await?;
    let all = store::meetings(view, from, to).await?.into_iter();
    let stands = all.filter(|it| it.status.is_open() && !it.orphan);
    let mut lines: Vec<Line> = stands.map(|it| line(&it, &words, page.local())).collect();
    lines.extend(due(view, page).await?);
    lines.sort_by_key(|it| it.at);
    Ok(lines)
}

fn line(it: &Meeting, words: &Words, zone: &Zone) -> Line {
    let when = words.when(it);
    let here = when.here.as_ref().map(|it| format!(" · {it}")).unwrap_or_default();
    let parts =
        [words.with(&it.appointment), it.appointment.place.as_ref().map(ToString::to_string)];
    let parts = parts.into_iter().flatten().chain([words.along(it)]);
    Line {
        at: it.starts,
        date: it.day(zone),
        time: format!("{}{here}", when.time),
        title: it.appointment.title.to_string(),
        to: place(it),
        detail: parts.collect::<Vec<_>>().join(" · "),
        needs: it.needs_escort(),
    }
}

/// The tasks that are due on one of these days, at its beginning.
async fn due(view: &View<Tasks>, page: &Page) -> Result<Vec<Line>> {
    let (names, hands) = (view.names().await?, tasks::hands(view).await?);
    let (zone, today) = (page.local(), page.today());
    let end = today.saturating_add(Duration::days(DAYS));
    let wanted = Wanted { since: Some(today), ..Wanted::default() };
    let stands = |it: &Task| it.stands() && !it.is_put_off(today);
    let line = |it: Task| {
        let on = it.due_on.filter(|on| stands(&it) && *on >= today && *on < end)?;
        let owner = it.owner_id.filter(|_| !hands.is_free(&it));
        Some(Line {
            at: zone.instant(on, Time::MIDNIGHT),
            date: on,
            time: if it.firm { "must be done" } else { "best done" }.to_owned(),
            title: it.title.to_string(),
            to: urls::task(it.id),
            detail: owner.map_or("nobody has it".to_owned(), |it| format!("with {}", names.of(it))),
            needs: owner.is_none(),
        })
    };
    Ok(tasks::list(view, &wanted).await?.into_iter().filter_map(line).collect())
}

fn by_day(lines: Vec<Line>, today: Date) -> Vec<Day> {
    let mut days: Vec<(Date, Day)> = Vec::new();
    for line in lines {
        if days.last().is_none_or(|(last, _)| *last != line.date) {
            let name = match (line.date - today).whole_days() {
                0 => format!("Today, {}", day::short_words(line.date)),
                1 => format!("Tomorrow, {}", day::short_words(line.date)),
                _ => day::short_words(line.date),
            };
            days.push((line.date, Day { name, lines: Vec::new() }));
        }
        if let Some((_, day)) = days.last_mut() {
            day.lines.push(line);
        }
    }
    days.into_iter().map(|(_, day)| day).collect()
}
