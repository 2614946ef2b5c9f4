//! What can be typed about a question.

use super::model::{Answer, Whom, Wording};
use crate::base::{
    ids::{ContactId, MemberId},
    text::Line,
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The question as it was typed, and the version it was opened on.
pub struct Worded {
    pub wording: Wording,
    /// The contact it is for, where one was chosen: then its name is taken from there.
    pub contact: Option<ContactId>,
    pub version: i64,
}

impl FromForm for Worded {
    fn read(form: &mut Reader) -> Result<Worded, FormErrors> {
        let words = form.needed_note("words", "Write the question.");
        let for_whom = form.choice::<Whom>("for_whom");
        let chosen = form.raw("contact_id").parse::<ContactId>().ok();
        let contact = chosen.filter(|_| for_whom == Some(Whom::Clinician));
        let says = "Choose the one it is for, or enter the name.";
        let clinician = match (for_whom, contact) {
            (Some(Whom::Clinician), None) => form.needed_line("clinician", says),
            _ => None,
        };
        let about = form.item("about");
        let version = form.version();
        form.finish(|| {
            let (words, for_whom) = (words?, for_whom?);
            let wording = Wording { words, for_whom, clinician, about: about? };
            Some(Worded { wording, contact, version })
        })
    }
}

/// Handed to a member, or to nobody.
pub struct Handed {
    pub to: Option<MemberId>,
    pub version: i64,
}

impl FromForm for Handed {
    fn read(form: &mut Reader) -> Result<Handed, FormErrors> {
        let sent = form.raw("owner").to_owned();
        let to = if sent.is_empty() { Some(None) } else { sent.parse().ok().map(Some) };
        if to.is_none() {
            form.wrong("owner", "Choose who will ask.");
        }
        let version = form.version();
        form.finish(|| Some(Handed { to: to?, version }))
    }
}

/// Put to someone on a day.
pub struct Put {
    pub on: Date,
    pub version: i64,
}

impl FromForm for Put {
    fn read(form: &mut Reader) -> Result<Put, FormErrors> {
        let on = form.needed_day("on", "Enter the day it was asked, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| Some(Put { on: on?, version }))
    }
}

/// The answer, who gave it, and when.
pub struct Answered {
    pub answer: Answer,
    pub version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> Result<Answered, FormErrors> {
        let answer = form.needed_note("answer", "Write what was answered.");
        let by = form.needed_line("answered_by", "Enter who answered.");
        let on = form.needed_day("on", "Enter the day of the answer, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| {
            let answer = Answer { answer: answer?, by: by?, on: on? };
            Some(Answered { answer, version })
        })
    }
}

/// Let go: why it need not be asked.
pub struct LetGo {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for LetGo {
    fn read(form: &mut Reader) -> Result<LetGo, FormErrors> {
        let reason = form.needed_line("reason", "Enter why it need not be asked any more.");
        let version = form.version();
        form.finish(|| Some(LetGo { reason: reason?, version }))
    }
}
