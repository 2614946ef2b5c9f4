//! What is to be renewed, and what may become of it: someone renews it, it is renewed until another
//! day, or it is let lapse with a reason.
//!
//! An entry of the family's own has a title and a last day. One about something that is kept elsewhere
//! (`about`) has neither: it only says what was done, and `last_on` is the new last day, if any.

use super::{reckon, rule::Rule};
use crate::audited;
use crate::base::{
    day::months_after,
    ids::{MemberId, PersonId, RenewalId},
    text::{Line, Note},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Renewal {
    pub id: RenewalId,
    pub person_id: PersonId,
    pub about_kind: Option<String>,
    pub about_item: Option<i64>,
    pub title: Option<Line>,
    pub rule: Rule,
    /// The last day on which it holds.
    pub last_on: Option<Date>,
    /// How often it comes again.
    pub every_months: Option<i64>,
    /// Days that the issuer needs, and working days that the form takes.
    pub issuer_days: Option<i64>,
    pub form_days: Option<i64>,
    pub note: Option<Note>,
    /// The last day that what follows was said of.
    pub held_on: Option<Date>,
    /// Who renews it, and since when.
    pub renewer_id: Option<MemberId>,
    pub renewing_since: Option<Date>,
    pub lapsed_on: Option<Date>,
    pub lapsed_reason: Option<Line>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Renewal as "renewal" {
    about_kind: "", about_item: "", title: "title", rule: "kind", last_on: "last day",
    every_months: "months between", issuer_days: "days for the issuer",
    form_days: "working days for the form", note: "note", held_on: "", renewer_id: "", renewing_since: "",
    lapsed_on: "", lapsed_reason: "reason", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// How long it takes: what is reckoned with.
#[derive(Clone, Debug)]
pub struct Takes {
    pub rule: Rule,
    pub issuer_days: Option<i64>,
    pub form_days: Option<i64>,
    pub note: Option<Note>,
}

/// An entry of the family's own, as it was typed.
#[derive(Clone, Debug)]
pub struct Entry {
    pub title: Line,
    pub last_on: Date,
    pub every_months: Option<i64>,
    pub takes: Takes,
}

impl Renewal {
    fn empty(person_id: PersonId, rule: Rule) -> Renewal {
        Renewal {
            id: RenewalId::default(),
            person_id,
            about_kind: None,
            about_item: None,
            title: None,
            rule,
            last_on: None,
            every_months: None,
            issuer_days: None,
            form_days: None,
            note: None,
            held_on: None,
            renewer_id: None,
            renewing_since: None,
            lapsed_on: None,
            lapsed_reason: None,
            struck: false,
            struck_reason: None,
            version: 1,
        }
    }

    pub fn new(person_id: PersonId, entry: Entry) -> Renewal {
        Renewal::empty(person_id, entry.takes.rule).reworded(entry)
    }

    /// Of something kept elsewhere, of which nothing was said yet.
    pub fn about(person_id: PersonId, (kind, item): (&str, i64), rule: Rule) -> Renewal {
        let (about_kind, about_item) = (Some(kind.to_owned()), Some(item));
        Renewal { about_kind, about_item, version: 0, ..Renewal::empty(person_id, rule) }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Renewal> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn is_own(&self) -> bool {
        self.title.is_some()
    }

    pub fn is_about(&self, kind: &str, item: i64) -> bool {
        self.about_kind.as_deref() == Some(kind) && self.about_item == Some(item)
    }

    pub fn reworded(&self, entry: Entry) -> Renewal {
        let Entry { title, last_on, every_months, takes } = entry;
        let (title, last_on) = (Some(title), Some(last_on));
        Renewal { title, last_on, every_months, ..self.taking(takes) }
    }

    pub fn taking(&self, takes: Takes) -> Renewal {
        let Takes { rule, issuer_days, form_days, note } = takes;
        Renewal { rule, issuer_days, form_days, note, ..self.clone() }
    }

    /// Someone renews it, that holds until a day.
    pub fn begun(&self, held: Date, (by, since): (MemberId, Date), today: Date) -> Result<Renewal> {
        FormErrors::unless_come("renewing_since", since, today)?;
        let (held_on, renewer_id, renewing_since) = (Some(held), Some(by), Some(since));
        Ok(Renewal { held_on, renewer_id, renewing_since, ..self.again() })
    }

    /// Nobody renews it, and it is not let lapse.
    pub fn again(&self) -> Renewal {
        Renewal {
            held_on: None,
            renewer_id: None,
            renewing_since: None,
            lapsed_on: None,
            lapsed_reason: None,
            ..self.clone()
        }
    }

    /// It holds until another day; `held`: until when it did.
    pub fn renewed(&self, until: Date, held: Date) -> Result<Renewal> {
        if until <= held {
            let says = "This is not after the last day that is written down.";
            return Err(FormErrors::at("last_on", says).into());
        }
        Ok(Renewal { last_on: Some(until), ..self.again() })
    }

    /// A window that comes every year was looked at: nothing more is to be done in it.
    pub fn done(&self, held: Date) -> Renewal {
        Renewal { last_on: Some(held), ..self.again() }
    }

    pub fn let_lapse(&self, held: Date, reason: Line, today: Date) -> Renewal {
        let (held_on, lapsed_on, lapsed_reason) = (Some(held), Some(today), Some(reason));
        Renewal { held_on, lapsed_on, lapsed_reason, ..self.again() }
    }

    /// Who renews what holds until this day. Said of an earlier one, it is over: a newer paper is there.
    pub fn renewer(&self, last: Date) -> Option<MemberId> {
        self.renewer_id.filter(|_| self.is_said_of(last))
    }

    /// Whether what holds until this day is let lapse.
    pub fn lapses(&self, last: Date) -> bool {
        self.lapsed_on.is_some() && self.is_said_of(last)
    }

    fn is_said_of(&self, last: Date) -> bool {
        self.held_on.is_some_and(|it| it >= last)
    }

    pub fn struck(&self, reason: Line) -> Renewal {
        Renewal { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Renewal {
        Renewal { struck: false, struck_reason: None, ..self.clone() }
    }

    /// The last day that the next time would have: by how often it comes, or by its rule.
    pub fn next(&self, held: Date) -> Option<Date> {
        let every = self.every_months.or(match self.rule {
            Rule::Passport | Rule::Placard => self.rule.known().years.map(|it| 12 * it),
            _ => None,
        });
        Some(months_after(held, every?))
    }

    /// When to begin, for what holds until this day.
    pub fn start(&self, last: Date) -> reckon::Start {
        reckon::latest_start(last, self.issuer_days, self.form_days)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn passport() -> Renewal {
        let takes =
            Takes { rule: Rule::Passport, issuer_days: Some(42), form_days: Some(5), note: None };
        let last_on = date!(2027 - 01 - 15);
        let entry = Entry { title: line("Passport"), last_on, every_months: None, takes };
        Renewal::new(1.into(), entry)
    }

    #[test]
    fn it_is_renewed_by_someone_until_a_later_day_and_then_stands_as_before() {
        let held = date!(2027 - 01 - 15);
        assert!(passport().begun(held, (3.into(), date!(2026 - 11 - 26)), TODAY).is_err());
        let begun = passport().begun(held, (3.into(), TODAY), TODAY).expect("begun");
        assert_eq!(begun.renewer(held), Some(3.into()));
        assert_eq!(begun.renewer(date!(2037 - 01 - 15)), None, "a newer one is there");
        assert!(begun.renewed(held, held).is_err());
        let renewed = begun.renewed(date!(2037 - 01 - 15), held).expect("renewed");
        assert_eq!(renewed.renewer_id, None);
        assert_eq!(renewed, Renewal { last_on: Some(date!(2037 - 01 - 15)), ..passport() });
        assert_eq!(passport().next(held), Some(date!(2037 - 01 - 15)));
        assert_eq!(passport().start(held).on, date!(2026 - 11 - 27));
    }

    #[test]
    fn what_is_let_lapse_is_renewed_by_nobody_and_stands_again() {
        let held = date!(2027 - 01 - 15);
        let begun = passport().begun(held, (3.into(), TODAY), TODAY).expect("begun");
        let lapsed = begun.let_lapse(held, line("she travels no more"), TODAY);
        assert_eq!((lapsed.renewer_id, lapsed.lapsed_on), (None, Some(TODAY)));
        assert!(lapsed.lapses(held) && !lapsed.lapses(date!(2037 - 01 - 15)));
        assert_eq!(lapsed.again(), passport());
    }
}
