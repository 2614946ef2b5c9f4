//! What is to be known before a directive is signed, by the state whose form it is: a dated data file
//! with the source of each row, compiled in.
//!
//! It is very short, because a wrong fact of law is worse than none: only what has a source that was
//! read stands in it. For every other state, and for every other kind, the answer is the state's own
//! form. Laws differ by state, and change.

use super::{kind::Kind, model::Directive};
use crate::base::day;
use serde::Deserialize;
use std::sync::LazyLock;

static FILE: LazyLock<File> = LazyLock::new(|| {
    serde_json::from_str(include_str!("signing.json")).expect("a file of this form")
});

#[derive(Deserialize)]
struct File {
    written: String,
    rows: Vec<Row>,
}

#[derive(Deserialize)]
pub struct Row {
    pub form_of: String,
    kind: String,
    pub says: Vec<String>,
    pub source: String,
}

impl Row {
    /// The kind it is about.
    pub fn kind(&self) -> Option<Kind> {
        use crate::platform::web::form::Choice;
        Kind::ALL.iter().copied().find(|it| serde_json::json!(it) == self.kind.as_str())
    }
}

/// Every row there is.
pub fn rows() -> &'static [Row] {
    &FILE.rows
}

/// The day the file was written, in words.
pub fn written() -> String {
    day::iso(&FILE.written).map(day::words).unwrap_or_default()
}

/// The row for this directive's form, by the state's name as typed.
pub fn row_for(it: &Directive) -> Option<&'static Row> {
    let of = it.form_of.as_ref()?;
    let same = |row: &&Row| row.form_of.eq_ignore_ascii_case(of.as_str());
    rows().iter().find(|row| same(row) && row.kind() == Some(it.kind))
}

#[cfg(test)]
mod tests {
    use super::super::model::tests::{directive, line};
    use super::*;

    /// Against the directions to the New Jersey POLST form; polst.org.
    #[test]
    fn only_the_form_with_a_source_has_a_row() {
        let of = |state: &str, kind| {
            let it = Directive { form_of: Some(line(state)), ..directive(1, kind) };
            row_for(&it)
        };
        let row = of("new jersey", Kind::MedicalOrder).expect("a row");
        assert!(row.says[0].contains("blank implies full treatment"));
        assert!(row.says[1].contains("VOID, signed and dated"));
        assert!(of("New Jersey", Kind::LivingWill).is_none());
        assert!(of("Minnesota", Kind::MedicalOrder).is_none());
        assert!(row_for(&directive(1, Kind::MedicalOrder)).is_none());
    }

    #[test]
    fn the_file_is_dated_and_every_row_has_a_kind_and_a_source() {
        assert_eq!(written(), "26 November 2026");
        for row in rows() {
            assert!(row.kind().is_some() && !row.source.is_empty() && !row.says.is_empty());
        }
    }
}
