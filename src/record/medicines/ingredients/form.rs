//! What can be typed about an ingredient.

use super::model::Entry;
use crate::base::{quantity::Quantity, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// The ingredient as it was typed, and the version it was opened on.
pub struct Listed {
    pub entry: Entry,
    pub version: i64,
}

impl FromForm for Listed {
    fn read(form: &mut Reader) -> Result<Listed, FormErrors> {
        let name = form.needed_line("name", "Enter the name of the ingredient.");
        let amount = with_unit(form, "amount", "unit");
        let per = match form.raw("per").trim() {
            "" => Some(Quantity::ONE),
            _ => some(form, "per"),
        };
        let counted = form.needed_line("counted", "Write what is counted, like tablet or mL.");
        let most = with_unit(form, "most", "most_unit");
        let version = form.version();
        form.finish(|| {
            let entry =
                Entry { name: name?, amount: amount?, per: per?, counted: counted?, most: most? };
            Some(Listed { entry, version })
        })
    }
}

/// An amount with its unit, or neither; `None` where one of the two is missing or wrong.
fn with_unit(
    form: &mut Reader,
    amount: &'static str,
    unit: &'static str,
) -> Option<Option<(Quantity, Line)>> {
    let empty = form.raw(amount).trim().is_empty();
    match (empty, form.line(unit)) {
        (true, None) => Some(None),
        (true, Some(_)) => {
            form.wrong(amount, "Write the number that stands before the unit, or empty both.");
            None
        }
        (false, None) => {
            some(form, amount);
            form.wrong(unit, "Write the unit, like mg, mcg, g, mL or units.");
            None
        }
        (false, Some(unit)) => Some(Some((some(form, amount)?, unit))),
    }
}

/// An amount that is not nothing.
fn some(form: &mut Reader, name: &'static str) -> Option<Quantity> {
    let read = form.quantity(name);
    if read.is_some_and(Quantity::is_zero) {
        form.wrong(name, "Write a number above 0.");
    }
    read.filter(|it| !it.is_zero())
}
