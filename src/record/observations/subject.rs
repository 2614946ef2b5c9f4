//! What an observation is about: a short list of plain words.

use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Subject {
    Eating,
    Sleep,
    Fall,
    Mood,
    Memory,
    Driving,
    Money,
    Walking,
    Other,
}

impl Choice for Subject {
    const ALL: &'static [Subject] = &[
        Subject::Eating,
        Subject::Sleep,
        Subject::Fall,
        Subject::Mood,
        Subject::Memory,
        Subject::Driving,
        Subject::Money,
        Subject::Walking,
        Subject::Other,
    ];

    fn words(self) -> &'static str {
        match self {
            Subject::Eating => "eating and drinking",
            Subject::Sleep => "sleep",
            Subject::Fall => "a fall",
            Subject::Mood => "mood",
            Subject::Memory => "memory",
            Subject::Driving => "driving",
            Subject::Money => "money",
            Subject::Walking => "walking and getting up",
            Subject::Other => "something else",
        }
    }
}

impl fmt::Display for Subject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Subject {
    /// As it stands in an address and in the history.
    pub fn name(self) -> &'static str {
        match self {
            Subject::Eating => "eating",
            Subject::Sleep => "sleep",
            Subject::Fall => "fall",
            Subject::Mood => "mood",
            Subject::Memory => "memory",
            Subject::Driving => "driving",
            Subject::Money => "money",
            Subject::Walking => "walking",
            Subject::Other => "other",
        }
    }

    pub fn named(name: &str) -> Option<Subject> {
        Subject::ALL.iter().copied().find(|it| it.name() == name)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_is_found_by_the_name_it_has_in_the_history() {
        for it in Subject::ALL.iter().copied() {
            assert_eq!(Subject::named(it.name()), Some(it));
            assert_eq!(serde_json::json!(it), it.name());
        }
        assert_eq!(Subject::named("a fall"), None);
    }
}
