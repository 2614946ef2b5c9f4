//! Reading a form: each field once, every problem collected, nothing stopped at the first.
//!
//! A type says how it is read by [`FromForm`]; a handler says `form.parse()?`. What is wrong
//! comes back beside the field with what was typed, by `ask_again`.

use crate::base::{
    day,
    quantity::Quantity,
    reach::{Email, Phone},
    text::{Line, Note, TextError},
    zone::Zone,
};
use axum::{extract::FromRequestParts, http::request::Parts};
use std::{borrow::Cow, convert::Infallible, marker::PhantomData, str::FromStr, sync::Arc};
use time::Date;

/// What was sent, in order.
#[derive(Clone, Debug, Default)]
pub struct Fields(Arc<Vec<(String, String)>>);

/// Behind a field's name: what is wrong with the photo that was sent in it.
pub(super) const UNFIT: &str = "_unfit";

impl Fields {
    pub fn read(body: &[u8]) -> Fields {
        Fields::of(form_urlencoded::parse(body).into_owned().collect())
    }

    pub(super) fn of(fields: Vec<(String, String)>) -> Fields {
        Fields(Arc::new(fields))
    }

    pub fn first(&self, name: &str) -> Option<&str> {
        self.0.iter().find(|(key, _)| key == name).map(|(_, value)| value.as_str())
    }

    /// All of them, as they were sent.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(name, value)| (name.as_str(), value.as_str()))
    }

    /// Every value of a name: the ticked boxes of a group.
    pub fn every<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.0.iter().filter(move |(key, _)| key == name).map(|(_, value)| value.as_str())
    }
}

/// The key of one form on one page: sent twice, it has one effect.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormKey(pub String);

impl FormKey {
    pub const FIELD: &'static str = "form_key";

    pub fn of(fields: &Fields) -> Option<FormKey> {
        let key = fields.first(FormKey::FIELD)?;
        let sound = key.len() == 32 && key.bytes().all(|it| it.is_ascii_hexdigit());
        sound.then(|| FormKey(key.to_owned()))
    }
}

/// One thing wrong with one field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FieldError {
    /// Its name; of a field of which there is one for each item, a name that is put together.
    pub field: Cow<'static, str>,
    pub says: String,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FormErrors(Vec<FieldError>);

impl FormErrors {
    /// One broken rule, at the field it is about.
    pub fn at(field: impl Into<Cow<'static, str>>, says: impl Into<String>) -> FormErrors {
        FormErrors(vec![FieldError { field: field.into(), says: says.into() }])
    }

    /// Of what is said to have happened on a day.
    pub fn unless_come(field: &'static str, on: Date, today: Date) -> Result<(), FormErrors> {
        match on > today {
            true => Err(FormErrors::at(field, "This day has not come yet.")),
            false => Ok(()),
        }
    }

    pub fn iter(&self) -> impl Iterator<Item = &FieldError> {
        self.0.iter()
    }
}

/// What to say at which field when the database refuses a value: by the end of its message.
#[derive(Clone, Copy)]
pub struct Constraint {
    pub ends: &'static str,
    pub field: &'static str,
    pub says: &'static str,
}

/// A closed list of answers, with the words for each.
pub trait Choice: Copy + PartialEq + 'static {
    const ALL: &'static [Self];
    fn words(self) -> &'static str;
}

/// A type that a form can be read into.
pub trait FromForm: Sized {
    fn read(form: &mut Reader) -> Result<Self, FormErrors>;
}

/// Only a press of the button, on the version that was shown.
pub struct Press {
    pub version: i64,
}

impl FromForm for Press {
    fn read(form: &mut Reader) -> Result<Press, FormErrors> {
        Ok(Press { version: form.version() })
    }
}

/// What was posted, not read yet.
pub struct Form<T> {
    fields: Fields,
    read: PhantomData<fn() -> T>,
}

impl<T: FromForm> Form<T> {
    pub fn parse(&self) -> Result<T, FormErrors> {
        T::read(&mut Reader { fields: self.fields.clone(), errors: Vec::new() })
    }
}

impl<T, S: Send + Sync> FromRequestParts<S> for Form<T> {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        let fields = parts.extensions.get::<Fields>().cloned().unwrap_or_default();
        Ok(Form { fields, read: PhantomData })
    }
}

/// Reads field by field. An optional field that is empty or wrong is `None`; a needed one that
/// is `None` has said why.
pub struct Reader {
    fields: Fields,
    errors: Vec<FieldError>,
}

impl Reader {
    pub fn raw(&self, name: &str) -> &str {
        self.fields.first(name).unwrap_or_default()
    }

    pub fn every(&self, name: &str) -> Vec<String> {
        self.fields.every(name).map(str::to_owned).collect()
    }

    /// All that was sent.
    pub fn fields(&self) -> &Fields {
        &self.fields
    }

    pub fn wrong(&mut self, field: impl Into<Cow<'static, str>>, says: impl Into<String>) {
        self.errors.push(FieldError { field: field.into(), says: says.into() });
    }

    pub fn line(&mut self, name: impl Into<Cow<'static, str>>) -> Option<Line> {
        let name = name.into();
        let read = Line::parse(self.raw(&name));
        self.text(name, read)
    }

    pub fn note(&mut self, name: impl Into<Cow<'static, str>>) -> Option<Note> {
        let name = name.into();
        let read = Note::parse(self.raw(&name));
        self.text(name, read)
    }

