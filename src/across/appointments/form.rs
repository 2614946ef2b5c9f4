//! What can be typed about an appointment.

use super::choices::{HowItEnds, MonthDay, Repeats, Settled};
use crate::{
    base::{ids::ContactId, recurrence, text::Line, time_of_day::TimeOfDay, zone::Zone},
    platform::web::form::{FormErrors, FromForm, Reader},
    record::appointments::{
        escort::Escort,
        matter::MatterEntry,
        model::{Entry, Status, VisitKind},
        repeat::{Ends, Every, Repeat, WEEK},
    },
};
use time::Date;

/// The appointment as it was typed, and the versions it was opened on.
pub struct Booked {
    pub entry: Entry,
    /// None: the form did not ask.
    pub matter: Option<MatterEntry>,
    /// The clocks it is written in, where there is a choice.
    pub zone: Option<Zone>,
    pub version: i64,
    pub matter_version: i64,
}

impl FromForm for Booked {
    fn read(form: &mut Reader) -> Result<Booked, FormErrors> {
        let title =
            form.needed_line("title", "Enter what it is, like eye test or physical therapy.");
        let kind = form.choice::<VisitKind>("kind");
        let (contact_id, with_whom) = (contact(form), form.line("with_whom"));
        if contact_id.is_some() && with_whom.is_some() {
            form.wrong("with_whom", "Choose one of the contacts or type a name: one of the two.");
        }
        let place = form.line("place");
        let on_day = form.needed_day("on_day", "Enter the day, like 9 Mar 2026.");
        let at_time = time(form, "at_time");
        let minutes = number(form, "minutes", (5, 1440), 60);
        let repeat = on_day.and_then(|day| repeat(form, day));
        let (transport, interpreter) = (form.line("transport"), form.line("interpreter"));
        let escort = escort(form);
        let status = status(form);
        let zone = zone(form);
        let matter = form.tick("matter").then(|| matter(form));
        let version = form.version();
        let matter_version = form.raw("matter_version").parse().unwrap_or(0);
        form.finish(|| {
            let (title, kind, on_day, at_time) = (title?, kind?, on_day?, at_time?);
            let (minutes, repeat, escort, status) = (minutes?, repeat?, escort?, status?);
            let entry = Entry {
                title,
                kind,
                contact_id,
                with_whom,
                place,
                on_day,
                at_time,
                minutes: minutes.into(),
                repeat,
                transport,
                escort,
                interpreter,
                status,
            };
            Some(Booked { entry, matter, zone, version, matter_version })
        })
    }
}

/// Those that are chosen when it is booked or edited.
pub const STATUSES: [Status; 3] = [Status::Booked, Status::Confirmed, Status::Requested];

fn status(form: &mut Reader) -> Option<Status> {
    let status = form.choice::<Status>("status")?;
    // What was kept or missed may be edited, and stays so.
    match status {
        Status::Cancelled => {
            form.wrong("status", "Cancel it on its own page, with the reason.");
            None
        }
        other => Some(other),
    }
}

fn contact(form: &mut Reader) -> Option<ContactId> {
    let sent = form.raw("contact_id").to_owned();
    let read = sent.parse().ok();
    if !sent.is_empty() && read.is_none() {
        form.wrong("contact_id", "Choose from the list.");
    }
    read
}

/// A time that may be empty. `None`: what was typed is none.
pub fn time(form: &mut Reader, name: &'static str) -> Option<Option<TimeOfDay>> {
    let typed = form.raw(name).trim().to_owned();
    if typed.is_empty() {
        return Some(None);
    }
    let read = TimeOfDay::parse(&typed);
    if read.is_none() {
        form.wrong(name, "This is no time of the day. Write it like 9:30 am or 14:30.");
    }
    read.map(Some)
}

/// A whole number between two; empty is the usual one.
fn number(
    form: &mut Reader,
    name: &'static str,
    (least, most): (u16, u16),
    usual: u16,
) -> Option<u16> {
    let typed = form.raw(name).trim().to_owned();
    if typed.is_empty() {
        return Some(usual);
    }
    let read = typed.parse().ok().filter(|it| (least..=most).contains(it));
    if read.is_none() {
        form.wrong(name, format!("Write a whole number from {least} to {most}."));
    }
    read
}

