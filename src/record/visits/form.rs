//! What can be typed when a note is struck.

use crate::base::text::Line;
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// Struck: why it was a mistake.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was wrong with the note.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}
