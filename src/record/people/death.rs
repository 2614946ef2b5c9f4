//! A death is entered, and taken back.
//!
//! A steward enters it: someone whom the family chose to decide, and never the person, in whose
//! name it would be a forgery. The person can take it back, as a steward can: she is the one who
//! knows best. It is asked twice, since everyone reads it on the next page they open. From then on
//! `is_living` says no, which is the one thing to ask before anyone is reminded of anything.

pub mod pages;

use super::{form::Told, model::Person};
use crate::base::{day, ids::MemberId, text::Line};
use crate::platform::{auth::area::Role, error::Result, web::form::FormErrors};
use time::Date;

pub fn may_enter(role: Role) -> bool {
    role == Role::Steward
}

pub fn may_take_back(role: Role) -> bool {
    role.decides()
}

impl Person {
    /// Whether anyone may still be reminded of anything: pages ask it today, mails would.
    pub fn is_living(&self) -> bool {
        self.died_on.is_none()
    }

    /// On a day between birth and today.
    pub fn died(&self, told: &Told, by: MemberId, today: Date) -> Result<Person> {
        FormErrors::unless_come("died_on", told.on, today)?;
        let after = Person {
            died_on: Some(told.on),
            died_by: Some(by),
            died_told_by: Some(told.by.clone()),
            died_undone: None,
            ..self.clone()
        };
        match told.on < self.born {
            true => {
                let says = format!("This is before the birth, {}.", day::words(self.born));
                Err(FormErrors::at("died_on", says).into())
            }
            false => Ok(after),
        }
    }

    /// It was a mistake, for this reason.
    pub fn lives(&self, reason: Line) -> Person {
        Person {
            died_on: None,
            died_by: None,
            died_told_by: None,
            died_undone: Some(reason),
            ..self.clone()
        }
    }

    /// A birth that was corrected is still before the death.
    pub fn sound_life(self) -> Result<Person> {
        match self.died_on {
            Some(died) if died < self.born => {
                let says = format!("This is after the death, {}.", day::words(died));
                Err(FormErrors::at("born", says).into())
            }
            _ => Ok(self),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::zone::Zone;
    use time::macros::date;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn told(on: Date) -> Told {
        Told { on, by: line("the hospice nurse"), sure: true, version: 1 }
    }

    #[test]
    fn a_death_is_between_birth_and_today_and_the_age_stands_still() {
        let today = date!(2026 - 11 - 25);
        let person = Person::new(line("Ottoline"), date!(1944 - 03 - 09), Zone::utc());
        let died = |on| person.died(&told(on), MemberId::from(2), today);
        assert!(died(date!(2026 - 11 - 26)).is_err() && died(date!(1944 - 03 - 08)).is_err());
        let gone = died(date!(2026 - 03 - 03)).expect("a death");
        assert!(person.is_living() && !gone.is_living());
        assert_eq!((person.age(today), gone.age(date!(2030 - 01 - 01))), (82, 81));
        assert_eq!(gone.born_and_age(today), "9 March 1944, died 3 March 2026, aged 81");
        // Typed anew, the death stays; a birth after it is refused.
        let again = Person::new(line("Ottoline"), date!(2026 - 03 - 04), Zone::utc());
        assert!(gone.edited(again).sound_life().is_err());
        let back = gone.lives(line("the wrong record was open"));
        assert!(back.is_living() && back.sound_life().is_ok());
    }

    #[test]
    fn a_steward_enters_it_and_the_person_can_take_it_back() {
        let who = |may: fn(Role) -> bool| Role::ALL.map(may);
        assert_eq!(who(may_enter), [false, true, false, false, false]);
        assert_eq!(who(may_take_back), [true, true, false, false, false]);
    }
}
