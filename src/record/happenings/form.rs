//! What can be typed about a happening.

use super::model::Noted;
use crate::base::text::Line;
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// What is noted, and the version it was opened on.
pub struct Told {
    pub noted: Noted,
    pub version: i64,
}

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let (words, happened) = (form.note("words"), form.line("happened"));
        let (photo, version) = (form.photo("photo"), form.version());
        form.finish(|| Some(Told { noted: Noted { words, photo, happened }, version }))
    }
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
