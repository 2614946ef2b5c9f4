//! What can be typed about a medicine.

use super::model::{Label, Supply};
use crate::base::{ids::MedicineId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// The label, and the version it was opened on.
pub struct Labelled {
    pub label: Label,
    pub version: i64,
}

impl FromForm for Labelled {
    fn read(form: &mut Reader) -> Result<Labelled, FormErrors> {
        let name = form.needed_line("name", "Enter the name of the medicine.");
        let supply = form.choice::<Supply>("supply");
        let (strength, medicine_form) = (form.line("strength"), form.line("form"));
        let (dose, route, times) = (form.line("dose"), form.line("route"), form.line("times"));
        let (purpose, prescriber) = (form.line("purpose"), form.line("prescriber"));
        let started_on = form.day("started_on");
        let (as_needed, label_limit) = (form.tick("as_needed"), form.line("label_limit"));
        let (source, version) = (form.line("source"), form.version());
        form.finish(|| {
            let label = Label {
                name: name?,
                strength,
                form: medicine_form,
                dose,
                route,
                times,
                purpose,
                prescriber,
                started_on,
                as_needed,
                label_limit,
                supply: supply?,
                source,
            };
            Some(Labelled { label, version })
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
        let says = "Enter what you compared it with: the label, the clinic's list.";
        let against = form.needed_line("against", says);
        let version = form.version();
        form.finish(|| Some(Against { against: against?, version }))
    }
}

/// A check of the whole list: the medicines that stood on the page, each as `id.version`.
pub struct Those {
    pub against: Line,
    pub opened: Vec<(MedicineId, i64)>,
}

impl FromForm for Those {
    fn read(form: &mut Reader) -> Result<Those, FormErrors> {
        let says = "Enter what you compared the list with: the bottles, the clinic's list.";
        let against = form.needed_line("against", says);
        let opened = form.opened();
        form.finish(|| Some(Those { against: against?, opened }))
    }
}
