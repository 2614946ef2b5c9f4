//! Medicare's own dates and hours, from the data file beside this one: each part with its source.
//!
//! They change by law and by year. They are said as they stand in the file, and the plan's own
//! letters go before them.

use super::kind::Kind;
use crate::base::day;
use serde::Deserialize;
use std::sync::LazyLock;
use time::{Date, Month};

#[derive(Deserialize)]
pub struct Medicare {
    pub plan_years: PlanYears,
    pub answers: Answers,
}

#[derive(Deserialize)]
pub struct PlanYears {
    /// The kinds of cover whose plan year is the calendar year.
    pub kinds: Vec<Kind>,
    pub notice_of_change_by: (u8, u8),
    pub enrollment: Span,
    pub in_force: (u8, u8),
    pub advantage_switch: Span,
    pub source: String,
    /// In which month the source was last compared.
    pub looked_up: String,
}

#[derive(Deserialize)]
pub struct Span {
    pub from: (u8, u8),
    pub until: (u8, u8),
}

/// Within how many hours a plan answers, from when it has the prescriber's statement.
#[derive(Deserialize)]
pub struct Answers {
    pub kinds: Vec<Kind>,
    pub hours: i64,
    pub expedited_hours: i64,
    pub source: String,
}

static MEDICARE: LazyLock<Medicare> = LazyLock::new(|| {
    serde_json::from_str(include_str!("medicare.json"))
        .expect("the file is compiled in, and read by a test")
});

pub fn medicare() -> &'static Medicare {
    &MEDICARE
}

/// A month and a day in a year.
pub fn on(year: i32, (month, dom): (u8, u8)) -> Option<Date> {
    Date::from_calendar_date(year, Month::try_from(month).ok()?, dom).ok()
}

impl PlanYears {
    /// From which day of a year on a new card is asked about: the day after the plan year begins,
    /// which is a holiday.
    pub fn asked_from(&self, year: i32) -> Option<Date> {
        on(year, self.in_force)?.next_day()
    }

    /// What is said beside a cover of such a kind, for the turn of the year that is next.
    pub fn lines(&self, kind: Kind, today: Date) -> Vec<String> {
        let passed = on(today.year(), self.enrollment.until).is_some_and(|it| it < today);
        let year = today.year() + i32::from(passed);
        let words = |year: i32, at: (u8, u8)| on(year, at).map(day::words).unwrap_or_default();
        let mut lines = vec![
            format!("By {} the plan tells what changes.", words(year, self.notice_of_change_by)),
            format!(
                "From {} until {} a plan is chosen for the year after.",
                words(year, self.enrollment.from),
                words(year, self.enrollment.until)
            ),
            format!("What is chosen is in force from {}.", words(year + 1, self.in_force)),
        ];
        if kind == Kind::MedicareAdvantage {
            lines.push(format!(
                "From {} until {} a Medicare Advantage plan can be changed once more.",
                words(year + 1, self.advantage_switch.from),
                words(year + 1, self.advantage_switch.until)
            ));
        }
        lines
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    /// Medicare.gov; Wisconsin OCI 2024: open enrollment 15 October to 7 December, in force 1 January,
    /// notice of change by 30 September, Advantage switch 1 January to 31 March.
    #[test]
    fn the_dates_are_those_of_the_source() {
        let years = &medicare().plan_years;
        let of = |at| on(2026, at);
        assert_eq!(of(years.notice_of_change_by), Some(date!(2026 - 09 - 30)));
        assert_eq!(of(years.enrollment.from), Some(date!(2026 - 10 - 15)));
        assert_eq!(of(years.enrollment.until), Some(date!(2026 - 12 - 07)));
        assert_eq!(of(years.in_force), Some(date!(2026 - 01 - 01)));
        assert_eq!(of(years.advantage_switch.until), Some(date!(2026 - 03 - 31)));
        assert_eq!(years.asked_from(2027), Some(date!(2027 - 01 - 02)));
        assert!(!years.source.is_empty() && !medicare().answers.source.is_empty());
    }

    #[test]
    fn the_turn_of_the_year_that_is_next_is_told() {
        let years = &medicare().plan_years;
        let lines = years.lines(Kind::MedicareAdvantage, date!(2026 - 11 - 25));
        assert_eq!(lines[0], "By 30 September 2026 the plan tells what changes.");
        assert_eq!(lines[2], "What is chosen is in force from 1 January 2027.");
        assert!(lines[3].starts_with("From 1 January 2027 until 31 March 2027"));
        let after = years.lines(Kind::DrugPlan, date!(2026 - 12 - 08));
        assert_eq!(after.len(), 3);
        assert_eq!(after[2], "What is chosen is in force from 1 January 2028.");
    }

    /// 42 CFR 423.568(b) and 423.572(a), from memory.
    #[test]
    fn a_plan_has_72_hours_and_24_when_it_is_expedited() {
        let answers = &medicare().answers;
        assert_eq!((answers.hours, answers.expedited_hours), (72, 24));
        assert!(Kind::DrugPlan.has_answer_hours() && !Kind::Medicaid.has_answer_hours());
        assert!(!Kind::OriginalMedicare.begins_in_january());
    }
}