    fn text<T>(
        &mut self,
        name: Cow<'static, str>,
        read: Result<Option<T>, TextError>,
    ) -> Option<T> {
        read.unwrap_or_else(|e| {
            self.wrong(name, e.to_string());
            None
        })
    }

    /// A line that must not be empty; `says` is shown when it is.
    pub fn needed_line(&mut self, name: &'static str, says: &str) -> Option<Line> {
        let before = self.errors.len();
        let line = self.line(name);
        if line.is_none() && self.errors.len() == before {
            self.wrong(name, says);
        }
        line
    }

    /// A note that must not be empty; `says` is shown when it is.
    pub fn needed_note(&mut self, name: &'static str, says: &str) -> Option<Note> {
        if self.raw(name).trim().is_empty() {
            self.wrong(name, says);
        }
        self.note(name)
    }

    /// An item of the record, `medicine/7`, or nothing; `None` where it is neither.
    pub fn item(&mut self, name: &'static str) -> Option<Option<(String, i64)>> {
        let sent = self.raw(name);
        if sent.is_empty() {
            return Some(None);
        }
        let read = sent.split_once('/');
        let read = read.and_then(|(kind, item)| Some((kind.to_owned(), item.parse().ok()?)));
        if read.is_none() {
            self.wrong(name, "Choose from the list what this is about.");
        }
        read.map(Some)
    }

    /// An amount; `None` where nothing was typed, or nothing that can be read.
    pub fn quantity(&mut self, name: &'static str) -> Option<Quantity> {
        let read = Quantity::parse(self.raw(name));
        read.unwrap_or_else(|e| {
            self.wrong(name, e.to_string());
            None
        })
    }

    pub fn day(&mut self, name: impl Into<Cow<'static, str>>) -> Option<Date> {
        let name = name.into();
        let typed = self.raw(&name).trim();
        let day = day::parse(typed);
        if day.is_none() && !typed.is_empty() {
            self.wrong(
                name,
                "This is not a day in the calendar from 1850 to 2199. Write it like 2026-03-09 or 9 Mar 2026.",
            );
        }
        day
    }

    pub fn needed_day(&mut self, name: &'static str, says: &str) -> Option<Date> {
        if self.raw(name).trim().is_empty() {
            self.wrong(name, says);
        }
        self.day(name)
    }

    pub fn choice<C: Choice>(&mut self, name: &'static str) -> Option<C> {
        let typed = self.raw(name);
        let found = C::ALL.iter().copied().find(|it| it.words() == typed);
        if found.is_none() {
            self.wrong(name, "Choose one of these.");
        }
        found
    }

    /// The sum of a photo that was sent with this form, or with the same form before. Whether it
    /// is kept is asked of the house's files.
    pub fn photo(&mut self, name: &'static str) -> Option<String> {
        let unfit = self.raw(&format!("{name}{UNFIT}")).to_owned();
        if !unfit.is_empty() {
            self.wrong(name, unfit);
        }
        Some(self.raw(name).to_owned()).filter(|it| !it.is_empty())
    }

    /// A photo that must not be missing; `says` is shown when it is.
    pub fn needed_photo(&mut self, name: &'static str, says: &str) -> Option<String> {
        let before = self.errors.len();
        let photo = self.photo(name);
        if photo.is_none() && self.errors.len() == before {
            self.wrong(name, says);
        }
        photo
    }

    pub fn tick(&self, name: &str) -> bool {
        self.fields.first(name).is_some()
    }

    pub fn zone(&mut self, name: &'static str) -> Option<Zone> {
        let zone = Zone::parse(self.raw(name).trim());
        if zone.is_none() {
            self.wrong(name, "Choose a time zone from the list, like America/Chicago.");
        }
        zone
    }

    pub fn email(&mut self, name: &'static str) -> Option<Email> {
        let email = Email::parse(self.raw(name));
        if email.is_none() {
            self.wrong(name, "Enter an e-mail address, like ines@example.org.");
        }
        email
    }

    pub fn phone(&mut self, name: &'static str) -> Option<Phone> {
        let typed = self.raw(name).trim().to_owned();
        let phone = Phone::parse(&typed);
        if phone.is_none() && !typed.is_empty() {
            let says = "Enter a phone number with at least 3 digits, like 218-555-0101 or 218-555-0101 ext. 4. One number in each field, and digits for letters.";
            self.wrong(name, says);
        }
        phone
    }

    pub fn needed_phone(&mut self, name: &'static str, says: &str) -> Option<Phone> {
        if self.raw(name).trim().is_empty() {
            self.wrong(name, says);
        }
        self.phone(name)
    }

    /// What stood on a list when its page was shown, each thing sent as `id.version`. What cannot
    /// be read stood on no page of ours.
    pub fn opened<I: FromStr>(&self) -> Vec<(I, i64)> {
        let one = |sent: &str| {
            let (id, version) = sent.split_once('.')?;
            Some((id.parse().ok()?, version.parse().ok()?))
        };
        self.fields.every("opened").filter_map(one).collect()
    }

    /// The version that the form was opened on: an older one than the kept one is stale.
    pub fn version(&self) -> i64 {
        self.raw("version").parse().unwrap_or(0)
    }

    /// The value, if nothing was wrong.
    pub fn finish<T>(&mut self, value: impl FnOnce() -> Option<T>) -> Result<T, FormErrors> {
        let errors = std::mem::take(&mut self.errors);
        match value() {
            Some(value) if errors.is_empty() => Ok(value),
            _ => Err(FormErrors(errors)),
        }
    }
}
