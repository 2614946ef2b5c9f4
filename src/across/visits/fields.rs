//! The names of the fields of a note that is being written: of one for each medicine, question and
//! member a name that is put together, and rows that grow as they are filled.

use crate::{
    base::ids::{MedicineId, MemberId, QuestionId},
    platform::web::form::Reader,
};

/// How many rows of one kind a form has at most.
pub const MOST: usize = 12;

/// What stands in the form beside the note: never a part of what was typed.
pub const MACHINERY: [&str; 5] = ["form_key", "draft", "draft_version", "count", "press"];

pub fn question(id: impl Into<QuestionId>, part: &str) -> String {
    format!("q{}_{part}", id.into())
}

pub fn medicine(id: impl Into<MedicineId>, part: &str) -> String {
    format!("m{}_{part}", id.into())
}

/// A row of tests, follow-ups or new medicines, counted from one.
pub fn row(kind: &str, at: usize, part: &str) -> String {
    format!("{kind}{at}_{part}")
}

pub fn present(id: impl Into<MemberId>) -> String {
    format!("present_{}", id.into())
}

pub fn told(id: impl Into<MemberId>) -> String {
    format!("told_{}", id.into())
}

/// The ids of all fields like `m7_version`.
pub fn ids(form: &Reader, kind: &str, part: &str) -> Vec<i64> {
    let mut ids: Vec<i64> =
        form.fields().iter().filter_map(|(name, _)| of(name, kind, part)).collect();
    ids.sort_unstable();
    ids.dedup();
    ids
}

/// The id in `m7_version`, of medicines and their versions.
pub fn of(name: &str, kind: &str, part: &str) -> Option<i64> {
    name.strip_prefix(kind)?.strip_suffix(part)?.strip_suffix('_')?.parse().ok()
}

/// The members of all ticked fields like `told_3`.
pub fn members(form: &Reader, kind: &str) -> Vec<MemberId> {
    let own = |name: &str| name.strip_prefix(kind)?.strip_prefix('_')?.parse::<i64>().ok();
    form.fields().iter().filter_map(|(name, _)| own(name)).map(MemberId::from).collect()
}

/// How many rows are shown: those up to the last that is filled, and `spare` more.
pub fn rows(value: impl Fn(&str) -> bool, kind: &str, parts: &[&str], spare: usize) -> usize {
    let filled = |at: &usize| parts.iter().any(|part| value(&row(kind, *at, part)));
    let last = (1..=MOST).rev().find(filled).unwrap_or(0);
    (last + spare).min(MOST)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_is_put_together_is_taken_apart() {
        assert_eq!(of(&medicine(7, "version"), "m", "version"), Some(7));
        assert_eq!(of(&question(12, "answer"), "q", "answer"), Some(12));
        assert_eq!(of("m7_version", "m", "on"), None);
        assert_eq!(of("mx_on", "m", "on"), None);
    }

    #[test]
    fn there_is_always_room_for_one_more_until_there_are_too_many() {
        let only = |wanted: &'static str| move |name: &str| name == wanted;
        assert_eq!(rows(only(""), "test", &["what"], 2), 2);
        assert_eq!(rows(only("test3_what"), "test", &["what", "where"], 1), 4);
        assert_eq!(rows(only("test12_where"), "test", &["what", "where"], 2), MOST);
    }
}
