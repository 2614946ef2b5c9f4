//! What can be typed about contacts.

use super::{hours::Hours, model::Entry};
use crate::base::{ids::ContactId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// One entry, and the version it was opened on.
pub struct Entered {
    pub entry: Entry,
    pub version: i64,
}

impl FromForm for Entered {
    fn read(form: &mut Reader) -> Result<Entered, FormErrors> {
        let name = form.needed_line("name", "Enter whom to ask for.");
        let kind = form.choice("kind");
        let (who, organization) = (form.line("who"), form.line("organization"));
        let (phone, other_phone) = (form.phone("phone"), form.phone("other_phone"));
        let (email, zone) =
            (given(form, "email", Reader::email), given(form, "zone", Reader::zone));
        let (address, hours) = (form.note("address"), hours(form));
        let (note, source, version) = (form.line("note"), form.line("source"), form.version());
        let ways = ["phone", "other_phone", "email", "address"];
        if ways.iter().all(|it| form.raw(it).trim().is_empty()) {
            form.wrong("phone", UNREACHABLE);
        }
        form.finish(|| {
            // The only number is the one to try first.
            let (phone, other_phone) =
                if phone.is_some() { (phone, other_phone) } else { (other_phone, None) };
            let (name, kind) = (name?, kind?);
            let entry = Entry {
                name,
                kind,
                who,
                organization,
                phone,
                other_phone,
                email,
                address,
                zone,
                hours,
                note,
                source,
            };
            Some(Entered { entry, version })
        })
    }
}

pub const UNREACHABLE: &str =
    "Enter a phone number, an e-mail address or a postal address: one of them is enough.";

/// A field that may be empty and is read by a rule for one that may not.
fn given<T>(
    form: &mut Reader,
    name: &'static str,
    read: fn(&mut Reader, &'static str) -> Option<T>,
) -> Option<T> {
    if form.raw(name).trim().is_empty() { None } else { read(form, name) }
}

fn hours(form: &mut Reader) -> Option<Hours> {
    let typed = form.line("hours")?;
    Hours::parse(typed.as_str()).map_err(|says| form.wrong("hours", says)).ok()
}

/// Struck: why it leaves the list.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter why it leaves the list.");
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
        let says = "Enter what you compared it with: phoned the number, the clinic's letter.";
        let against = form.needed_line("against", says);
        let version = form.version();
        form.finish(|| Some(Against { against: against?, version }))
    }
}

/// A check of the whole list: the contacts that stood on the page, each as `id.version`.
pub struct Those {
    pub against: Line,
    pub opened: Vec<(ContactId, i64)>,
}

impl FromForm for Those {
    fn read(form: &mut Reader) -> Result<Those, FormErrors> {
        let says = "Enter what you compared the list with: phoned each one, the clinic's letter.";
        let against = form.needed_line("against", says);
        let opened = form.opened();
        form.finish(|| Some(Those { against: against?, opened }))
    }
}
