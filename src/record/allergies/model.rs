//! What an allergy or intolerance is, and what may happen to it.

use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    ids::{AllergyId, MemberId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::Choice,
};
use std::fmt;

#[derive(Clone, Debug, PartialEq)]
pub struct Allergy {
    pub id: AllergyId,
    pub person_id: PersonId,
    pub substance: Line,
    pub nature: Nature,
    /// As it was seen.
    pub reaction: Option<Line>,
    /// As it is remembered: a year is enough.
    pub since: Option<Line>,
    /// Read off which paper, or said by whom.
    pub source: Option<Line>,
    /// Entered by mistake.
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub checked_at: Option<Instant>,
    pub checked_by: Option<MemberId>,
    pub checked_against: Option<Line>,
    pub version: i64,
}

audited!(Allergy as "allergy" {
    substance: "substance", nature: "nature", reaction: "reaction", since: "since",
    source: "source", struck: "struck", struck_reason: "reason",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// Which of the two it is, as far as the family was told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Nature {
    #[serde(rename = "allergy")]
    #[sqlx(rename = "allergy")]
    Allergy,
    #[serde(rename = "intolerance")]
    #[sqlx(rename = "intolerance")]
    Intolerance,
    #[serde(rename = "not known which")]
    #[sqlx(rename = "not known which")]
    NotKnownWhich,
}

impl Choice for Nature {
    const ALL: &'static [Nature] = &[Nature::Allergy, Nature::Intolerance, Nature::NotKnownWhich];

    fn words(self) -> &'static str {
        match self {
            Nature::Allergy => "allergy",
            Nature::Intolerance => "intolerance",
            Nature::NotKnownWhich => "not known which",
        }
    }
}

impl fmt::Display for Nature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// What is typed about an allergy when it is added or edited.
#[derive(Clone, Debug)]
pub struct Account {
    pub substance: Line,
    pub nature: Nature,
    pub reaction: Option<Line>,
    pub since: Option<Line>,
    pub source: Option<Line>,
}

impl Allergy {
    pub fn new(person_id: PersonId, account: Account) -> Allergy {
        Allergy {
            id: AllergyId::default(),
            person_id,
            substance: account.substance,
            nature: account.nature,
            reaction: account.reaction,
            since: account.since,
            source: account.source,
            struck: false,
            struck_reason: None,
            checked_at: None,
            checked_by: None,
            checked_against: None,
            version: 1,
        }
    }

    /// With another account of it, which has not been checked. The same again changes nothing,
    /// and leaves the check.
    pub fn edited(&self, account: Account) -> Allergy {
        let after = Allergy {
            substance: account.substance,
            nature: account.nature,
            reaction: account.reaction,
            since: account.since,
            source: account.source,
            ..self.clone()
        };
        if after == *self {
            return after;
        }
        Allergy { checked_at: None, checked_by: None, checked_against: None, ..after }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Allergy> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Taken off the list because it was entered by mistake.
    pub fn struck(&self, reason: Line) -> Allergy {
        Allergy { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Allergy {
        Allergy { struck: false, struck_reason: None, ..self.clone() }
    }

    pub fn checked(&self, check: Check) -> Allergy {
        Allergy {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    pub fn is_allergy(&self) -> bool {
        self.nature == Nature::Allergy
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn account(substance: &str) -> Account {
        let nature = Nature::NotKnownWhich;
        Account { substance: line(substance), nature, reaction: None, since: None, source: None }
    }

    #[test]
    fn an_edit_takes_the_check_off_and_the_same_again_leaves_it() {
        let check = Check {
            at: Instant::from_unix(0),
            by: MemberId::from(1),
            against: line("the clinic's list"),
        };
        let kept = Allergy::new(PersonId::from(1), account("Penicillin")).checked(check);
        assert_eq!(kept.edited(account("Penicillin")), kept);
        assert_eq!(kept.edited(account("Amoxicillin")).check(), None);
    }

    #[test]
    fn what_is_brought_back_is_as_it_was() {
        let kept = Allergy::new(PersonId::from(1), account("Penicillin"));
        let struck = kept.struck(line("it is her sister's"));
        assert!(struck.struck && struck.struck_reason.is_some());
        assert_eq!(struck.brought_back(), kept);
    }
}
