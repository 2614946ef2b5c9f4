//! How much of a condition the person wants to be told, as she answered when she was asked.
//!
//! It hides nothing from her: the record is hers. It is for those who speak with her.

use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum WantsTold {
    #[serde(rename = "everything")]
    #[sqlx(rename = "everything")]
    Everything,
    #[serde(rename = "the outline")]
    #[sqlx(rename = "the outline")]
    Outline,
    #[serde(rename = "nothing for now")]
    #[sqlx(rename = "nothing for now")]
    NothingForNow,
    #[serde(rename = "not asked")]
    #[sqlx(rename = "not asked")]
    NotAsked,
}

impl Choice for WantsTold {
    const ALL: &'static [WantsTold] =
        &[WantsTold::Everything, WantsTold::Outline, WantsTold::NothingForNow, WantsTold::NotAsked];

    fn words(self) -> &'static str {
        match self {
            WantsTold::Everything => "everything",
            WantsTold::Outline => "the outline",
            WantsTold::NothingForNow => "nothing for now",
            WantsTold::NotAsked => "not asked",
        }
    }
}

impl fmt::Display for WantsTold {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl WantsTold {
    /// Whether she said that she does not want to hear all of it.
    pub fn asks_for_care(self) -> bool {
        matches!(self, WantsTold::Outline | WantsTold::NothingForNow)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn care_is_asked_for_where_she_does_not_want_to_hear_all() {
        let asks: Vec<bool> = WantsTold::ALL.iter().map(|it| it.asks_for_care()).collect();
        assert_eq!(asks, [false, true, true, false]);
    }
}
