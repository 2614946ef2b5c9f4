//! Whose move it is, and what a plan decided.

use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Mover {
    Prescriber,
    Plan,
    Pharmacy,
    Family,
}

impl Choice for Mover {
    const ALL: &'static [Mover] = &[Mover::Prescriber, Mover::Plan, Mover::Pharmacy, Mover::Family];

    fn words(self) -> &'static str {
        match self {
            Mover::Prescriber => "the prescriber",
            Mover::Plan => "the plan",
            Mover::Pharmacy => "the pharmacy",
            Mover::Family => "the family",
        }
    }
}

impl fmt::Display for Mover {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// As it stands in the plan's letter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Decision {
    #[serde(rename = "covered")]
    #[sqlx(rename = "covered")]
    Covered,
    #[serde(rename = "not covered")]
    #[sqlx(rename = "not covered")]
    NotCovered,
}

impl Choice for Decision {
    const ALL: &'static [Decision] = &[Decision::Covered, Decision::NotCovered];

    fn words(self) -> &'static str {
        match self {
            Decision::Covered => "it is covered",
            Decision::NotCovered => "it is not covered",
        }
    }
}

impl fmt::Display for Decision {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}