/// `None`: something is wrong with it. What belongs to another choice is left over from a change
/// of mind.
fn repeat(form: &mut Reader, first: Date) -> Option<Option<Repeat>> {
    let repeats = form.choice::<Repeats>("repeats")?;
    if repeats == Repeats::Once {
        return Some(None);
    }
    let every = number(form, "every", (1, 366), 1)?;
    let every = match repeats {
        Repeats::Once => return Some(None),
        Repeats::Days => Every::Days(every),
        Repeats::Weeks => {
            let ticked = form.every("weekdays");
            let days = WEEK.iter().filter(|(_, it)| ticked.iter().any(|sent| sent == it));
            let days: Vec<_> = days.map(|(day, _)| *day).collect();
            Every::Weeks(every, if days.is_empty() { vec![first.weekday()] } else { days })
        }
        Repeats::Months => {
            let of = form.choice::<MonthDay>("of_month")?;
            Every::Months(every, of.kept())
        }
        Repeats::Years => Every::Years(every),
    };
    Some(Some(Repeat { every, ends: ends(form)? }))
}

fn ends(form: &mut Reader) -> Option<Ends> {
    match form.choice::<HowItEnds>("ends")? {
        HowItEnds::Never => Some(Ends::Never),
        HowItEnds::After => {
            if form.raw("times").trim().is_empty() {
                form.wrong("times", "Write how many times, like 8.");
            }
            number(form, "times", (1, 1000), 1).map(|it| Ends::After(it.into()))
        }
        HowItEnds::On => {
            let day = form.needed_day("until", "Enter the last day, like 9 Mar 2027.")?;
            Some(Ends::On(day.min(recurrence::LAST)))
        }
    }
}

pub fn escort(form: &mut Reader) -> Option<Escort> {
    let escort = Escort::named(form.raw("escort"));
    if escort.is_none() {
        form.wrong("escort", "Choose from the list.");
    }
    escort
}

fn zone(form: &mut Reader) -> Option<Zone> {
    if form.raw("zone").is_empty() { None } else { form.zone("zone") }
}

fn matter(form: &mut Reader) -> MatterEntry {
    MatterEntry {
        purpose: form.note("purpose"),
        fasting: form.line("fasting"),
        bring: form.note("bring"),
        referral: form.line("referral"),
        referral_until: form.day("referral_until"),
    }
}

/// Another escort, on the version that was shown.
pub struct Escorted {
    pub escort: Escort,
    pub version: i64,
}

impl FromForm for Escorted {
    fn read(form: &mut Reader) -> Result<Escorted, FormErrors> {
        let (escort, version) = (escort(form), form.version());
        form.finish(|| Some(Escorted { escort: escort?, version }))
    }
}

/// On another day, at another time.
pub struct Moved {
    pub day: Date,
    pub time: TimeOfDay,
    pub version: i64,
}

impl FromForm for Moved {
    fn read(form: &mut Reader) -> Result<Moved, FormErrors> {
        let day = form.needed_day("to_day", "Enter the day, like 9 Mar 2026.");
        let read = time(form, "to_time");
        if matches!(read, Some(None)) {
            form.wrong("to_time", "Enter the time, like 9:30 am.");
        }
        let version = form.version();
        form.finish(|| Some(Moved { day: day?, time: read??, version }))
    }
}

/// How it stands.
pub struct Stands {
    pub status: Status,
    pub version: i64,
}

impl FromForm for Stands {
    fn read(form: &mut Reader) -> Result<Stands, FormErrors> {
        let (status, version) = (status(form), form.version());
        form.finish(|| Some(Stands { status: status?, version }))
    }
}

/// Cancelled, or struck: why.
pub struct Why {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Why {
    fn read(form: &mut Reader) -> Result<Why, FormErrors> {
        let reason = form.needed_line("reason", "Enter the reason.");
        let version = form.version();
        form.finish(|| Some(Why { reason: reason?, version }))
    }
}

/// None: it was not asked.
pub struct Settling {
    pub settled: Option<Settled>,
    pub version: i64,
}

impl FromForm for Settling {
    fn read(form: &mut Reader) -> Result<Settling, FormErrors> {
        let asked = !form.raw("settled").is_empty();
        let settled = if asked { form.choice("settled") } else { None };
        let version = form.version();
        form.finish(|| Some(Settling { settled, version }))
    }
}
