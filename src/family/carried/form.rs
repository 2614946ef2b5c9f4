//! What can be typed about what was carried, and about who is shown.

use super::{
    model::{Entry, Kind},
    wish::{Said, Wished},
};
use crate::base::text::Line;
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// What was carried, and the version it was opened on.
pub struct Told {
    pub entry: Entry,
    pub version: i64,
}

/// The most that a day has.
const DAY: i64 = 24 * 60;

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let kind = form.choice::<Kind>("kind");
        let on = form.needed_day("day_on", "Enter the day, like 9 Mar 2026.");
        let timed = kind.is_some_and(Kind::is_timed);
        let (hours, rest) = (number(form, "hours", 24), number(form, "rest", 59));
        let minutes = hours.unwrap_or(0) * 60 + rest.unwrap_or(0);
        if timed && hours.is_none() && rest.is_none() || timed && !(1..=DAY).contains(&minutes) {
            form.wrong("hours", "Enter how long it took: hours, minutes or both, up to a day.");
        }
        let miles = number(form, "miles", 9999).filter(|it| *it > 0);
        let (name, words, version) = (form.line("name"), form.line("words"), form.version());
        form.finish(|| {
            let kind = kind?;
            let minutes = kind.is_timed().then_some(minutes);
            let miles = miles.filter(|_| kind == Kind::Travel);
            let entry = Entry { name, kind, on: on?, minutes, miles, words };
            Some(Told { entry, version })
        })
    }
}

/// A whole number up to this; nothing typed is none.
fn number(form: &mut Reader, name: &'static str, most: i64) -> Option<i64> {
    let typed = form.raw(name).trim().to_owned();
    if typed.is_empty() {
        return None;
    }
    let plain = typed.bytes().all(|it| it.is_ascii_digit());
    let read = typed.parse().ok().filter(|it| plain && (0..=most).contains(it));
    if read.is_none() {
        form.wrong(name, format!("Enter a whole number up to {most}, or leave it empty."));
    }
    read
}

/// Why it was a mistake to write it down.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was mistaken.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}

/// A member's own wish: she says it, today.
pub struct OwnWish {
    pub wished: Wished,
    pub version: i64,
}

impl FromForm for OwnWish {
    fn read(form: &mut Reader) -> Result<OwnWish, FormErrors> {
        let (wished, version) = (form.choice("wished"), form.version());
        form.finish(|| Some(OwnWish { wished: wished?, version }))
    }
}

/// The person's wish, with who said so and when.
pub struct WishOfAll {
    pub wished: Wished,
    pub by: Option<Line>,
    pub on: Date,
    pub version: i64,
}

impl FromForm for WishOfAll {
    fn read(form: &mut Reader) -> Result<WishOfAll, FormErrors> {
        let (wished, by) = (form.choice("wished"), form.line("said_by"));
        let on = form.needed_day("said_on", "Enter the day it was said, like 9 Mar 2026.");
        let version = form.version();
        form.finish(|| Some(WishOfAll { wished: wished?, by, on: on?, version }))
    }
}

impl WishOfAll {
    /// With whoever said so; the person herself where nobody else is named.
    pub fn said(self, person: Option<Line>) -> Result<Said, FormErrors> {
        let by = self.by.or(person);
        let by = by.ok_or_else(|| FormErrors::at("said_by", "Enter who said so, and how."))?;
        Ok(Said { wished: self.wished, by, on: self.on })
    }
}
