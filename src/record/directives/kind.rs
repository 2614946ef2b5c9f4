//! The kinds of directives in the words of the trade, what each has an effect on, when a power
//! starts, and how a directive stands. What a kind may do differs by state: nothing is derived.

use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, sqlx::Type)]
pub enum Kind {
    #[serde(rename = "medical order")]
    #[sqlx(rename = "medical order")]
    MedicalOrder,
    #[serde(rename = "no resuscitation")]
    #[sqlx(rename = "no resuscitation")]
    NoResuscitation,
    #[serde(rename = "health care power")]
    #[sqlx(rename = "health care power")]
    HealthPower,
    #[serde(rename = "combined")]
    #[sqlx(rename = "combined")]
    Combined,
    #[serde(rename = "living will")]
    #[sqlx(rename = "living will")]
    LivingWill,
    #[serde(rename = "organ donation")]
    #[sqlx(rename = "organ donation")]
    OrganDonation,
    #[serde(rename = "release")]
    #[sqlx(rename = "release")]
    Release,
    #[serde(rename = "financial power")]
    #[sqlx(rename = "financial power")]
    FinancialPower,
}

impl Choice for Kind {
    const ALL: &'static [Kind] = &[
        Kind::LivingWill,
        Kind::HealthPower,
        Kind::Combined,
        Kind::MedicalOrder,
        Kind::NoResuscitation,
        Kind::OrganDonation,
        Kind::Release,
        Kind::FinancialPower,
    ];

    fn words(self) -> &'static str {
        match self {
            Kind::LivingWill => "living will",
            Kind::HealthPower => "power of attorney for health care",
            Kind::Combined => "living will and power of attorney for health care in one form",
            Kind::MedicalOrder => "portable medical order (POLST-type)",
            Kind::NoResuscitation => "do-not-resuscitate order",
            Kind::OrganDonation => "organ donation",
            Kind::Release => "release of information",
            Kind::FinancialPower => "financial power of attorney",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// The powers that name an agent: two that name different ones disagree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Power {
    HealthCare,
    Money,
}

impl Kind {
    /// Which power it gives to an agent, if any.
    pub fn power(self) -> Option<Power> {
        match self {
            Kind::HealthPower | Kind::Combined => Some(Power::HealthCare),
            Kind::FinancialPower => Some(Power::Money),
            _ => None,
        }
    }

    /// Whether a second one in force is a disagreement. A release of information is signed for
    /// each office by itself (common practice, no source), so several stand beside one another.
    pub fn stands_alone(self) -> bool {
        self != Kind::Release
    }

    /// Whether whoever treats her needs to know it: all but what is about money.
    pub fn is_for_care(self) -> bool {
        self != Kind::FinancialPower
    }

    /// Whom to show two of them that disagree.
    pub fn show_to(self) -> &'static str {
        if self.is_for_care() { "the clinician" } else { "a lawyer" }
    }

    /// "Living will"
    pub fn title(self) -> String {
        let words = self.words();
        format!("{}{}", words[..1].to_uppercase(), &words[1..])
    }
}

/// When a power starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Starts {
    #[serde(rename = "not written down")]
    #[sqlx(rename = "not written down")]
    NotSaid,
    #[serde(rename = "at once")]
    #[sqlx(rename = "at once")]
    AtOnce,
    #[serde(rename = "cannot decide")]
    #[sqlx(rename = "cannot decide")]
    CannotDecide,
    #[serde(rename = "as the paper says")]
    #[sqlx(rename = "as the paper says")]
    AsThePaperSays,
}

impl Choice for Starts {
    const ALL: &'static [Starts] =
        &[Starts::NotSaid, Starts::AtOnce, Starts::CannotDecide, Starts::AsThePaperSays];

    fn words(self) -> &'static str {
        match self {
            Starts::NotSaid => "not written down, or it gives no power",
            Starts::AtOnce => "at once",
            Starts::CannotDecide => "when a clinician finds that the person cannot decide",
            Starts::AsThePaperSays => "as the paper says, in these words",
        }
    }
}

impl fmt::Display for Starts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// How it stands, as far as the family knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum State {
    #[serde(rename = "in force")]
    #[sqlx(rename = "in force")]
    InForce,
    #[serde(rename = "draft")]
    #[sqlx(rename = "draft")]
    Draft,
    #[serde(rename = "superseded")]
    #[sqlx(rename = "superseded")]
    Superseded,
    #[serde(rename = "void")]
    #[sqlx(rename = "void")]
    Void,
}

impl Choice for State {
    const ALL: &'static [State] = &[State::InForce, State::Draft, State::Superseded, State::Void];

    fn words(self) -> &'static str {
        match self {
            State::InForce => "in force, as far as the family knows",
            State::Draft => "nothing signed yet: a draft",
            State::Superseded => "superseded by another",
            State::Void => "voided",
        }
    }
}

impl State {
    /// How one can stand when it is written down for the first time.
    pub const FIRST: [State; 2] = [State::InForce, State::Draft];

    /// Whether it did hold, and does not any more.
    pub fn is_over(self) -> bool {
        matches!(self, State::Superseded | State::Void)
    }
}

impl fmt::Display for State {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}
