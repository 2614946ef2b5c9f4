//! What a cover is, and the rules for it. No rule says what it pays.

use super::{kind::Kind, mask::masked};
use crate::audited;
use crate::base::{
    day,
    ids::{CoverId, PersonId},
    text::{Line, Phone},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Cover {
    pub id: CoverId,
    pub person_id: PersonId,
    pub payer: Line,
    pub plan: Option<Line>,
    pub kind: Kind,
    /// Ticked, where the plan year is the calendar year and the kind does not say so.
    pub calendar_year: bool,
    pub member_number: Option<Line>,
    pub group_number: Option<Line>,
    pub rx_bin: Option<Line>,
    pub rx_pcn: Option<Line>,
    pub rx_group: Option<Line>,
    /// The customer line, and when it answers.
    pub phone: Option<Phone>,
    pub hours: Option<Line>,
    /// Who may talk to them, and until when.
    pub talks: Option<Line>,
    pub talks_until: Option<Date>,
    pub from_on: Option<Date>,
    /// The last day.
    pub until_on: Option<Date>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Cover as "cover" {
    payer: "who pays", plan: "name of the plan", kind: "kind of cover",
    calendar_year: "plan year is the calendar year", phone: "customer line",
    hours: "hours of the customer line", talks: "who may talk to them",
    talks_until: "until when they may", from_on: "first day", until_on: "last day",
    struck: "struck", struck_reason: "reason",
} sealed {
    member_number: "member number", group_number: "group number", rx_bin: "pharmacy BIN",
    rx_pcn: "pharmacy PCN", rx_group: "pharmacy group",
} skip { id, person_id, version });

/// A cover as it was typed, but for its numbers.
#[derive(Clone, Debug)]
pub struct Terms {
    pub payer: Line,
    pub plan: Option<Line>,
    pub kind: Kind,
    pub calendar_year: bool,
    pub phone: Option<Phone>,
    pub hours: Option<Line>,
    pub talks: Option<Line>,
    pub talks_until: Option<Date>,
    pub from_on: Option<Date>,
    pub until_on: Option<Date>,
}

/// The numbers on the card.
#[derive(Clone, Debug, Default)]
pub struct Numbers {
    pub member_number: Option<Line>,
    pub group_number: Option<Line>,
    pub rx_bin: Option<Line>,
    pub rx_pcn: Option<Line>,
    pub rx_group: Option<Line>,
}

impl Cover {
    pub fn new(person_id: PersonId, terms: Terms, numbers: Numbers) -> Result<Cover> {
        let it = Cover {
            id: CoverId::default(),
            person_id,
            payer: terms.payer.clone(),
            plan: None,
            kind: terms.kind,
            calendar_year: false,
            member_number: None,
            group_number: None,
            rx_bin: None,
            rx_pcn: None,
            rx_group: None,
            phone: None,
            hours: None,
            talks: None,
            talks_until: None,
            from_on: None,
            until_on: None,
            struck: false,
            struck_reason: None,
            version: 1,
        };
        Ok(it.reworded(terms)?.numbered(numbers))
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Cover> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn reworded(&self, terms: Terms) -> Result<Cover> {
        if terms.from_on.zip(terms.until_on).is_some_and(|(from, until)| until < from) {
            let says = "The last day is before the first.";
            return Err(FormErrors::at("until_on", says).into());
        }
        if terms.talks_until.is_some() && terms.talks.is_none() {
            let says = "Enter who may talk to them until that day.";
            return Err(FormErrors::at("talks", says).into());
        }
        Ok(Cover {
            payer: terms.payer,
            plan: terms.plan,
            kind: terms.kind,
            calendar_year: terms.calendar_year,
            phone: terms.phone,
            hours: terms.hours,
            talks: terms.talks,
            talks_until: terms.talks_until,
            from_on: terms.from_on,
            until_on: terms.until_on,
            ..self.clone()
        })
    }

    pub fn numbered(&self, numbers: Numbers) -> Cover {
        Cover {
            member_number: numbers.member_number,
            group_number: numbers.group_number,
            rx_bin: numbers.rx_bin,
            rx_pcn: numbers.rx_pcn,
            rx_group: numbers.rx_group,
            ..self.clone()
        }
    }

    pub fn struck(&self, reason: Line) -> Cover {
        Cover { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Cover {
        Cover { struck: false, struck_reason: None, ..self.clone() }
    }

    /// "Brindlewood Mutual, Harbor Drug Plan"
    pub fn title(&self) -> String {
        match &self.plan {
            Some(plan) => format!("{}, {plan}", self.payer),
            None => self.payer.to_string(),
        }
    }

    /// Whether it is in force on a day, as far as its days are written down.
    pub fn holds_on(&self, on: Date) -> bool {
        let begun = self.from_on.is_none_or(|it| it <= on);
        !self.struck && begun && self.until_on.is_none_or(|it| it >= on)
    }

    pub fn begins_in_january(&self) -> bool {
        self.calendar_year || self.kind.begins_in_january()
    }

    /// Each number that is written down, with what it is called.
    pub fn numbers(&self) -> Vec<(&'static str, &Line)> {
        let all = [
            ("member number", &self.member_number),
            ("group number", &self.group_number),
            ("pharmacy BIN", &self.rx_bin),
            ("pharmacy PCN", &self.rx_pcn),
            ("pharmacy group", &self.rx_group),
        ];
        all.into_iter().filter_map(|(what, it)| Some((what, it.as_ref()?))).collect()
    }

    /// The same as anyone may see them who looks at the screen.
    pub fn masked_numbers(&self) -> Vec<(&'static str, String)> {
        self.numbers().into_iter().map(|(what, it)| (what, masked(it.as_str()))).collect()
    }

    /// "from 1 January 2026", "until 31 December 2026", both, or nothing.
    pub fn days(&self) -> Option<String> {
        let from = self.from_on.map(|it| format!("from {}", day::words(it)));
        let until = self.until_on.map(|it| format!("until {}", day::words(it)));
        let both: Vec<_> = from.into_iter().chain(until).collect();
        (!both.is_empty()).then(|| both.join(" "))
    }

    /// Whether the day has passed until which someone may talk to them.
    pub fn talk_is_over(&self, today: Date) -> bool {
        self.talks_until.is_some_and(|it| it < today)
    }

    /// "Ines, until 31 December 2026"
    pub fn who_talks(&self) -> Option<String> {
        let who = self.talks.as_ref()?;
        let until = self.talks_until.map(|it| format!(", until {}", day::words(it)));
        Some(format!("{who}{}", until.unwrap_or_default()))
    }
}

#[cfg(test)]
pub mod samples {
    use super::*;

    pub fn terms(kind: Kind) -> Terms {
        Terms {
            payer: Line::from("Brindlewood Mutual".to_owned()),
            plan: Some(Line::from("Harbor Drug Plan".to_owned())),
            kind,
            calendar_year: false,
            phone: None,
            hours: None,
            talks: None,
            talks_until: None,
            from_on: None,
            until_on: None,
        }
    }

    pub fn cover(kind: Kind) -> Cover {
        Cover::new(1.into(), terms(kind), Numbers::default()).expect("a cover")
    }
}

#[cfg(test)]
mod tests {
    use super::{samples::*, *};
    use crate::base::change::{Change, SEALED};
    use time::macros::date;

    #[test]
    fn a_number_is_in_no_history() {
        let before = cover(Kind::DrugPlan);
        let number = Line::from("0AA0-AA0-AA00".to_owned());
        let after = before.numbered(Numbers { member_number: Some(number), ..Numbers::default() });
        let told = Change::Edited(&before, &after).differences();
        assert_eq!(told.len(), 1);
        assert_eq!(told[0].new, Some(SEALED.into()));
        assert!(!format!("{:?}", Change::Added(&after).differences()).contains("AA00"));
    }

    #[test]
    fn it_holds_on_its_days() {
        let year = Terms {
            from_on: Some(date!(2026 - 01 - 01)),
            until_on: Some(date!(2026 - 12 - 31)),
            ..terms(Kind::DrugPlan)
        };
        let it = cover(Kind::DrugPlan).reworded(year.clone()).expect("a cover");
        assert!(it.holds_on(date!(2026 - 12 - 31)) && !it.holds_on(date!(2027 - 01 - 01)));
        assert!(!it.holds_on(date!(2025 - 12 - 31)));
        assert_eq!(it.days().as_deref(), Some("from 1 January 2026 until 31 December 2026"));
        let turned = Terms { until_on: Some(date!(2025 - 12 - 31)), ..year };
        assert!(it.reworded(turned).is_err());
    }

    #[test]
    fn who_may_talk_to_them_is_named_where_a_day_is() {
        let nobody = Terms { talks_until: Some(date!(2026 - 12 - 31)), ..terms(Kind::Other) };
        assert!(cover(Kind::Other).reworded(nobody).is_err());
    }
}
