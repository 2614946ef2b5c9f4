//! The paper that a person's sheets are printed on: kept as typst names it, said as a shop does.

use crate::platform::web::form::Choice;
use std::fmt;

/// The paper that sheets are printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "kebab-case")]
#[sqlx(rename_all = "kebab-case")]
pub enum Paper {
    UsLetter,
    A4,
}

impl Choice for Paper {
    const ALL: &'static [Paper] = &[Paper::UsLetter, Paper::A4];

    fn words(self) -> &'static str {
        match self {
            Paper::UsLetter => "US Letter",
            Paper::A4 => "A4",
        }
    }
}

impl Paper {
    /// As it is kept, and as the press names it.
    pub fn code(self) -> &'static str {
        match self {
            Paper::UsLetter => "us-letter",
            Paper::A4 => "a4",
        }
    }
}

impl fmt::Display for Paper {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn is_kept_under_the_names_that_typst_knows() {
        let kept = Paper::ALL.iter().map(|it| serde_json::to_value(it).expect("text"));
        assert_eq!(kept.collect::<Vec<_>>(), ["us-letter", "a4"]);
    }
}
