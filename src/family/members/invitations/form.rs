//! What can be typed into an invitation, and by the one who accepts it.

use super::super::places::form::role;
use crate::base::{reach::Email, text::Line, zone::Zone};
use crate::platform::{
    auth::area::Role,
    web::form::{FormErrors, FromForm, Reader},
};

pub struct Offer {
    pub name: Line,
    pub email: Option<Email>,
    pub role: Role,
}

impl FromForm for Offer {
    fn read(form: &mut Reader) -> Result<Offer, FormErrors> {
        let name = form.needed_line("name", "Enter the name of the one you invite.");
        let given = !form.raw("email").trim().is_empty();
        let email = if given { form.email("email") } else { None };
        let role = role(form, &Role::ALL);
        form.finish(|| Some(Offer { name: name?, email, role: role? }))
    }
}

/// Someone who signs in here for the first time.
pub struct Joining {
    pub name: Line,
    pub email: Email,
    pub password: String,
    pub zone: Zone,
}

impl FromForm for Joining {
    fn read(form: &mut Reader) -> Result<Joining, FormErrors> {
        let name = form.needed_line("name", "Enter your name, as the family knows you.");
        let (email, zone) = (form.email("email"), form.zone("zone"));
        let password = form.raw("password").to_owned();
        form.finish(|| Some(Joining { name: name?, email: email?, password, zone: zone? }))
    }
}
