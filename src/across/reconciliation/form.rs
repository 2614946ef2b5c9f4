//! What can be typed: a list, one line of it, the decisions on its rows.

use super::{
    compare::Choice,
    lines::{self, Understood},
    model::Paper,
};
use crate::base::{ids::MemberId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use crate::record::questions::model::Whom;
use time::Date;

/// A list as it was pasted or written.
pub struct NewList {
    pub paper: Paper,
    pub dated_on: Date,
    pub source: Line,
    pub born: Option<Date>,
    pub lines: Vec<(Line, Understood)>,
}

impl FromForm for NewList {
    fn read(form: &mut Reader) -> Result<NewList, FormErrors> {
        let paper = form.choice::<Paper>("paper");
        let says = "Enter the day that stands on the list, like 24 Nov 2026.";
        let dated_on = form.needed_day("dated_on", says);
        let source = form.needed_line("source", "Enter whose list it is.");
        let born = form.day("born");
        let lines = read(form);
        form.finish(|| {
            let (paper, dated_on, source) = (paper?, dated_on?, source?);
            Some(NewList { paper, dated_on, source, born, lines: lines? })
        })
    }
}

fn read(form: &mut Reader) -> Option<Vec<(Line, Understood)>> {
    match lines::read(form.raw("lines")) {
        Ok(lines) if lines.is_empty() => {
            form.wrong("lines", "Paste the list here, or write one medicine on each line.");
            None
        }
        Ok(lines) => Some(lines),
        Err(e) => {
            form.wrong("lines", format!("Line {}: {}", e.line, e.says));
            None
        }
    }
}

/// How a line is to be understood, and the version it was opened on.
pub struct PutRight {
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub directions: Option<Line>,
    pub stopped: bool,
    pub left_out: bool,
    pub version: i64,
}

impl FromForm for PutRight {
    fn read(form: &mut Reader) -> Result<PutRight, FormErrors> {
        let name = form.needed_line("name", "Enter the name as it stands in the line.");
        let (strength, of) = (form.line("strength"), form.line("form"));
        let directions = form.line("directions");
        sure(form, "strength", &strength);
        sure(form, "directions", &directions);
        let (stopped, left_out) = (form.tick("stopped"), form.tick("left_out"));
        let version = form.version();
        form.finish(|| {
            Some(PutRight {
                name: name?,
                strength,
                form: of,
                directions,
                stopped,
                left_out,
                version,
            })
        })
    }
}

/// Tells at its field where a number that was typed cannot be read for sure.
fn sure(form: &mut Reader, field: &'static str, typed: &Option<Line>) {
    if let Some(why) = typed.as_ref().and_then(|it| lines::unsure(it.as_str())) {
        form.wrong(field, format!("{why}."));
    }
}

/// One more line, as it stands on the paper.
pub struct OneMore {
    pub words: Line,
    pub understood: Understood,
}

impl FromForm for OneMore {
    fn read(form: &mut Reader) -> Result<OneMore, FormErrors> {
        let raw = form.raw("words").to_owned();
        let words = form.needed_line("words", "Write the line as it stands on the paper.");
        form.finish(|| Some(OneMore { words: words?, understood: lines::understood(&raw) }))
    }
}

/// The rows that were decided, each with how it stood on the page.
pub struct Decided {
    pub rows: Vec<(String, Choice)>,
    /// Who will ask what is to be asked.
    pub owner: Option<MemberId>,
    pub for_whom: Whom,
}

impl FromForm for Decided {
    fn read(form: &mut Reader) -> Result<Decided, FormErrors> {
        let mut rows = Vec::new();
        for opened in form.every("opened") {
            let key = opened.split('/').next().unwrap_or_default();
            let chosen = Choice::ALL.into_iter().find(|it| it.sent() == form.raw(key));
            rows.extend(chosen.map(|choice| (opened.clone(), choice)));
        }
        if rows.is_empty() {
            form.wrong("rows", "Choose what to do with one row at least.");
        }
        let owner = form.raw("owner").to_owned();
        let owner = if owner.is_empty() { Some(None) } else { owner.parse().ok().map(Some) };
        if owner.is_none() {
            form.wrong("owner", "Choose who will ask.");
        }
        let for_whom = form.choice::<Whom>("for_whom").filter(|it| *it != Whom::Clinician);
        if for_whom.is_none() {
            form.wrong("for_whom", "Choose whom the questions are for.");
        }
        form.finish(|| Some(Decided { rows, owner: owner?, for_whom: for_whom? }))
    }
}

/// Struck: why it was a mistake.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was wrong with the list.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}
