//! By which right someone decides, as it was stated; and what a decision has come to.
//!
//! Who may decide what differs by state. The paper itself says what it covers, and a lawyer what
//! it is worth: nothing here is derived from a member's role or from a paper of the record.

use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Right {
    #[serde(rename = "person")]
    #[sqlx(rename = "person")]
    Person,
    #[serde(rename = "health care")]
    #[sqlx(rename = "health care")]
    HealthCare,
    #[serde(rename = "financial")]
    #[sqlx(rename = "financial")]
    Financial,
    #[serde(rename = "agreement")]
    #[sqlx(rename = "agreement")]
    Agreement,
    #[serde(rename = "other")]
    #[sqlx(rename = "other")]
    Other,
}

impl Choice for Right {
    const ALL: &'static [Right] =
        &[Right::Person, Right::HealthCare, Right::Financial, Right::Agreement, Right::Other];

    fn words(self) -> &'static str {
        match self {
            Right::Person => "it is the person’s own decision",
            Right::HealthCare => "by power of attorney for health care",
            Right::Financial => "by a financial power of attorney",
            Right::Agreement => "by agreement of the family",
            Right::Other => "by another right",
        }
    }
}

impl fmt::Display for Right {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Right {
    /// As the history keeps it.
    pub fn named(name: &str) -> Option<Right> {
        Right::ALL.iter().copied().find(|it| serde_json::json!(it) == name)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum State {
    /// To be decided.
    Open,
    Decided,
    /// Another decision stands in its place.
    Replaced,
    Withdrawn,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_right_is_found_by_the_name_the_history_has() {
        assert_eq!(Right::named("health care"), Some(Right::HealthCare));
        assert_eq!(Right::named("steward"), None);
    }
}
