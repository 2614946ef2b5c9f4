//! What the first steward types.

use crate::base::{reach::Email, text::Line, zone::Zone};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

pub struct Start {
    pub name: Line,
    pub email: Email,
    pub password: String,
    pub zone: Zone,
    pub person: Line,
    pub born: Date,
    pub person_zone: Zone,
}

impl FromForm for Start {
    fn read(form: &mut Reader) -> Result<Start, FormErrors> {
        let name = form.needed_line("name", "Enter your name.");
        let email = form.email("email");
        let password = form.raw("password").to_owned();
        let zone = form.zone("zone");
        let person = form.needed_line("person", "Enter the name of the person you care for.");
        let born = form.needed_day("born", "Enter the birth date, like 9 Mar 1944.");
        let person_zone = form.zone("person_zone");
        form.finish(|| {
            Some(Start {
                name: name?,
                email: email?,
                password,
                zone: zone?,
                person: person?,
                born: born?,
                person_zone: person_zone?,
            })
        })
    }
}
