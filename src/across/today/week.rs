//! The next seven days, by day: appointments with their place and who goes along, and the tasks that
//! are due, with who has them.
//!
//! A list to extend: another kind of thing adds its lines in `of`, each at its moment.

use super::planned::Planned;
use crate::{
    across::appointments::row::{Words, place},
    base::{clock::Instant, day, zone::Zone},
    family::tasks::model::Task,
    platform::{
        audit::Names,
        web::{
            page::Page,
            urls::{self, Address},
        },
    },
    record::appointments::meeting::Meeting,
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

pub fn of(planned: &Planned, names: &Names, page: &Page) -> Vec<Day> {
    let (zone, today) = (page.local(), page.today());
    let morning = |day: Date| zone.instant(day, Time::MIDNIGHT);
    let (from, to) = (morning(today), morning(today.saturating_add(Duration::days(DAYS))));
    let all = planned.calendar.meetings(from, to).into_iter();
    let stands = all.filter(|it| it.status.is_open() && !it.orphan);
    let mut lines: Vec<Line> = stands.map(|it| line(&it, &planned.words, zone)).collect();
    lines.extend(due(planned, names, page));
    lines.sort_by_key(|it| it.at);
    by_day(lines, today)
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
fn due(planned: &Planned, names: &Names, page: &Page) -> Vec<Line> {
    let (zone, today) = (page.local(), page.today());
    let end = today.saturating_add(Duration::days(DAYS));
    let line = |it: &Task| {
        let on = it.due_on.filter(|on| *on >= today && *on < end)?;
        let owner = it.owner_id.filter(|_| !planned.hands.is_free(it));
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
    planned.tasks.iter().filter_map(line).collect()
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
