//! What changed: the difference between a thing as it was and as it is, field by field.
//!
//! `audited!` names every field of a type once, with the words the history uses for it. It
//! takes the type apart without `..`, so a field that is neither listed nor skipped does not
//! compile. (The compiler then suggests adding `..`: never do.) A field listed under `sealed`
//! is compared, but only "changed" is recorded.
//!
//! ```no_run
//! struct Cup { id: i64, colour: String, size: String }
//! kinsheaf::audited!(Cup as "cup" { colour: "colour", size: "size" } skip { id });
//! ```
//! ```compile_fail
//! struct Cup { id: i64, colour: String, size: String }
//! kinsheaf::audited!(Cup as "cup" { colour: "colour" } skip { id });
//! ```

use serde::Serialize;
use serde_json::Value;

/// A kept thing whose every change goes into the history.
pub trait Audited {
    /// The name of its table.
    const KIND: &'static str;
    /// Each field with the words the history uses for it; no words: recorded, but not told.
    const LABELS: &'static [(&'static str, &'static str)];
    fn item(&self) -> i64;
    fn fields(&self) -> Vec<Field>;
}

/// One field's value, as JSON.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    pub name: &'static str,
    pub value: Value,
    pub sealed: bool,
}

impl Field {
    pub fn open(name: &'static str, value: &impl Serialize) -> Field {
        Field { name, value: json(value), sealed: false }
    }

    pub fn sealed(name: &'static str, value: &impl Serialize) -> Field {
        Field { name, value: json(value), sealed: true }
    }
}

/// Fields are plain columns (text, numbers, days); none of them can fail to become JSON.
fn json(value: &impl Serialize) -> Value {
    serde_json::to_value(value).expect("a recorded field is a plain column")
}

/// A change to one kept thing. Nothing that is kept is ever deleted: its number would be given again,
/// and the history could no longer say which of two it means. What is over says so in a column.
pub enum Change<'a, T> {
    Added(&'a T),
    Edited(&'a T, &'a T),
}

/// One field's difference. `None`: there was nothing, or there is nothing now.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    pub field: &'static str,
    pub old: Option<Value>,
    pub new: Option<Value>,
}

/// What is recorded in place of a sealed value.
pub const SEALED: &str = "changed";

impl<T: Audited> Change<'_, T> {
    /// `added` or `edited`, as the history has it. (A history from before version 63 may also have
    /// `removed`.)
    pub fn action(&self) -> &'static str {
        match self {
            Change::Added(_) => "added",
            Change::Edited(..) => "edited",
        }
    }

    /// The id it has already; zero when it is being added.
    pub fn item(&self) -> i64 {
        match self {
            Change::Added(it) | Change::Edited(_, it) => it.item(),
        }
    }

    /// The fields that differ (all of them when adding). Empty when an edit changed nothing.
    pub fn differences(&self) -> Vec<Difference> {
        match self {
            Change::Added(new) => (new.fields().into_iter())
                .map(|it| difference(it.name, None, Some(shown(it))))
                .collect(),
            Change::Edited(old, new) => (old.fields().into_iter().zip(new.fields()))
                .filter(|(old, new)| old.value != new.value)
                .map(|(old, new)| difference(new.name, Some(shown(old)), Some(shown(new))))
                .collect(),
        }
    }
}

fn difference(field: &'static str, old: Option<Value>, new: Option<Value>) -> Difference {
    Difference { field, old, new }
}

fn shown(field: Field) -> Value {
    if field.sealed { SEALED.into() } else { field.value }
}

/// Names the fields of an audited type: see the module.
#[macro_export]
macro_rules! audited {
    (
        $type:ident as $kind:literal { $($field:ident : $label:literal),* $(,)? }
        $(sealed { $($sealed:ident : $sealed_label:literal),* $(,)? })?
        skip { $($skip:ident),* $(,)? }
    ) => {
        impl $crate::base::change::Audited for $type {
            const KIND: &'static str = $kind;
            const LABELS: &'static [(&'static str, &'static str)] = &[
                $((stringify!($field), $label),)*
                $($((stringify!($sealed), $sealed_label),)*)?
            ];
            fn item(&self) -> i64 {
                self.id.into()
            }
            fn fields(&self) -> Vec<$crate::base::change::Field> {
                let $type { $($field,)* $($($sealed,)*)? $($skip: _,)* } = self;
                vec![
                    $($crate::base::change::Field::open(stringify!($field), $field),)*
                    $($($crate::base::change::Field::sealed(stringify!($sealed), $sealed),)*)?
                ]
            }
        }
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Clone)]
    struct Case {
        id: i64,
        name: String,
        note: Option<String>,
        secret: String,
    }
    audited!(Case as "case" { name: "name", note: "note" } sealed { secret: "secret" } skip { id });

    fn case() -> Case {
        Case { id: 7, name: "a".into(), note: None, secret: "x".into() }
    }

    #[test]
    fn an_edit_tells_only_what_differs_and_never_a_sealed_value() {
        let new = Case { note: Some("n".into()), secret: "y".into(), ..case() };
        let told = Change::Edited(&case(), &new).differences();
        assert_eq!(
            told,
            [
                difference("note", Some(Value::Null), Some("n".into())),
                difference("secret", Some(SEALED.into()), Some(SEALED.into())),
            ]
        );
        assert!(Change::Edited(&new, &new).differences().is_empty());
    }

    #[test]
    fn adding_tells_every_field_empty_ones_too() {
        let told = Change::Added(&case()).differences();
        let fields: Vec<_> = told.iter().map(|it| it.field).collect();
        assert_eq!(fields, ["name", "note", "secret"]);
    }
}
