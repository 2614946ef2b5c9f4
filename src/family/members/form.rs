//! What can be typed at sign-in and about oneself.

use crate::base::{
    reach::{Email, Phone},
    text::Line,
    zone::Zone,
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

pub struct SignIn {
    pub email: Email,
    pub password: String,
    pub own_device: bool,
    /// Where the member was going when she was asked to sign in.
    pub next: Option<String>,
}

impl FromForm for SignIn {
    fn read(form: &mut Reader) -> Result<SignIn, FormErrors> {
        let email = form.email("email");
        let password = form.raw("password").to_owned();
        if password.is_empty() {
            form.wrong("password", "Enter your password.");
        }
        let (own_device, next) = (form.tick("own_device"), own_path(form.raw("next")));
        form.finish(|| Some(SignIn { email: email?, password, own_device, next }))
    }
}

/// A path of this house, never another one's address.
pub fn own_path(typed: &str) -> Option<String> {
    let plain = |it: u8| it.is_ascii_alphanumeric() || b"/-_.".contains(&it);
    let ours = ["/p/", "/me", "/join/"].iter().any(|it| typed.starts_with(it));
    let sound = ours && typed.len() < 200 && !typed.contains("//") && typed.bytes().all(plain);
    sound.then(|| typed.to_owned())
}

/// A forgotten password: for which address.
pub struct Forgot {
    pub email: Email,
}

impl FromForm for Forgot {
    fn read(form: &mut Reader) -> Result<Forgot, FormErrors> {
        let email = form.email("email");
        form.finish(|| Some(Forgot { email: email? }))
    }
}

/// A password that is being chosen.
pub struct Chosen {
    pub password: String,
}

impl FromForm for Chosen {
    fn read(form: &mut Reader) -> Result<Chosen, FormErrors> {
        Ok(Chosen { password: form.raw("password").to_owned() })
    }
}

/// A password that takes the place of the present one.
pub struct Changed {
    pub present: String,
    pub password: String,
}

impl FromForm for Changed {
    fn read(form: &mut Reader) -> Result<Changed, FormErrors> {
        let (present, password) = (form.raw("present").to_owned(), form.raw("password").to_owned());
        Ok(Changed { present, password })
    }
}

/// Own settings.
pub struct Settings {
    pub name: Line,
    pub phone: Option<Phone>,
    pub zone: Zone,
    pub version: i64,
}

impl FromForm for Settings {
    fn read(form: &mut Reader) -> Result<Settings, FormErrors> {
        let name = form.needed_line("name", "Enter your name, as the family knows you.");
        let (phone, zone) = (form.phone("phone"), form.zone("zone"));
        let version = form.version();
        form.finish(|| Some(Settings { name: name?, phone, zone: zone?, version }))
    }
}

#[cfg(test)]
mod tests {
    use super::own_path;

    #[test]
    fn the_way_back_after_sign_in_never_leads_out_of_the_house() {
        for own in ["/p/1/medicines", "/join/0a/accept"] {
            assert_eq!(own_path(own).as_deref(), Some(own));
        }
        for foreign in
            ["https://example.org", "//example.org", "/p//example.org", "/p/\\x", "", "/p/1?x"]
        {
            assert_eq!(own_path(foreign), None, "{foreign}");
        }
    }
}
