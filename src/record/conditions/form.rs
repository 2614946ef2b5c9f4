//! What can be typed about conditions.

use super::model::Entry;
use crate::base::{ids::ConditionId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The entry of one condition, and the version it was opened on.
pub struct Entered {
    pub entry: Entry,
    pub version: i64,
}

impl FromForm for Entered {
    fn read(form: &mut Reader) -> Result<Entered, FormErrors> {
        let name = form.needed_line("name", "Enter what it is called, like atrial fibrillation.");
        let (since, followed_by) = (form.line("since"), form.line("followed_by"));
        let (note, source) = (form.note("note"), form.line("source"));
        let (who_may_know, wants_told) = (form.line("who_may_know"), form.choice("wants_told"));
        let (told_on, told_by) = (form.day("told_on"), form.line("told_by"));
        let version = form.version();
        form.finish(|| {
            let (name, wants_told) = (name?, wants_told?);
            let entry = Entry {
                name,
                since,
                followed_by,
                note,
                source,
                who_may_know,
                wants_told,
                told_on,
                told_by,
            };
            Some(Entered { entry, version })
        })
    }
}

/// Over: from which day, said by whom.
pub struct Ended {
    pub on: Date,
    pub said_by: Line,
    pub version: i64,
}

impl FromForm for Ended {
    fn read(form: &mut Reader) -> Result<Ended, FormErrors> {
        let on = form.needed_day("on", "Enter the day from which it is over, like 9 Mar 2026.");
        let said_by = form.needed_line("over_said_by", "Enter who said that it is over.");
        let version = form.version();
        form.finish(|| Some(Ended { on: on?, said_by: said_by?, version }))
    }
}

/// Struck: why it was a mistake.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was wrong with the entry.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}

/// A check: compared with what.
pub struct Against {
    pub against: Line,
    pub version: i64,
}

const AGAINST: &str = "Enter what you compared it with: the clinic's letter, the visit summary.";

impl FromForm for Against {
    fn read(form: &mut Reader) -> Result<Against, FormErrors> {
        let (against, version) = (form.needed_line("against", AGAINST), form.version());
        form.finish(|| Some(Against { against: against?, version }))
    }
}

/// A check of the whole list: what stood on the page, each as `id.version`.
pub struct Those {
    pub against: Line,
    pub opened: Vec<(ConditionId, i64)>,
}

impl FromForm for Those {
    fn read(form: &mut Reader) -> Result<Those, FormErrors> {
        let against = form.needed_line("against", AGAINST);
        let opened = form.opened();
        form.finish(|| Some(Those { against: against?, opened }))
    }
}
