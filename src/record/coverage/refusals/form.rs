//! What can be typed about a refusal, and about a call.

use super::{
    calls::Told,
    model::{Answered, Said},
    mover::{Decision, Mover},
};
use crate::base::{
    ids::{CoverId, MedicineId},
    text::Line,
    time_of_day::{self, TimeOfDay},
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::{Date, Time};

/// What was said at the counter, and whose move it is then.
pub struct Refused {
    pub said: Said,
    pub mover: Mover,
}

impl FromForm for Refused {
    fn read(form: &mut Reader) -> Result<Refused, FormErrors> {
        let (said, mover) = (said(form), form.choice::<Mover>("mover"));
        form.finish(|| Some(Refused { said: said?, mover: mover? }))
    }
}

/// The words put right.
pub struct Reworded {
    pub said: Said,
    pub version: i64,
}

impl FromForm for Reworded {
    fn read(form: &mut Reader) -> Result<Reworded, FormErrors> {
        let (said, version) = (said(form), form.version());
        form.finish(|| Some(Reworded { said: said?, version }))
    }
}

fn said(form: &mut Reader) -> Option<Said> {
    let medicine = form.raw("medicine_id").parse::<MedicineId>().ok();
    if medicine.is_none() {
        form.wrong("medicine_id", "Choose which medicine was refused.");
    }
    let cover = match form.raw("cover_id") {
        "" => Some(None),
        sent => sent.parse::<CoverId>().ok().map(Some),
    };
    if cover.is_none() {
        form.wrong("cover_id", "Choose from the list on which cover it was refused.");
    }
    let on = form.needed_day("refused_on", "Enter the day, like 9 Mar 2026.");
    let words = form.needed_note("words", "Write what was said, or what the printout says.");
    let (pharmacy, code) = (form.line("pharmacy"), form.line("code"));
    Some(Said {
        medicine_id: medicine?,
        cover_id: cover?,
        refused_on: on?,
        pharmacy,
        words: words?,
        code,
    })
}

/// Whose move it is, since when.
pub struct Moved {
    pub mover: Mover,
    pub since: Date,
    pub version: i64,
}

impl FromForm for Moved {
    fn read(form: &mut Reader) -> Result<Moved, FormErrors> {
        let mover = form.choice::<Mover>("mover");
        let since = form.needed_day("mover_since", "Enter since when, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| Some(Moved { mover: mover?, since: since?, version }))
    }
}

/// When the plan had the prescriber's statement, on the wall where the person is.
pub struct Stated {
    pub on: Date,
    pub at: Time,
    pub expedited: bool,
    pub version: i64,
}

impl FromForm for Stated {
    fn read(form: &mut Reader) -> Result<Stated, FormErrors> {
        let on = form.needed_day("statement_day", "Enter the day, like 9 Mar 2026.");
        let at = time_of_day::read(form.raw("statement_time"));
        if at.is_none() {
            form.wrong(
                "statement_time",
                "Enter the time, like 4:10 pm: the hours are counted from it.",
            );
        }
        let (expedited, version) = (form.tick("expedited"), form.version());
        form.finish(|| Some(Stated { on: on?, at: at?, expedited, version }))
    }
}

/// What the plan decided, and whose move it is then.
pub struct Decided {
    pub answered: Answered,
    pub mover: Mover,
    pub version: i64,
}

impl FromForm for Decided {
    fn read(form: &mut Reader) -> Result<Decided, FormErrors> {
        let decision = form.choice::<Decision>("decision");
        let on = form.needed_day("decided_on", "Enter the day, like 9 Mar 2026.");
        let words = form.note("decision_words");
        let (next_step, next_by) = (form.line("next_step"), form.day("next_by"));
        let (mover, version) = (form.choice::<Mover>("mover"), form.version());
        form.finish(|| {
            let (decision, on) = (decision?, on?);
            let answered = Answered { decision, on, words, next_step, next_by };
            Some(Decided { answered, mover: mover?, version })
        })
    }
}

/// How it ended, and on which day.
pub struct Settled {
    pub how: Line,
    pub on: Date,
    pub version: i64,
}

impl FromForm for Settled {
    fn read(form: &mut Reader) -> Result<Settled, FormErrors> {
        let how = form.needed_line("settled_how", "Enter how it ended.");
        let on = form.needed_day("settled_on", "Enter the day, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| Some(Settled { how: how?, on: on?, version }))
    }
}

/// A call.
pub struct Called {
    pub told: Told,
}

impl FromForm for Called {
    fn read(form: &mut Reader) -> Result<Called, FormErrors> {
        let on = form.needed_day("called_on", "Enter the day, like 9 Mar 2026.");
        let typed = form.raw("called_time").trim().to_owned();
        let time = TimeOfDay::parse(&typed);
        if time.is_none() && !typed.is_empty() {
            form.wrong("called_time", "Enter a time, like 9:30 am, or leave it empty.");
        }
        let with_whom = form.needed_line("with_whom", "Enter with whom.");
        let said = form.needed_note("said", "Write what was said.");
        form.finish(|| {
            let told = Told { on: on?, time, with_whom: with_whom?, said: said? };
            Some(Called { told })
        })
    }
}
