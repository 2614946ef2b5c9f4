//! What can be typed about allergies.

use super::{answer::Answer, model::Account};
use crate::base::{ids::AllergyId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The account of one allergy, and the version it was opened on.
pub struct Told {
    pub account: Account,
    pub version: i64,
}

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let substance = form.needed_line("substance", "Enter what it is to, like penicillin.");
        let nature = form.choice("nature");
        let (reaction, since) = (form.line("reaction"), form.line("since"));
        let (source, version) = (form.line("source"), form.version());
        form.finish(|| {
            let (substance, nature) = (substance?, nature?);
            let account = Account { substance, nature, reaction, since, source };
            Some(Told { account, version })
        })
    }
}

/// The answer where nothing is listed: "none known" with who said so and when, or nothing.
pub struct Answered {
    pub none_known: Option<(Line, Date)>,
    pub version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> Result<Answered, FormErrors> {
        let (answer, version) = (form.choice("answer"), form.version());
        if answer == Some(Answer::NotAsked) {
            return Ok(Answered { none_known: None, version });
        }
        let said_by = form.needed_line("said_by", "Enter who said that none are known.");
        let says = "Enter the day on which it was said, like 9 Mar 2026.";
        let said_on = form.needed_day("said_on", says);
        form.finish(|| {
            answer?;
            Some(Answered { none_known: Some((said_by?, said_on?)), version })
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

impl FromForm for Against {
    fn read(form: &mut Reader) -> Result<Against, FormErrors> {
        let says = "Enter what you compared it with: the clinic's list, someone who saw it.";
        let against = form.needed_line("against", says);
        let version = form.version();
        form.finish(|| Some(Against { against: against?, version }))
    }
}

/// A check of the whole list: the allergies that stood on the page, each as `id.version`.
pub struct Those {
    pub against: Line,
    pub opened: Vec<(AllergyId, i64)>,
}

impl FromForm for Those {
    fn read(form: &mut Reader) -> Result<Those, FormErrors> {
        let says = "Enter what you compared the list with: the clinic's list, someone who saw it.";
        let against = form.needed_line("against", says);
        let opened = form.opened();
        form.finish(|| Some(Those { against: against?, opened }))
    }
}
