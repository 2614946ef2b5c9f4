//! How long a prescription can be filled: what its label says, and what a federal rule says of
//! its schedule class (`rules.json`, each with its source and the day it was looked at).
//!
//! Only what has a source is told. For all others the laws of the states differ: the label or the
//! pharmacist says.

use super::model::{Class, Fill};
use crate::base::day::{self, months_after};
use time::Date;

#[derive(Default, serde::Deserialize)]
struct Rules {
    as_of: String,
    of: String,
    rules: Vec<Rule>,
}

#[derive(serde::Deserialize)]
struct Rule {
    classes: Vec<Class>,
    months: Option<u8>,
    most_refills: i64,
    says: String,
    source: String,
}

/// What is known of a prescription's life.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Life {
    /// The last day it is filled, by the label or by the rule, whichever is first.
    pub last_fill: Option<Date>,
    /// In sentences, each with who says so.
    pub says: Vec<String>,
    /// Whether the next fill needs a new prescription.
    pub needs_new: bool,
}

const OTHERWISE: &str =
    "How long it can be filled differs by state: the label or the pharmacist says.";

impl Life {
    pub fn of(fill: &Fill) -> Life {
        let rules = rules();
        let rule = rules.rules.iter().find(|it| it.classes.contains(&fill.class));
        let by_rule = rule.and_then(|it| Some(months_after(fill.written_on?, it.months?.into())));
        let last_fill = [by_rule, fill.expires_on].into_iter().flatten().min();
        let mut says = Vec::new();
        if let Some(on) = fill.expires_on {
            says.push(format!("The label says it can be filled until {}.", day::words(on)));
        }
        if let Some(rule) = rule {
            let known = format!("{}, {}, as of {}", rule.source, rules.of, rules.as_of);
            says.push(format!("{} ({known})", rule.says));
        }
        if let Some(on) = by_rule {
            says.push(format!("By that rule its last day is {}.", day::words(on)));
        }
        if let Some((rule, left)) = rule.zip(fill.refills_left)
            && left > rule.most_refills
        {
            says.push(format!(
                "{left} refills are written down, more than that: ask the pharmacist."
            ));
        }
        if rule.is_none() && fill.expires_on.is_none() {
            says.push(OTHERWISE.into());
        }
        let none_left = fill.refills_left == Some(0);
        let needs_new = none_left || rule.is_some_and(|it| it.most_refills == 0);
        Life { last_fill, says, needs_new }
    }
}

fn rules() -> Rules {
    serde_json::from_str(include_str!("rules.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::super::samples;
    use super::*;
    use time::macros::date;

    fn fill(class: Class, written: Option<Date>, left: Option<i64>) -> Fill {
        let fill = samples::fill(date!(2026 - 01 - 20), "30 tablets");
        Fill { class, written_on: written, refills_left: left, ..fill }
    }

    /// 21 CFR 1306.22: none after 6 months from issue, at most 5 refills.
    #[test]
    fn schedules_three_and_four_end_after_six_months() {
        for class in [Class::Three, Class::Four] {
            let life = Life::of(&fill(class, Some(date!(2026 - 01 - 15)), Some(5)));
            assert_eq!(life.last_fill, Some(date!(2026 - 07 - 15)));
            assert!(!life.needs_new && life.says.len() == 2, "{:?}", life.says);
            assert!(life.says[0].contains("21 CFR 1306.22(a), United States, federal, as of"));
        }
        let life = Life::of(&fill(Class::Four, Some(date!(2025 - 08 - 31)), Some(6)));
        assert_eq!(life.last_fill, Some(date!(2026 - 02 - 28)));
        assert!(life.says.iter().any(|it| it.contains("6 refills are written down")));
    }

    /// 21 CFR 1306.12: no refills.
    #[test]
    fn schedule_two_has_no_refills() {
        let life = Life::of(&fill(Class::Two, Some(date!(2026 - 01 - 15)), None));
        assert!(life.needs_new && life.last_fill.is_none());
        assert!(life.says[0].contains("no refills") && life.says[0].contains("21 CFR 1306.12(a)"));
    }

    #[test]
    fn for_others_the_label_or_the_pharmacist_says() {
        for class in [Class::NoneKnown, Class::Five] {
            let life = Life::of(&fill(class, Some(date!(2026 - 01 - 15)), Some(1)));
            let expected = Life { says: vec![OTHERWISE.into()], ..Life::default() };
            assert_eq!(life, expected);
        }
        assert!(Life::of(&fill(Class::NoneKnown, None, Some(0))).needs_new);
        let typed = Fill {
            expires_on: Some(date!(2026 - 05 - 01)),
            ..fill(Class::Four, Some(date!(2026 - 01 - 15)), None)
        };
        assert_eq!(Life::of(&typed).last_fill, Some(date!(2026 - 05 - 01)));
    }

    #[test]
    fn the_file_of_rules_is_read_and_dated() {
        assert_eq!(rules().rules.len(), 2);
        assert!(day::iso(&rules().as_of).is_some());
    }
}
