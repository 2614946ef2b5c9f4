//! A time zone as a calendar carries it (RFC 5545, 3.6.5), made from the rules at hand: each change of the clocks is listed, so
//! a reader that knows no zones, or older ones, shows the hours that our pages show.

use super::event::wall;
use crate::base::{
    clock::Instant,
    zone::{Zone, changes::Change},
};
use time::{Date, Month, Time};

/// So many years ahead are listed: the address is asked again long before they are over.
const YEARS: i32 = 12;

/// The zone from the year of the first day on, seen from a year.
pub fn lines(zone: &Zone, first: Date, this_year: i32) -> Vec<String> {
    let new_year = |year: i32| Date::from_calendar_date(year, Month::January, 1).unwrap_or(first);
    let begins = new_year(first.year() - 1);
    let from = zone.instant(begins, Time::MIDNIGHT);
    let to = zone.instant(new_year(this_year.max(first.year()) + YEARS), Time::MIDNIGHT);
    let (offset, name) = zone.offset_at(from);
    let mut lines = vec!["BEGIN:VTIMEZONE".to_owned(), format!("TZID:{}", zone.name())];
    let stands = Change { at: from, before: offset, after: offset, name, saves_daylight: false };
    lines.extend(observance(&stands, &[]));
    let mut groups: Vec<Vec<Change>> = Vec::new();
    for change in zone.changes(from, to) {
        let same = |it: &Vec<Change>| is_same(&it[0], &change);
        match groups.iter_mut().find(|it| same(it)) {
            Some(group) => group.push(change),
            None => groups.push(vec![change]),
        }
    }
    for group in &groups {
        lines.extend(observance(&group[0], &group[1..]));
    }
    lines.push("END:VTIMEZONE".into());
    lines
}

fn is_same(one: &Change, other: &Change) -> bool {
    (one.before, one.after, &one.name) == (other.before, other.after, &other.name)
}

/// The clocks go from one offset to another, at its moment and at others.
fn observance(it: &Change, again: &[Change]) -> Vec<String> {
    let kind = if it.saves_daylight { "DAYLIGHT" } else { "STANDARD" };
    let mut lines = vec![format!("BEGIN:{kind}"), format!("DTSTART:{}", wall(it.wall()))];
    lines.extend(again.iter().map(|it| format!("RDATE:{}", wall(it.wall()))));
    lines.push(format!("TZOFFSETFROM:{}", offset(it.before)));
    lines.push(format!("TZOFFSETTO:{}", offset(it.after)));
    lines.push(format!("TZNAME:{}", it.name));
    lines.push(format!("END:{kind}"));
    lines
}

/// "-0600"; with seconds where a zone has them.
fn offset(seconds: i64) -> String {
    let sign = if seconds < 0 { '-' } else { '+' };
    let (minutes, rest) = (seconds.abs() / 60, seconds.abs() % 60);
    let rest = if rest == 0 { String::new() } else { format!("{rest:02}") };
    format!("{sign}{:02}{:02}{rest}", minutes / 60, minutes % 60)
}

/// The year of a moment where someone is.
pub fn year(zone: &Zone, at: Instant) -> i32 {
    zone.day(at).year()
}
