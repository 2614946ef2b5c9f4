//! What is kept of the person cared for, and the rules for it.

use super::{first::First, mail::MailSays, paper::Paper};
use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    day,
    ids::{MemberId, PersonId},
    text::{Line, Phone},
    zone::Zone,
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::{Date, macros::date};

#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    pub id: PersonId,
    pub name: Line,
    pub born: Date,
    pub zone: Zone,
    pub address: Option<Line>,
    pub language: Option<Line>,
    pub hearing: Option<Line>,
    pub vision: Option<Line>,
    pub mobility: Option<Line>,
    pub emergency_number: Phone,
    pub poison_line: Option<Phone>,
    /// Whom to phone first, all three or none: see [`First`].
    pub first_whom: Option<Line>,
    pub first_number: Option<Phone>,
    pub first_said_by: Option<Line>,
    /// Read off which paper, or said by whom.
    pub source: Option<Line>,
    pub paper: Paper,
    /// What mail and calendar feeds may say: see `mail`.
    pub mail_says: MailSays,
    /// The day she died, who entered it, who told of it: see `death`.
    pub died_on: Option<Date>,
    pub died_by: Option<MemberId>,
    pub died_told_by: Option<Line>,
    pub died_undone: Option<Line>,
    pub checked_at: Option<Instant>,
    pub checked_by: Option<MemberId>,
    pub checked_against: Option<Line>,
    pub version: i64,
}

audited!(Person as "person" {
    name: "name", born: "born", zone: "time zone", address: "address", language: "language",
    hearing: "hearing", vision: "vision", mobility: "mobility",
    emergency_number: "emergency number", poison_line: "poison line",
    first_whom: "phone first", first_number: "its number", first_said_by: "who said so",
    source: "source", paper: "paper", mail_says: "what mail may say",
    died_on: "day of death", died_by: "", died_told_by: "who told of the death",
    died_undone: "why the death was taken back",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, version });

/// A birth date that a person of today may have.
pub fn sound_birth(born: Date, today: Date) -> Result<Date> {
    let says = match born {
        it if it > today => "This day has not come yet.",
        it if it < date!(1850 - 01 - 01) => "This is before 1850.",
        _ => return Ok(born),
    };
    Err(FormErrors::at("born", says).into())
}

impl Person {
    pub fn new(name: Line, born: Date, zone: Zone) -> Person {
        Person {
            id: PersonId::default(),
            name,
            born,
            zone,
            address: None,
            language: None,
            hearing: None,
            vision: None,
            mobility: None,
            emergency_number: Phone::from("911".to_owned()),
            // Poison Help line of the United States (HRSA), from memory.
            poison_line: Some(Phone::from("1-800-222-1222".to_owned())),
            first_whom: None,
            first_number: None,
            first_said_by: None,
            source: None,
            paper: Paper::UsLetter,
            mail_says: MailSays::Nothing,
            died_on: None,
            died_by: None,
            died_told_by: None,
            died_undone: None,
            checked_at: None,
            checked_by: None,
            checked_against: None,
            version: 1,
        }
    }

    /// As typed anew, which has not been checked. The same facts again change nothing, and
    /// leave the check.
    pub fn edited(&self, typed: Person) -> Person {
        let after = Person {
            id: self.id,
            mail_says: self.mail_says,
            died_on: self.died_on,
            died_by: self.died_by,
            died_told_by: self.died_told_by.clone(),
            died_undone: self.died_undone.clone(),
            checked_at: self.checked_at,
            checked_by: self.checked_by,
            checked_against: self.checked_against.clone(),
            version: self.version,
            ..typed
        };
        if after == *self {
            return after;
        }
        Person { checked_at: None, checked_by: None, checked_against: None, ..after }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Person> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn checked(&self, check: Check) -> Person {
        Person {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    /// Today, or on the day of death.
    pub fn age(&self, today: Date) -> i32 {
        day::age(self.born, self.died_on.unwrap_or(today))
    }

    /// "9 March 1944, age 82"; "9 March 1944, died 3 March 2026, aged 81"
    pub fn born_and_age(&self, today: Date) -> String {
        let (born, age) = (day::words(self.born), self.age(today));
        match self.died_on {
            None => format!("{born}, age {age}"),
            Some(died) => format!("{born}, died {}, aged {age}", day::words(died)),
        }
    }

    pub fn first(&self) -> Option<First<'_>> {
        Some(First {
            whom: self.first_whom.as_ref()?,
            number: self.first_number.as_ref()?,
            said_by: self.first_said_by.as_ref()?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn ottoline() -> Person {
        Person::new(line("Ottoline"), date!(1944 - 03 - 09), Zone::utc())
    }

    #[test]
    fn a_birth_date_is_between_1850_and_today() {
        let today = date!(2026 - 11 - 25);
        let sound = |born| sound_birth(born, today).is_ok();
        assert!(sound(today) && sound(date!(1850 - 01 - 01)));
        assert!(!sound(date!(2026 - 11 - 26)) && !sound(date!(1849 - 12 - 31)));
    }

    #[test]
    fn a_new_person_has_numbers_that_can_be_dialled() {
        let new = ottoline();
        for number in [Some(new.emergency_number), new.poison_line] {
            assert_eq!(number.as_ref().and_then(|it| Phone::parse(it.as_str())), number);
            assert!(number.is_some());
        }
    }

    #[test]
    fn an_edit_takes_the_check_off_and_the_same_again_leaves_it() {
        let check =
            Check { at: Instant::from_unix(0), by: MemberId::from(1), against: line("the card") };
        let kept = Person { id: PersonId::from(7), version: 3, ..ottoline().checked(check) };
        assert_eq!(kept.edited(ottoline()), kept);
        let after = kept.edited(Person { address: Some(line("Duluth")), ..ottoline() });
        assert_eq!((after.check(), after.id, after.version), (None, kept.id, 3));
    }
}
