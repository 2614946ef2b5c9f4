//! What stands in a form's fields: what is kept, or what was typed when it is shown again, with
//! what was wrong, and with the other version where someone else was faster.
//!
//! A handler takes `typed: Typed` and lays it over the kept thing: `typed.over(&medicine)`.
//! Templates then ask by the field's name, which is the column's name.

use super::form::{Fields, FormErrors};
use crate::base::{change::Audited, day};
use axum::{extract::FromRequestParts, http::request::Parts};
use serde_json::Value;
use std::{collections::HashMap, convert::Infallible, sync::Arc};
use time::Date;

#[derive(Clone, Default)]
pub struct Typed {
    again: Option<Arc<Again>>,
    kept: HashMap<String, String>,
    /// Where the other version stands, if not in the record.
    beside: Option<&'static str>,
}

/// A form that is shown again.
pub(super) struct Again {
    pub fields: Fields,
    pub errors: FormErrors,
    /// Someone changed the thing meanwhile: both versions are shown.
    pub stale: bool,
}

impl Typed {
    pub(super) fn again(again: Again) -> Typed {
        Typed { again: Some(Arc::new(again)), ..Typed::default() }
    }

    /// Over a kept thing: its columns fill the fields of the same name.
    pub fn over(mut self, kept: &impl Audited) -> Typed {
        let fields = kept.fields().into_iter().filter(|it| !it.sealed);
        self.kept.extend(fields.map(|it| (it.name.to_owned(), text(&it.value))));
        self
    }

    /// With a proposal for one field.
    pub fn with(mut self, name: impl Into<String>, value: impl ToString) -> Typed {
        self.kept.insert(name.into(), value.to_string());
        self
    }

    /// With a proposed day for one field.
    pub fn with_day(self, name: &'static str, value: Date) -> Typed {
        self.with(name, day::words(value))
    }

    /// What belongs into the field.
    pub fn value(&self, name: &str) -> &str {
        match &self.again {
            Some(again) => again.fields.first(name).unwrap_or_default(),
            None => self.kept(name),
        }
    }

    /// What belongs into a field of which there is one for each item; `kept` on a plain visit.
    pub fn or<'a>(&'a self, name: &str, kept: &'a str) -> &'a str {
        match &self.again {
            Some(again) => again.fields.first(name).unwrap_or(kept),
            None => kept,
        }
    }

    fn kept(&self, name: &str) -> &str {
        self.kept.get(name).map_or("", String::as_str)
    }

    /// Whether the box is ticked. An unticked box is absent from what was sent, so a form that
    /// is shown again does not fall back to what is kept.
    pub fn checked(&self, name: &str) -> bool {
        match &self.again {
            Some(again) => again.fields.first(name).is_some(),
            None => self.kept(name) == "true",
        }
    }

    /// Whether this box of a group is ticked; `kept` says whether it is on a plain visit.
    pub fn among(&self, name: &str, value: impl AsRef<str>, kept: &bool) -> bool {
        match &self.again {
            Some(again) => again.fields.every(name).any(|it| it == value.as_ref()),
            None => *kept,
        }
    }

    /// What is wrong with the field, if anything.
    pub fn error(&self, name: &str) -> Option<&str> {
        let again = self.again.as_ref()?;
        again.errors.iter().find(|it| it.field == name).map(|it| it.says.as_str())
    }

    /// Everything that is wrong, for the summary at the top.
    pub fn errors(&self) -> Vec<(&str, &str)> {
        let errors = self.again.iter().flat_map(|it| it.errors.iter());
        errors.map(|it| (it.field.as_ref(), it.says.as_str())).collect()
    }

    /// With the words above the other version, where it stands elsewhere than in the record.
    pub fn beside(self, words: &'static str) -> Typed {
        Typed { beside: Some(words), ..self }
    }

    /// The words above the other version of a field.
    pub fn theirs_stand(&self) -> &'static str {
        self.beside.unwrap_or("In the record now")
    }

    /// Whether the form is shown again.
    pub fn is_again(&self) -> bool {
        self.again.is_some()
    }

    /// Whether someone changed the thing while this was being typed.
    pub fn stale(&self) -> bool {
        self.again.as_ref().is_some_and(|it| it.stale)
    }

    /// The other version of this field, where someone changed the thing meanwhile and it differs
    /// from what was typed. An empty text means: it stands empty now.
    pub fn theirs(&self, name: &str) -> Option<&str> {
        let (kept, typed) = (self.kept.get(name)?.as_str(), self.value(name).trim());
        if !self.stale() || same(kept, typed) {
            return None;
        }
        Some(match kept {
            "true" => "ticked",
            "false" => "not ticked",
            kept => kept,
        })
    }
}

/// Whether two texts of a field say the same: a day in other words, a box that was not sent.
fn same(kept: &str, typed: &str) -> bool {
    let same_day = || day::parse(kept).is_some_and(|it| day::parse(typed) == Some(it));
    kept == typed || (kept, typed) == ("false", "") || same_day()
}

/// A column as it stands in a field.
fn text(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => day::iso(text).map_or_else(|| text.clone(), day::words),
        other => other.to_string(),
    }
}

impl<S: Send + Sync> FromRequestParts<S> for Typed {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        Ok(parts.extensions.get::<Typed>().cloned().unwrap_or_default())
    }
}
