//! The appointments of a record as components of a calendar.
//!
//! What does not repeat is a moment. A series is its rule on the wall of the zone it was booked in, with that zone; one of it
//! that differs stands instead of the one it would have been. One whose day the series no longer has stands for itself.

use super::event::{Event, Starts, State};
use crate::{
    base::{clock::Instant, ids::MemberId, time_of_day::TimeOfDay, zone::Zone},
    platform::audit::steady_uuid,
    record::appointments::{
        escort::Escort,
        meeting::Meeting,
        model::{Appointment, Status},
        occurrence::Occurrence,
        repeat::Ends,
    },
};
use std::collections::BTreeMap;
use time::{Date, Time};

/// How much stands in it: only that there is an appointment, or its name, place and clinician too. The record's own setting
/// decides, the one for mail: an address may be copied as a mail may be passed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    Nothing,
    Names,
}

impl Detail {
    /// By the record's setting: whether a mail may have names.
    pub fn of(mail_names: bool) -> Detail {
        if mail_names { Detail::Names } else { Detail::Nothing }
    }
}

/// Whose calendar it is, and of whom it tells.
pub struct About<'a> {
    /// The address of the house: an appointment stays itself when it is fetched again.
    pub house: &'a str,
    pub person: i64,
    /// "Ottoline"
    pub called: &'a str,
    pub member: MemberId,
    pub detail: Detail,
    /// After a death nothing is to come.
    pub died: Option<Date>,
    /// When each was last changed: appointments and occurrences, by kind and id.
    pub changed: &'a BTreeMap<(&'static str, i64), Instant>,
    /// The names of clinicians and services.
    pub with: &'a dyn Fn(&Appointment) -> Option<String>,
}

/// All of a record.
pub fn events(about: &About, all: &[Appointment], own: &[Occurrence]) -> Vec<Event> {
    let mut events = Vec::new();
    for of in all {
        let own: Vec<_> =
            own.iter().filter(|it| it.appointment_id == of.id && !it.struck).collect();
        match alive(of, about.died) {
            None => {}
            Some(of) if of.is_series() => events.extend(series(about, &of, &own)),
            Some(of) => events.push(single(about, &of)),
        }
    }
    events
}

/// As far as it is not after a death; none where nothing is left.
fn alive(of: &Appointment, died: Option<Date>) -> Option<Appointment> {
    match died {
        None => Some(of.clone()),
        Some(died) if of.is_series() => of.ended_before(died.next_day()?),
        Some(died) => (of.on_day <= died).then(|| of.clone()),
    }
}

fn single(about: &About, of: &Appointment) -> Event {
    let meeting = Meeting::of(of, of.on_day, None);
    let starts =
        if meeting.is_timed() { Starts::At(meeting.starts) } else { Starts::Day(of.on_day) };
    event(about, &meeting, (uid(about, of), starts))
}

fn series(about: &About, of: &Appointment, own: &[&Occurrence]) -> Vec<Event> {
    let time = of.at_time.as_ref().map_or(Time::MIDNIGHT, TimeOfDay::time);
    let on = |day: Date| Starts::On(of.zone.clone(), day, time);
    let whole = Meeting::of(of, of.on_day, None);
    let mut events =
        vec![Event { rule: rule(of), ..event(about, &whole, (uid(about, of), on(of.on_day))) }];
    for it in own {
        let meeting = Meeting::of(of, it.on_day, Some(it));
        if about.died.is_some_and(|died| meeting.day(&of.zone) > died) {
            continue;
        }
        let starts = match (it.moved_on, &it.moved_time) {
            (Some(day), Some(time)) => Starts::On(of.zone.clone(), day, time.time()),
            _ => on(it.on_day),
        };
        if of.falls_on(it.on_day) {
            let instead = event(about, &meeting, (uid(about, of), starts));
            events.push(Event { instead_of: Some(on(it.on_day)), ..instead });
        } else {
            // The series no longer has its day: it stands for itself.
            let apart = steady_uuid(&format!("{} on {}", uid(about, of), it.on_day));
            events.push(event(about, &meeting, (apart, Starts::At(meeting.starts))));
        }
    }
    events
}

fn uid(about: &About, of: &Appointment) -> String {
    steady_uuid(&format!("{} {} appointment {}", about.house, about.person, of.id))
}

/// The rule, with its end as a moment: RFC 5545, 3.3.10, asks for UTC where a zone is named.
fn rule(of: &Appointment) -> Option<String> {
    let kept = of.repeats.as_ref()?.as_str();
    let Some(Ends::On(day)) = of.repeat().map(|it| it.ends) else { return Some(kept.to_owned()) };
    let last = Time::from_hms(23, 59, 59).unwrap_or(Time::MIDNIGHT);
    let until = super::event::moment(of.zone.instant(day, last));
    let at = kept.find(";UNTIL=")?;
    Some(format!("{};UNTIL={until}", &kept[..at]))
}

fn event(about: &About, meeting: &Meeting, (uid, starts): (String, Starts)) -> Event {
    let of = &meeting.appointment;
    let own = meeting.occurrence.as_ref();
    let changed = |kind: &'static str, id: i64| about.changed.get(&(kind, id)).copied();
    let stamps = [
        changed("appointment", of.id.into()),
        own.and_then(|it| changed("occurrence", it.id.into())),
    ];
    let names = about.detail == Detail::Names;
    let title = if names { of.title.as_str() } else { "Appointment" };
    Event {
        uid,
        // Both versions only go up.
        sequence: of.version - 1 + own.map_or(0, |it| it.version),
        stamp: stamps.into_iter().flatten().max().unwrap_or(Instant::from_unix(0)),
        starts,
        minutes: of.minutes,
        rule: None,
        instead_of: None,
        state: state(meeting.status),
        summary: format!("{title} ({})", about.called),
        place: of.place.as_ref().filter(|_| names).map(ToString::to_string),
        more: more(about, meeting, names),
        page: page(about, meeting),
    }
}

fn state(status: Status) -> State {
    match status {
        Status::Requested => State::Tentative,
        Status::Cancelled => State::Cancelled,
        _ => State::Confirmed,
    }
}

/// Who goes along is no secret of a clinic; with whom it is, is.
fn more(about: &About, meeting: &Meeting, names: bool) -> Option<String> {
    let with = (about.with)(&meeting.appointment).filter(|_| names).map(|it| format!("With {it}."));
    let along = match meeting.escort {
        Escort::Member(it) if it == about.member => Some("You go along.".to_owned()),
        Escort::Nobody if meeting.status.is_open() => Some("Nobody goes along yet.".to_owned()),
        _ => None,
    };
    let said: Vec<_> = with.into_iter().chain(along).collect();
    (!said.is_empty()).then(|| said.join("\n"))
}

fn page(about: &About, meeting: &Meeting) -> String {
    let id = meeting.id();
    let base = about.house.trim_end_matches('/');
    let one = match &meeting.occurrence {
        Some(it) => format!("/on/{}", it.on_day),
        None => String::new(),
    };
    format!("{base}/p/{}/appointments/{id}{one}", about.person)
}

/// The zones that its series speak of, each with the first day in it.
pub fn zones(all: &[Event]) -> BTreeMap<String, (Zone, Date)> {
    let mut zones: BTreeMap<String, (Zone, Date)> = BTreeMap::new();
    for event in all {
        for starts in [Some(&event.starts), event.instead_of.as_ref()].into_iter().flatten() {
            if let Starts::On(zone, day, _) = starts {
                let known = zones.entry(zone.name().to_owned()).or_insert((zone.clone(), *day));
                known.1 = known.1.min(*day);
            }
        }
    }
    zones
}
