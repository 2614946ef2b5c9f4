//! What kind of cover it is, as the card or the letter says it.

use super::rules;
use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize, sqlx::Type)]
pub enum Kind {
    #[serde(rename = "Original Medicare")]
    #[sqlx(rename = "Original Medicare")]
    OriginalMedicare,
    #[serde(rename = "Medicare Advantage")]
    #[sqlx(rename = "Medicare Advantage")]
    MedicareAdvantage,
    #[serde(rename = "drug plan")]
    #[sqlx(rename = "drug plan")]
    DrugPlan,
    #[serde(rename = "supplement")]
    #[sqlx(rename = "supplement")]
    Supplement,
    #[serde(rename = "long-term care")]
    #[sqlx(rename = "long-term care")]
    LongTermCare,
    #[serde(rename = "veterans")]
    #[sqlx(rename = "veterans")]
    Veterans,
    #[serde(rename = "Medicaid")]
    #[sqlx(rename = "Medicaid")]
    Medicaid,
    #[serde(rename = "other")]
    #[sqlx(rename = "other")]
    Other,
}

impl Choice for Kind {
    const ALL: &'static [Kind] = &[
        Kind::OriginalMedicare,
        Kind::MedicareAdvantage,
        Kind::DrugPlan,
        Kind::Supplement,
        Kind::LongTermCare,
        Kind::Veterans,
        Kind::Medicaid,
        Kind::Other,
    ];

    fn words(self) -> &'static str {
        match self {
            Kind::OriginalMedicare => "Original Medicare",
            Kind::MedicareAdvantage => "Medicare Advantage",
            Kind::DrugPlan => "a Medicare drug plan",
            Kind::Supplement => "a supplement to Medicare",
            Kind::LongTermCare => "long-term care insurance",
            Kind::Veterans => "veterans’ benefits",
            Kind::Medicaid => "Medicaid",
            Kind::Other => "another kind",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Kind {
    /// Whether its plan year is the calendar year by Medicare's own dates.
    pub fn begins_in_january(self) -> bool {
        rules::medicare().plan_years.kinds.contains(&self)
    }

    /// Whether the hours that Medicare sets for a drug plan's answer are known to hold for it.
    pub fn has_answer_hours(self) -> bool {
        rules::medicare().answers.kinds.contains(&self)
    }
}
