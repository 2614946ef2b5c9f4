//! What a press of "Make it a question" sends.

use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// The ingredient by its name on the page.
pub struct Named {
    pub name: String,
}

impl FromForm for Named {
    fn read(form: &mut Reader) -> Result<Named, FormErrors> {
        Ok(Named { name: form.raw("ingredient").to_owned() })
    }
}
