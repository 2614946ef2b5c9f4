//! What can be typed about a person.

use super::{first, model::Person};
use crate::base::text::Line;
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// The person as typed, and the version that was opened.
pub struct Described {
    pub person: Person,
    pub version: i64,
}

impl FromForm for Described {
    fn read(form: &mut Reader) -> Result<Described, FormErrors> {
        let name = form.needed_line("name", "Enter the person's full name.");
        let born = form.needed_day("born", "Enter the day of birth, like 9 Mar 1944.");
        let (address, language) = (form.line("address"), form.line("language"));
        let (hearing, vision) = (form.line("hearing"), form.line("vision"));
        let (mobility, zone) = (form.line("mobility"), form.zone("zone"));
        let filled = first::FIELDS.map(|(field, _)| !form.raw(field).trim().is_empty());
        for (field, says) in first::missing(filled) {
            form.wrong(field, says);
        }
        let (first_whom, first_said_by) = (form.line("first_whom"), form.line("first_said_by"));
        let first_number = form.phone("first_number");
        let says = "Enter the number to call in an emergency. In the United States it is 911.";
        let emergency_number = form.needed_phone("emergency_number", says);
        let (poison_line, source) = (form.phone("poison_line"), form.line("source"));
        let (paper, version) = (form.choice("paper"), form.version());
        form.finish(|| {
            let person = Person {
                address,
                language,
                hearing,
                vision,
                mobility,
                emergency_number: emergency_number?,
                poison_line,
                first_whom,
                first_number,
                first_said_by,
                source,
                paper: paper?,
                ..Person::new(name?, born?, zone?)
            };
            Some(Described { person, version })
        })
    }
}

/// A check: compared with what.
pub struct Against {
    pub against: Line,
    pub version: i64,
}

impl FromForm for Against {
    fn read(form: &mut Reader) -> Result<Against, FormErrors> {
        let says = "Enter what you compared it with: asked in person, the card, a letter.";
        let against = form.needed_line("against", says);
        let version = form.version();
        form.finish(|| Some(Against { against: against?, version }))
    }
}

/// What was told of a death.
pub struct Told {
    pub on: Date,
    pub by: Line,
    /// Whether it was asked a second time.
    pub sure: bool,
    pub version: i64,
}

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let on = form.needed_day("died_on", "Enter the day, like 3 Mar 2026.");
        let by = form.needed_line("died_told_by", "Enter who told you, and how.");
        let (sure, version) = (form.tick("sure"), form.version());
        form.finish(|| Some(Told { on: on?, by: by?, sure, version }))
    }
}

/// Why a death is taken back.
pub struct Undone {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Undone {
    fn read(form: &mut Reader) -> Result<Undone, FormErrors> {
        let reason = form.needed_line("reason", "Enter why it is taken back.");
        let version = form.version();
        form.finish(|| Some(Undone { reason: reason?, version }))
    }
}
