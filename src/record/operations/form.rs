//! What can be typed about operations.

use super::model::Entry;
use crate::base::{ids::OperationId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// The entry of one operation, and the version it was opened on.
pub struct Entered {
    pub entry: Entry,
    pub version: i64,
}

impl FromForm for Entered {
    fn read(form: &mut Reader) -> Result<Entered, FormErrors> {
        let name = form.needed_line("name", "Enter what was done, like left hip replaced.");
        let (done_when, done_where) = (form.line("done_when"), form.line("done_where"));
        let (implant, implant_card) = (form.line("implant"), form.line("implant_card"));
        if implant_card.is_some() && implant.is_none() {
            form.wrong("implant", "Enter what was put in: there is a card's number for it.");
        }
        let (note, source) = (form.note("note"), form.line("source"));
        let version = form.version();
        form.finish(|| {
            let name = name?;
            let entry = Entry { name, done_when, done_where, implant, implant_card, note, source };
            Some(Entered { entry, version })
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

const AGAINST: &str = "Enter what you compared it with: the implant's card, the hospital's letter.";

impl FromForm for Against {
    fn read(form: &mut Reader) -> Result<Against, FormErrors> {
        let (against, version) = (form.needed_line("against", AGAINST), form.version());
        form.finish(|| Some(Against { against: against?, version }))
    }
}

/// A check of the whole list: what stood on the page, each as `id.version`.
pub struct Those {
    pub against: Line,
    pub opened: Vec<(OperationId, i64)>,
}

impl FromForm for Those {
    fn read(form: &mut Reader) -> Result<Those, FormErrors> {
        let against = form.needed_line("against", AGAINST);
        let opened = form.opened();
        form.finish(|| Some(Those { against: against?, opened }))
    }
}
