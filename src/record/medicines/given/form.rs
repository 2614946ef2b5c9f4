//! What can be typed about doses: all of one time, one as needed, one put right.

use super::super::schedule::times;
use super::model::Outcome;
use crate::base::{ids::MedicineId, quantity::Quantity, text::Line};
use crate::platform::web::form::{Choice, FormErrors, FromForm, Reader};
use time::{Date, Time};

/// Nothing is entered for this dose now.
pub const LATER: &str = "not entered yet";

/// The doses of one time that stood open on the page. Those of which nothing else was sent were
/// given, by whoever pressed.
pub struct Doses {
    pub each: Vec<Answer>,
    pub by: Option<Line>,
}

pub struct Answer {
    pub medicine: MedicineId,
    /// None: not entered yet.
    pub outcome: Option<Outcome>,
    /// None: as the schedule says.
    pub amount: Option<Quantity>,
    pub note: Option<Line>,
}

impl FromForm for Doses {
    fn read(form: &mut Reader) -> Result<Doses, FormErrors> {
        let opened = form.every("opened");
        let ids = opened.iter().filter_map(|it| it.parse::<MedicineId>().ok());
        let each: Vec<Answer> = ids.map(|id| answer(form, id)).collect();
        let by = form.line("by");
        if each.is_empty() {
            form.wrong("doses", "Every dose of this time is entered already.");
        }
        form.finish(|| Some(Doses { each, by }))
    }
}

/// The fields of one dose have its medicine behind their names.
fn answer(form: &mut Reader, medicine: MedicineId) -> Answer {
    let raw = |form: &Reader, field: &str| form.raw(&format!("{field}-{medicine}")).to_owned();
    let outcome = match raw(form, "outcome").as_str() {
        "" => Some(Outcome::Given),
        LATER => None,
        typed => {
            let found = Outcome::ALL.iter().copied().find(|it| it.words() == typed);
            if found.is_none() {
                form.wrong("doses", "Choose one of these for each dose.");
            }
            found
        }
    };
    let amount = Quantity::parse(&raw(form, "amount")).unwrap_or_else(|e| {
        form.wrong("doses", format!("How much: {e}"));
        None
    });
    let note = Line::parse(&raw(form, "note")).unwrap_or_else(|e| {
        form.wrong("doses", format!("The note: {e}"));
        None
    });
    Answer { medicine, outcome, amount, note }
}

/// A dose as needed. Without day and time it is now.
pub struct AsNeeded {
    pub amount: Quantity,
    pub day: Option<Date>,
    pub time: Option<Time>,
    pub by: Option<Line>,
    pub note: Option<Line>,
    /// The newest entry that stood beside the warning she read; pressed again, it is kept.
    pub anyway: Option<i64>,
}

impl FromForm for AsNeeded {
    fn read(form: &mut Reader) -> Result<AsNeeded, FormErrors> {
        let amount = needed_amount(form);
        let (day, time) = (form.day("day"), time(form));
        let (by, note) = (form.line("by"), form.line("note"));
        let anyway = form.raw("anyway").parse().ok();
        form.finish(|| Some(AsNeeded { amount: amount?, day, time, by, note, anyway }))
    }
}

fn needed_amount(form: &mut Reader) -> Option<Quantity> {
    let typed = form.raw("amount").trim().is_empty();
    let amount = form.quantity("amount");
    if typed || amount.is_some_and(Quantity::is_zero) {
        form.wrong("amount", "Write how much was given, like 1.");
    }
    amount
}

fn time(form: &mut Reader) -> Option<Time> {
    let typed = form.raw("time").trim().to_owned();
    let time = times::clock(&typed);
    if time.is_none() && !typed.is_empty() {
        form.wrong("time", "Write the time like 8:30 am or 14:30.");
    }
    time
}

/// An entry put right.
pub struct Correction {
    pub amount: Quantity,
    pub outcome: Outcome,
    pub note: Option<Line>,
    pub by: Option<Line>,
    pub day: Option<Date>,
    pub time: Option<Time>,
    pub version: i64,
}

impl FromForm for Correction {
    fn read(form: &mut Reader) -> Result<Correction, FormErrors> {
        let outcome = form.choice::<Outcome>("outcome");
        let amount = match form.raw("amount").trim() {
            "" => Some(Quantity::default()),
            _ => form.quantity("amount"),
        };
        let (note, by) = (form.line("note"), form.line("by"));
        let (day, time) = (form.day("day"), time(form));
        let version = form.version();
        form.finish(|| {
            let (amount, outcome) = (amount?, outcome?);
            Some(Correction { amount, outcome, note, by, day, time, version })
        })
    }
}

/// Struck: why it was a mistake.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was wrong with it.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}

/// For which medicines a log is kept from now on.
pub struct Keeping {
    pub all: bool,
    pub each: Vec<MedicineId>,
    pub version: i64,
}

impl FromForm for Keeping {
    fn read(form: &mut Reader) -> Result<Keeping, FormErrors> {
        let each = form.every("medicine");
        let each = each.iter().filter_map(|it| it.parse().ok()).collect();
        Ok(Keeping { all: form.tick("all"), each, version: form.version() })
    }
}
