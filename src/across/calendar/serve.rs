//! The calendar itself, to whoever has its address.

use super::{
    event::{self, Event},
    gather::{self, About, Detail},
    model::Feed,
    own_tasks, store, vtimezone,
};
use crate::{
    base::{clock::Instant, zone::Zone},
    platform::{
        audit::sha256,
        auth::{
            area::{Essentials, Tasks},
            doors::Visitor,
            shared::Shared,
        },
        db::View,
        error::{Error, Result},
    },
    record::{
        appointments::{calendar::Calendar, model::Appointment, store as appointments},
        contacts::store as contacts,
        people::store as people,
    },
};
use axum::{
    extract::Path,
    http::{HeaderMap, StatusCode, header},
    response::{IntoResponse, Response},
};
use std::collections::{BTreeMap, HashMap};

pub async fn calendar(
    visitor: Visitor,
    Path(token): Path<String>,
    asked: HeaderMap,
) -> Result<Response> {
    let secret = token.strip_suffix(".ics").ok_or(Error::NotFound)?;
    let feed = store::by_secret(&visitor.view().await?, secret).await?.ok_or(Error::NotFound)?;
    let text = text(&visitor, &feed).await?;
    let mark = format!("\"{}\"", &sha256(&text)[..32]);
    let kept = asked.get(header::IF_NONE_MATCH).and_then(|it| it.to_str().ok());
    let same = kept.is_some_and(|it| it == "*" || it.split(',').any(|it| is_mark(it, &mark)));
    let kind = (header::CONTENT_TYPE, "text/calendar; charset=utf-8".to_owned());
    // Private: no cache between may keep it; and each time it is asked whether it is still so.
    let cache = (header::CACHE_CONTROL, "private, no-cache".to_owned());
    let marked = (header::ETAG, mark);
    Ok(match same {
        true => (StatusCode::NOT_MODIFIED, [cache, marked]).into_response(),
        false => ([kind, cache, marked], text).into_response(),
    })
}

/// A mark that was compressed on its way is a weak one of the same.
fn is_mark(sent: &str, mark: &str) -> bool {
    sent.trim().trim_start_matches("W/") == mark
}

async fn text(visitor: &Visitor, feed: &Feed) -> Result<String> {
    let (house, now) = (visitor.house.config.base().absolute(""), visitor.house.clock.now());
    let (mut all, mut names) = (Vec::new(), Vec::new());
    let mut zone = Zone::utc();
    for record in visitor.records_of(feed.member_id).await? {
        if !feed.is_of(record.person) {
            continue;
        }
        if let Some(view) = record.view::<Tasks>(&visitor.house).await? {
            all.extend(of_record(&view, &record, (&house, feed)).await?);
            names.push(called(&record.name).to_owned());
            zone = record.zone.clone();
        }
    }
    let name = match names.as_slice() {
        [] => "Appointments".to_owned(),
        names => format!("Appointments: {}", names.join(", ")),
    };
    Ok(event::calendar(&name, &all, &zones(&all, (&zone, now))))
}

/// The zones of the series; where there is nothing at all, that of the record.
fn zones(all: &[Event], (zone, now): (&Zone, Instant)) -> Vec<Vec<String>> {
    let mut zones = gather::zones(all);
    if all.is_empty() {
        zones.insert(zone.name().to_owned(), (zone.clone(), zone.day(now)));
    }
    let lines = |(zone, first): &(Zone, time::Date)| {
        vtimezone::lines(zone, *first, vtimezone::year(zone, now))
    };
    zones.values().map(lines).collect()
}

/// "Ottoline": nobody outside the family needs more.
fn called(name: &str) -> &str {
    name.split(' ').next().unwrap_or(name)
}

async fn of_record(
    view: &View<Tasks>,
    record: &Shared,
    (house, feed): (&str, &Feed),
) -> Result<Vec<Event>> {
    let Calendar { appointments: all, occurrences: own } = appointments::calendar(view).await?;
    let mut changed = BTreeMap::new();
    for kind in ["appointment", "occurrence"] {
        let of_kind = view.last_changes(kind).await?;
        changed.extend(of_kind.into_iter().map(|(id, at)| ((kind, id), at)));
    }
    let contacts: HashMap<_, _> = match view.area::<Essentials>() {
        Some(view) => contacts::titles(&view).await?.into_iter().collect(),
        None => HashMap::new(),
    };
    let with = |of: &Appointment| {
        let contact = of.contact_id.and_then(|it| contacts.get(&it).cloned());
        contact.or_else(|| of.with_whom.as_ref().map(ToString::to_string))
    };
    let (detail, tasks) = (detail(view).await?, own_tasks::read(view, feed.member_id).await?);
    let about = About {
        house,
        person: record.person.into(),
        called: called(&record.name),
        member: feed.member_id,
        detail,
        died: record.died,
        changed: &changed,
        with: &with,
    };
    let mut events = gather::events(&about, &all, &own);
    // After a death nothing is to be done by a day.
    let tasks = tasks.iter().filter(|_| record.died.is_none());
    events.extend(tasks.filter_map(|(task, at)| own_tasks::event(&about, task, *at)));
    Ok(events)
}

/// How much of it may stand outside: by the record's setting for mail, as far as she sees it.
async fn detail(view: &View<Tasks>) -> Result<Detail> {
    let Some(view) = view.area::<Essentials>() else { return Ok(Detail::of(false)) };
    Ok(Detail::of(people::find(&view).await?.mail_names()))
}
