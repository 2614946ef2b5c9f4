//! The press that confirms having read.

use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// Up to which entry the page showed.
pub struct Confirmed {
    pub upto: i64,
}

impl FromForm for Confirmed {
    fn read(form: &mut Reader) -> Result<Confirmed, FormErrors> {
        Ok(Confirmed { upto: form.raw("upto").parse().unwrap_or(0) })
    }
}
