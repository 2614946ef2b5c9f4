//! A copy of a directive that was given away, and which holders must hear that theirs does not hold
//! any more. To retrieve and replace copies of what is void is common practice, no source.

use super::model::Directive;
use crate::audited;
use crate::base::{
    day,
    ids::{ContactId, DirectiveCopyId, DirectiveId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct DirectiveCopy {
    pub id: DirectiveCopyId,
    pub person_id: PersonId,
    /// Which version of her papers it is a copy of.
    pub directive_id: DirectiveId,
    /// To whom: a contact, or in words.
    pub contact_id: Option<ContactId>,
    pub given_to: Option<Line>,
    pub given_on: Option<Date>,
    pub told_on: Option<Date>,
    pub told_how: Option<Line>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(DirectiveCopy as "directive_copy" {
    directive_id: "", contact_id: "", given_to: "holder", given_on: "day it was given",
    told_on: "", told_how: "", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// To whom a copy was given.
#[derive(Clone, Debug, PartialEq)]
pub enum Holder {
    Contact(ContactId),
    Words(Line),
}

impl DirectiveCopy {
    pub fn new(
        person_id: PersonId,
        directive_id: DirectiveId,
        holder: Holder,
        given_on: Option<Date>,
        today: Date,
    ) -> Result<DirectiveCopy> {
        if let Some(on) = given_on {
            FormErrors::unless_come("given_on", on, today)?;
        }
        let (contact_id, given_to) = match holder {
            Holder::Contact(id) => (Some(id), None),
            Holder::Words(words) => (None, Some(words)),
        };
        Ok(DirectiveCopy {
            id: DirectiveCopyId::default(),
            person_id,
            directive_id,
            contact_id,
            given_to,
            given_on,
            told_on: None,
            told_how: None,
            struck: false,
            struck_reason: None,
            version: 1,
        })
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<DirectiveCopy> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Told that it does not hold any more: when, and what was done.
    pub fn told(&self, on: Date, how: Line, today: Date) -> Result<DirectiveCopy> {
        FormErrors::unless_come("told_on", on, today)?;
        Ok(DirectiveCopy { told_on: Some(on), told_how: Some(how), ..self.clone() })
    }

    pub fn struck(&self, reason: Line) -> DirectiveCopy {
        DirectiveCopy { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn given_day(&self) -> String {
        self.given_on.map_or("on a day that is not written down".into(), |it| {
            format!("on {}", day::words(it))
        })
    }

    /// "told on 3 March 2026: sent it back"
    pub fn told_so(&self) -> Option<String> {
        Some(format!("told on {}: {}", day::words(self.told_on?), self.told_how.as_ref()?))
    }
}

/// The copies whose holders are still to be told: of what is voided or superseded, and of nothing
/// else.
pub fn to_tell<'a>(copies: &'a [DirectiveCopy], all: &[Directive]) -> Vec<&'a DirectiveCopy> {
    let over = |id| all.iter().any(|it| it.id == id && it.is_over());
    let waits = |it: &&DirectiveCopy| !it.struck && it.told_on.is_none() && over(it.directive_id);
    copies.iter().filter(waits).collect()
}

#[cfg(test)]
mod tests {
    use super::super::{
        kind::Kind,
        model::tests::{TODAY, directive, line},
    };
    use super::*;
    use time::macros::date;

    fn copy(id: i64, of: i64) -> DirectiveCopy {
        let holder = Holder::Contact((10 + id).into());
        let new = DirectiveCopy::new(1.into(), of.into(), holder, Some(TODAY), TODAY).unwrap();
        DirectiveCopy { id: id.into(), ..new }
    }

    #[test]
    fn exactly_the_holders_of_what_is_over_are_to_be_told_until_they_were() {
        let all = [
            directive(1, Kind::LivingWill).superseded(2.into()),
            directive(2, Kind::LivingWill),
            directive(3, Kind::HealthPower).superseded(4.into()).struck(line("it is Emeric's")),
        ];
        let told = copy(4, 1).told(TODAY, line("sent it back"), TODAY).unwrap();
        let struck = copy(5, 1).struck(line("never given"));
        let copies = [copy(1, 1), copy(2, 2), copy(3, 3), told.clone(), struck, copy(6, 1)];
        let ids: Vec<_> = to_tell(&copies, &all).iter().map(|it| i64::from(it.id)).collect();
        assert_eq!(ids, [1, 6]);
        assert_eq!(told.told_so().unwrap(), "told on 25 November 2026: sent it back");
    }

    #[test]
    fn nothing_is_given_or_told_on_a_day_to_come() {
        let late = date!(2026 - 11 - 26);
        let words = Holder::Words(line("the clinic"));
        assert!(DirectiveCopy::new(1.into(), 1.into(), words, Some(late), TODAY).is_err());
        assert!(copy(1, 1).told(late, line("by phone"), TODAY).is_err());
    }
}
