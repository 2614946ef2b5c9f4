//! The rules of renewing, by what is renewed: a dated file with the source of each.
//!
//! A rule says what is known and nothing more. Where only the issuer knows, it says so; what the family
//! hears from the issuer is typed beside the entry.

use crate::platform::web::form::Choice;
use std::fmt;
use time::{Date, Month};

#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize, sqlx::Type,
)]
pub enum Rule {
    #[serde(rename = "driver’s license")]
    #[sqlx(rename = "driver’s license")]
    License,
    #[serde(rename = "passport")]
    #[sqlx(rename = "passport")]
    Passport,
    #[serde(rename = "parking placard (Michigan, permanent)")]
    #[sqlx(rename = "parking placard (Michigan, permanent)")]
    Placard,
    #[serde(rename = "Medicare open enrollment")]
    #[sqlx(rename = "Medicare open enrollment")]
    OpenEnrollment,
    #[serde(rename = "Medicare Advantage switch")]
    #[sqlx(rename = "Medicare Advantage switch")]
    AdvantageSwitch,
    #[serde(rename = "prior authorization")]
    #[sqlx(rename = "prior authorization")]
    Authorization,
    #[serde(rename = "prescription")]
    #[sqlx(rename = "prescription")]
    Prescription,
    #[serde(rename = "long-term-care premium")]
    #[sqlx(rename = "long-term-care premium")]
    CarePremium,
    #[serde(rename = "warranty")]
    #[sqlx(rename = "warranty")]
    Warranty,
    #[serde(rename = "release of information")]
    #[sqlx(rename = "release of information")]
    Release,
    #[serde(rename = "insurance policy")]
    #[sqlx(rename = "insurance policy")]
    Policy,
    #[serde(rename = "review of a directive")]
    #[sqlx(rename = "review of a directive")]
    DirectiveReview,
    #[serde(rename = "review of a portable medical order")]
    #[sqlx(rename = "review of a portable medical order")]
    OrderReview,
    #[serde(rename = "something else")]
    #[sqlx(rename = "something else")]
    #[default]
    Other,
}

impl Choice for Rule {
    const ALL: &'static [Rule] = &[
        Rule::License,
        Rule::Passport,
        Rule::Placard,
        Rule::OpenEnrollment,
        Rule::AdvantageSwitch,
        Rule::Authorization,
        Rule::Prescription,
        Rule::CarePremium,
        Rule::Warranty,
        Rule::Release,
        Rule::Policy,
        Rule::DirectiveReview,
        Rule::OrderReview,
        Rule::Other,
    ];

    fn words(self) -> &'static str {
        match self {
            Rule::License => "driver’s license",
            Rule::Passport => "passport",
            Rule::Placard => "parking placard (Michigan, permanent)",
            Rule::OpenEnrollment => "Medicare open enrollment",
            Rule::AdvantageSwitch => "Medicare Advantage switch",
            Rule::Authorization => "prior authorization",
            Rule::Prescription => "prescription",
            Rule::CarePremium => "long-term-care premium",
            Rule::Warranty => "warranty",
            Rule::Release => "release of information",
            Rule::Policy => "insurance policy",
            Rule::DirectiveReview => "review of a directive",
            Rule::OrderReview => "review of a portable medical order",
            Rule::Other => "something else",
        }
    }
}

impl fmt::Display for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Rule {
    /// Those that an entry of the family's own can have: the yearly windows come by themselves, and a
    /// prescription from its medicine.
    pub fn typed() -> impl Iterator<Item = Rule> {
        let own = |it: &Rule| {
            !matches!(it, Rule::OpenEnrollment | Rule::AdvantageSwitch | Rule::Prescription)
        };
        Rule::ALL.iter().copied().filter(own)
    }

    /// What the file says of it.
    pub fn known(self) -> Known {
        let found = read().rules.into_iter().find(|it| it.rule == self);
        found.unwrap_or(Known { rule: self, ..Known::default() })
    }
}

/// One line of the file.
#[derive(Clone, Debug, Default, serde::Deserialize)]
#[serde(default)]
pub struct Known {
    pub rule: Rule,
    /// Years that it is valid.
    pub years: Option<i64>,
    /// Years after the issue within which it can be renewed by mail.
    pub mail_years: Option<i64>,
    /// Days before the last day from which on it can be renewed.
    pub opens_days: Option<i64>,
    /// Month and day of a window that comes every year.
    pub from: Option<(u8, u8)>,
    pub until: Option<(u8, u8)>,
    /// Days after the due day: notice to the one who was named for it, and the lapse.
    pub notice_days: Option<i64>,
    pub lapse_days: Option<i64>,
    pub reinstate_months: Option<i64>,
    pub says: String,
    pub source: String,
}

impl Known {
    /// The window of a year, where there is one.
    pub fn window(&self, year: i32) -> Option<(Date, Date)> {
        let day = |(month, day): (u8, u8)| {
            Date::from_calendar_date(year, Month::try_from(month).ok()?, day).ok()
        };
        Some((day(self.from?)?, day(self.until?)?))
    }
}

#[derive(Default, serde::Deserialize)]
struct Rules {
    as_of: String,
    rules: Vec<Known>,
}

fn read() -> Rules {
    serde_json::from_str(include_str!("rules.json")).unwrap_or_default()
}

/// The day as of which the file was looked through.
pub fn as_of() -> String {
    read().as_of
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::day;

    #[test]
    fn the_file_is_dated_and_has_each_rule_with_its_source() {
        assert!(day::iso(&as_of()).is_some());
        let rules = read().rules;
        assert_eq!(rules.len(), Rule::ALL.len());
        for rule in Rule::ALL {
            let known = rules.iter().find(|it| it.rule == *rule).expect("a line");
            assert!(!known.says.is_empty() && !known.source.is_empty(), "{rule}");
            assert_eq!(serde_json::json!(rule), rule.words());
        }
    }

    /// American Bar Association, Commission on Law and Aging: decade, death, divorce, diagnosis,
    /// decline; and a move to another state.
    #[test]
    fn a_directive_is_looked_at_again_after_five_things_and_a_move() {
        let known = Rule::DirectiveReview.known();
        for it in ["decade", "death", "divorce", "diagnosis", "decline", "move to another state"] {
            assert!(known.says.contains(it), "{it}");
        }
        assert!(known.source.contains("American Bar Association"));
    }

    /// New Jersey POLST directions; polst.org.
    #[test]
    fn a_portable_medical_order_is_looked_at_again_after_a_transfer_and_a_change() {
        let known = Rule::OrderReview.known();
        for it in ["setting or level of care", "health changes", "wishes change"] {
            assert!(known.says.contains(it), "{it}");
        }
        assert!(known.source.contains("polst.org"));
    }
}
