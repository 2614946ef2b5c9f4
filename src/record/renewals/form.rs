//! What can be typed of something that is to be renewed.

use super::{
    model::{Entry, Takes},
    reckon::{LONGEST_FORM, LONGEST_ISSUER},
    rule::Rule,
};
use crate::base::{ids::MemberId, text::Line};
use crate::platform::web::form::{Choice, FormErrors, FromForm, Reader};
use time::Date;

/// An entry of the family's own.
pub struct Worded {
    pub entry: Entry,
    pub version: i64,
}

impl FromForm for Worded {
    fn read(form: &mut Reader) -> Result<Worded, FormErrors> {
        let title = form.needed_line("title", "Enter what it is, like passport.");
        let last = form.needed_day("last_on", "Enter its last day, like 9 Mar 2027.");
        let every_months = number(form, "every_months", 1, 240);
        let (takes, version) = (takes(form), form.version());
        form.finish(|| {
            let entry = Entry { title: title?, last_on: last?, every_months, takes: takes? };
            Some(Worded { entry, version })
        })
    }
}

/// How long it takes, of something that is kept elsewhere.
pub struct Taking {
    pub takes: Takes,
    pub version: i64,
}

impl FromForm for Taking {
    fn read(form: &mut Reader) -> Result<Taking, FormErrors> {
        let (takes, version) = (takes(form), form.version());
        form.finish(|| Some(Taking { takes: takes?, version }))
    }
}

fn takes(form: &mut Reader) -> Option<Takes> {
    let rule = form.choice::<Rule>("rule");
    let issuer_days = number(form, "issuer_days", 0, LONGEST_ISSUER);
    let form_days = number(form, "form_days", 0, LONGEST_FORM);
    let note = form.note("note");
    Some(Takes { rule: rule?, issuer_days, form_days, note })
}

fn number(form: &mut Reader, name: &'static str, least: i64, most: i64) -> Option<i64> {
    let typed = form.raw(name).trim().to_owned();
    let read = typed.parse().ok().filter(|it| (least..=most).contains(it));
    if read.is_none() && !typed.is_empty() {
        form.wrong(name, format!("Enter a whole number from {least} to {most}, or nothing."));
    }
    read
}

/// Who renews it, and since when.
pub struct Begun {
    pub by: MemberId,
    pub since: Date,
    pub version: i64,
}

/// What is said where the one who was chosen has no place here.
pub const WHO: &str = "Choose who renews it.";

impl FromForm for Begun {
    fn read(form: &mut Reader) -> Result<Begun, FormErrors> {
        let by = form.raw("renewer_id").parse().ok();
        if by.is_none() {
            form.wrong("renewer_id", WHO);
        }
        let since = form.needed_day("renewing_since", "Enter since when, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| Some(Begun { by: by?, since: since?, version }))
    }
}

/// Its new last day; of a window that comes every year none is asked for.
pub struct Renewed {
    pub until: Option<Date>,
    pub version: i64,
}

impl FromForm for Renewed {
    fn read(form: &mut Reader) -> Result<Renewed, FormErrors> {
        let (until, version) = (form.day("last_on"), form.version());
        form.finish(|| Some(Renewed { until, version }))
    }
}

/// Why it is let lapse, or was written down by mistake.
pub struct Because {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Because {
    fn read(form: &mut Reader) -> Result<Because, FormErrors> {
        let reason = form.needed_line("reason", "Enter why.");
        let version = form.version();
        form.finish(|| Some(Because { reason: reason?, version }))
    }
}

/// The words of each rule that can be chosen.
pub fn rules() -> Vec<String> {
    Rule::typed().map(|it| it.words().to_owned()).collect()
}
