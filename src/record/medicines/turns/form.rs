//! What can be typed about a turn.

use super::{
    super::{form::Labelled, model::Label},
    model::Said,
};
use crate::base::{ids::MedicineId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// A stop or a resuming.
pub struct Turned {
    pub said: Said,
    pub version: i64,
}

impl FromForm for Turned {
    fn read(form: &mut Reader) -> Result<Turned, FormErrors> {
        let (said, version) = (said(form), form.version());
        form.finish(|| Some(Turned { said: said?, version }))
    }
}

fn said(form: &mut Reader) -> Option<Said> {
    let on = form.needed_day("on", "Enter the day, like 2026-03-09 or 9 Mar 2026.");
    let by = form.needed_line("said_by", "Enter who said so.");
    let reason = form.needed_line("reason", "Enter the reason, as it was given.");
    Some(Said { on: on?, by: by?, reason: reason? })
}

/// A hold, with the day to resume where one was given.
pub struct Held {
    pub said: Said,
    pub resume_on: Option<Date>,
    pub version: i64,
}

impl FromForm for Held {
    fn read(form: &mut Reader) -> Result<Held, FormErrors> {
        let (said, resume_on) = (said(form), form.day("resume_on"));
        let version = form.version();
        form.finish(|| Some(Held { said: said?, resume_on, version }))
    }
}

/// Taken differently: only what a label says of that is asked.
pub struct Changed {
    pub said: Said,
    pub taken: Taken,
    pub version: i64,
}

pub struct Taken {
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub dose: Option<Line>,
    pub times: Option<Line>,
    pub route: Option<Line>,
    pub as_needed: bool,
    pub label_limit: Option<Line>,
}

impl Taken {
    /// As the label says now: what is left unsaid stays.
    pub fn of(label: Label) -> Taken {
        let Label { strength, form, dose, times, route, as_needed, label_limit, .. } = label;
        Taken { strength, form, dose, times, route, as_needed, label_limit }
    }

    /// The label with this on it.
    pub fn onto(self, label: Label, source: Line) -> Label {
        Label {
            strength: self.strength,
            form: self.form,
            dose: self.dose,
            times: self.times,
            route: self.route,
            as_needed: self.as_needed,
            label_limit: self.label_limit,
            source: Some(source),
            ..label
        }
    }
}

impl FromForm for Changed {
    fn read(form: &mut Reader) -> Result<Changed, FormErrors> {
        let said = said(form);
        let taken = Taken {
            strength: form.line("strength"),
            form: form.line("form"),
            dose: form.line("dose"),
            times: form.line("times"),
            route: form.line("route"),
            as_needed: form.tick("as_needed"),
            label_limit: form.line("label_limit"),
        };
        let version = form.version();
        form.finish(|| Some(Changed { said: said?, taken, version }))
    }
}

/// The day to resume, as it was given later; or none.
pub struct Resuming {
    pub on: Date,
    pub by: Line,
    pub version: i64,
}

impl FromForm for Resuming {
    fn read(form: &mut Reader) -> Result<Resuming, FormErrors> {
        let on = form.needed_day("resume_on", "Enter the day, like 2026-03-09 or 9 Mar 2026.");
        let by = form.needed_line("resume_by", "Enter who gave the day.");
        let version = form.version();
        form.finish(|| Some(Resuming { on: on?, by: by?, version }))
    }
}

/// A medicine as it is added; where it is newly started, who said so.
pub struct Added {
    pub label: Label,
    pub start: Option<Start>,
}

pub struct Start {
    pub by: Line,
    pub reason: Option<Line>,
    pub replaces: Option<MedicineId>,
}

impl FromForm for Added {
    fn read(form: &mut Reader) -> Result<Added, FormErrors> {
        let (by, reason) = (form.line("said_by"), form.line("reason"));
        let replaces = form.raw("replaces").parse::<MedicineId>().ok();
        let begins = by.is_some() || reason.is_some() || replaces.is_some();
        if begins && by.is_none() {
            form.wrong("said_by", "Enter who said so, or leave all of \"newly started\" empty.");
        }
        if begins && form.raw("started_on").trim().is_empty() {
            form.wrong("started_on", "Enter from which day: it is newly started.");
        }
        let Labelled { label, .. } = Labelled::read(form)?;
        let start = by.map(|by| Start { by, reason, replaces });
        Ok(Added { label, start })
    }
}
