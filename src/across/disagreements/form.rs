//! What a press of "Make it a question" sends.

use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// A row by its name on the page.
pub struct Named {
    pub key: String,
}

impl FromForm for Named {
    fn read(form: &mut Reader) -> Result<Named, FormErrors> {
        Ok(Named { key: form.raw("row").to_owned() })
    }
}
