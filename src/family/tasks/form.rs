//! What can be typed about a task.

use super::{
    model::{Due, Wording},
    moves::Finish,
    repeats::{Repeats, Unit},
};
use crate::base::{ids::MemberId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The task as it was typed, and the version it was opened on.
pub struct Worded {
    pub wording: Wording,
    pub version: i64,
}

impl FromForm for Worded {
    fn read(form: &mut Reader) -> Result<Worded, FormErrors> {
        let title = form.needed_line("title", "Write what is to be done.");
        let (why, on) = (form.note("why"), form.day("due_on"));
        let repeats = repeats(form);
        let untyped = form.raw("due_on").trim().is_empty();
        if untyped && repeats.is_some() {
            form.wrong("due_on", "Enter the day it is due first: the repeats are counted from it.");
        }
        let (firm, from_afar) = (form.tick("firm"), form.tick("from_afar"));
        let (about, version) = (form.item("about"), form.version());
        form.finish(|| {
            let due = on.map(|on| Due { on, firm, repeats });
            let wording = Wording { title: title?, why, due, from_afar, about: about? };
            Some(Worded { wording, version })
        })
    }
}

/// How often it comes again: a number and what it counts. No number: it does not.
fn repeats(form: &mut Reader) -> Option<Repeats> {
    let typed = form.raw("every").trim().to_owned();
    if typed.is_empty() {
        return None;
    }
    let plain = typed.bytes().all(|it| it.is_ascii_digit());
    let every = typed.parse::<i64>().ok().filter(|it| plain && (1..=Repeats::MOST).contains(it));
    if every.is_none() {
        form.wrong("every", "Enter a whole number from 1 to 99, or leave it empty.");
    }
    let unit = form.choice::<Unit>("unit");
    Some(Repeats { every: every?, unit: unit? })
}

/// Offered to a member.
pub struct Offered {
    pub to: MemberId,
    pub version: i64,
}

impl FromForm for Offered {
    fn read(form: &mut Reader) -> Result<Offered, FormErrors> {
        let to = form.raw("offered_to").parse().ok();
        if to.is_none() {
            form.wrong("offered_to", "Choose whom you ask.");
        }
        let version = form.version();
        form.finish(|| Some(Offered { to: to?, version }))
    }
}

/// Why, in a line that is needed: why not, why it need not be done, why it was a mistake.
pub struct Because {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Because {
    fn read(form: &mut Reader) -> Result<Because, FormErrors> {
        let reason = form.needed_line("reason", "Enter why, in a few words.");
        let version = form.version();
        form.finish(|| Some(Because { reason: reason?, version }))
    }
}

/// What it waits on, and when to ask again.
pub struct Awaited {
    pub on: Line,
    pub until: Date,
    pub version: i64,
}

impl FromForm for Awaited {
    fn read(form: &mut Reader) -> Result<Awaited, FormErrors> {
        let on = form.needed_line("waiting_on", "Enter whom or what it waits on.");
        let until = form.needed_day("waiting_until", "Enter when to ask again, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| Some(Awaited { on: on?, until: until?, version }))
    }
}

/// Put off until a day; the reason if one is given.
pub struct PutOff {
    pub until: Date,
    pub reason: Option<Line>,
    pub version: i64,
}

impl FromForm for PutOff {
    fn read(form: &mut Reader) -> Result<PutOff, FormErrors> {
        let until = form.needed_day("off_until", "Enter the day it comes back, like 9 Mar 2026.");
        let (reason, version) = (form.line("off_reason"), form.version());
        form.finish(|| Some(PutOff { until: until?, reason, version }))
    }
}

/// Done, with what shows it; and whether the next time stays with whoever had it.
pub struct Finished {
    pub finish: Finish,
    pub stays: bool,
    pub version: i64,
}

impl FromForm for Finished {
    fn read(form: &mut Reader) -> Result<Finished, FormErrors> {
        let on = form.needed_day("closed_on", "Enter the day it was done, like 9 Mar 2026.");
        let (proof, photo) = (form.note("proof"), form.photo("photo"));
        let (stays, version) = (form.tick("stays"), form.version());
        form.finish(|| Some(Finished { finish: Finish { on: on?, proof, photo }, stays, version }))
    }
}
