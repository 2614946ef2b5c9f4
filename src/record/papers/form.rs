//! What can be typed about a paper.

use super::{
    kind::{Kind, Original},
    model::{Filing, about},
};
use crate::base::{ids::PaperId, text::Line};
use crate::platform::web::form::{Choice, FormErrors, FromForm, Reader};

/// What it is, which older one it replaces, and the version it was opened on.
pub struct Filed {
    pub filing: Filing,
    pub replaces: Option<PaperId>,
    pub version: i64,
}

impl FromForm for Filed {
    fn read(form: &mut Reader) -> Result<Filed, FormErrors> {
        let kind = form.choice::<Kind>("kind");
        let title = form.needed_line("title", "Enter a title by which the others find it.");
        let (dated_on, expires_on) = (form.day("dated_on"), form.day("expires_on"));
        let contact_id = optional(form, "contact_id", "Choose from the contacts, or nobody.");
        let from_name = form.line("from_name");
        let original = match form.raw("original") {
            "" => None,
            _ => form.choice::<Original>("original"),
        };
        let (original_where, note) = (form.line("original_where"), form.note("note"));
        let (stewards_only, about) = (form.tick("stewards_only"), of_list(form));
        let replaces = optional(form, "replaces", "Choose the older version from the list.");
        let version = form.version();
        form.finish(|| {
            let (kind, title) = (kind?, title?);
            let filing = Filing {
                kind,
                title,
                dated_on,
                contact_id,
                from_name,
                original,
                original_where,
                stewards_only,
                expires_on,
                note,
                about,
            };
            Some(Filed { filing, replaces, version })
        })
    }
}

/// What it is about, as `visit/7`, or nothing.
fn of_list(form: &mut Reader) -> Option<String> {
    let sent = form.raw("about").to_owned();
    let read = about(&sent).map(|(kind, item)| format!("{kind}/{item}"));
    if read.is_none() && !sent.is_empty() {
        form.wrong("about", "Choose from the list, or nothing.");
    }
    read
}

/// An item of a list, or nothing; what stood on no page of ours says so.
fn optional<I: std::str::FromStr>(form: &mut Reader, name: &'static str, says: &str) -> Option<I> {
    let sent = form.raw(name).to_owned();
    let read = sent.parse().ok();
    if read.is_none() && !sent.is_empty() {
        form.wrong(name, says);
    }
    read
}

/// Struck: why it was a mistake.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was wrong with it.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}

/// The newer version that stands in its place.
pub struct Replaced {
    pub by: PaperId,
    pub version: i64,
}

impl FromForm for Replaced {
    fn read(form: &mut Reader) -> Result<Replaced, FormErrors> {
        let by = form.raw("replaced_by").parse().ok();
        if by.is_none() {
            form.wrong("replaced_by", "Choose the newer version.");
        }
        let version = form.version();
        form.finish(|| Some(Replaced { by: by?, version }))
    }
}

/// The words of a closed list, for a select.
pub fn words<C: Choice>() -> Vec<String> {
    C::ALL.iter().map(|it| it.words().to_owned()).collect()
}
