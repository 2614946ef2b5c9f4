//! The place that is chosen for a note.

use super::items::Choice;
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// On its own (`None`) or at an item; and the version it was opened on.
pub struct Placed {
    pub at: Option<Choice>,
    pub version: i64,
}

/// What the form sends for "on its own".
pub const ALONE: &str = "alone";

impl FromForm for Placed {
    fn read(form: &mut Reader) -> Result<Placed, FormErrors> {
        let (chosen, version) = (form.raw("place").to_owned(), form.version());
        let at = match chosen.as_str() {
            ALONE => Some(None),
            other => Choice::parse(other).map(Some),
        };
        if at.is_none() {
            form.wrong("place", "Choose what this is about, or that it stands on its own.");
        }
        form.finish(|| Some(Placed { at: at?, version }))
    }
}
