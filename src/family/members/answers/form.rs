//! What can be typed of an answer: by the one who asked, or by the person herself.

use super::model::{How, Said};
use crate::base::{
    ids::MemberId,
    text::{Line, Note},
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The question, and what was answered to it.
pub struct Told {
    pub question: Line,
    pub said: Said,
    pub hide_what: Option<Line>,
    pub hide_from: Option<Line>,
    pub own_words: Option<Note>,
    /// Who asked, and how; none where she writes it down herself.
    pub asked: Option<(MemberId, How)>,
    pub asked_on: Date,
    /// Of the answer that is asked anew.
    pub version: i64,
}

/// Typed by someone who asked her.
pub struct ByAsker(pub Told);
/// Typed by the person.
pub struct ByHerself(pub Told);

impl FromForm for ByAsker {
    fn read(form: &mut Reader) -> Result<ByAsker, FormErrors> {
        let by = form.raw("asked_by").parse().ok();
        if by.is_none() {
            form.wrong("asked_by", "Choose who asked.");
        }
        let how = form.choice("how");
        told(form, || Some(Some((by?, how?)))).map(ByAsker)
    }
}

impl FromForm for ByHerself {
    fn read(form: &mut Reader) -> Result<ByHerself, FormErrors> {
        told(form, || Some(None)).map(ByHerself)
    }
}

fn told(
    form: &mut Reader,
    asked: impl FnOnce() -> Option<Option<(MemberId, How)>>,
) -> Result<Told, FormErrors> {
    let question =
        form.needed_line("question", "Enter what was asked, in the words that were used.");
    let said = form.choice("said");
    let (hide_what, hide_from) = match said {
        Some(Said::Hide) => (
            form.needed_line("hide_what", "Enter what is to be hidden."),
            form.needed_line("hide_from", "Enter from whom it is to be hidden."),
        ),
        _ => (form.line("hide_what"), form.line("hide_from")),
    };
    if said.is_some_and(|it| it != Said::Hide) && hide_from.is_some() {
        form.wrong("hide_from", "This belongs to the answer “hide”. Leave it empty, or answer so.");
    }
    let own_words = form.note("own_words");
    let asked_on = form.needed_day("asked_on", "Enter the day, like 9 Mar 2026.");
    let version = form.version();
    form.finish(|| {
        let (said, asked) = (said?, asked()?);
        let hide_what = hide_what.filter(|_| said == Said::Hide);
        let (question, asked_on) = (question?, asked_on?);
        Some(Told { question, said, hide_what, hide_from, own_words, asked, asked_on, version })
    })
}

/// Why it was a mistake to write it down.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was mistaken.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}
