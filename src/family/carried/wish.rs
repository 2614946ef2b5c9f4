//! Who wishes to be shown among what each carries, and who does not; each with who said so, and
//! when.
//!
//! A member's wish is about her own entries; the person's is about all of them. Whoever is not
//! shown still sees what is hers.

use crate::audited;
use crate::base::{
    day,
    ids::{MemberId, PersonId, WishId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Wish {
    pub id: WishId,
    pub person_id: PersonId,
    /// Whose; none: the person's own, for all of it.
    pub member_id: Option<MemberId>,
    pub hides: bool,
    pub said_by: Line,
    pub said_on: Date,
    pub entered_by: MemberId,
    pub version: i64,
}

audited!(Wish as "carried_wish" {
    member_id: "", hides: "", said_by: "who said so", said_on: "day it was said", entered_by: "",
} skip { id, person_id, version });

/// What is wished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wished {
    Shown,
    NotShown,
}

impl Choice for Wished {
    const ALL: &'static [Wished] = &[Wished::Shown, Wished::NotShown];

    fn words(self) -> &'static str {
        match self {
            Wished::Shown => "it may be shown",
            Wished::NotShown => "it is not to be shown",
        }
    }
}

/// A wish, who said so and when.
#[derive(Clone, Debug)]
pub struct Said {
    pub wished: Wished,
    pub by: Line,
    pub on: Date,
}

impl Wish {
    /// Nothing was said yet: then it is shown.
    pub fn unsaid(
        person_id: PersonId,
        member_id: Option<MemberId>,
        by: MemberId,
        today: Date,
    ) -> Wish {
        let said_by = Line::from("nobody yet".to_owned());
        let entered_by = by;
        let id = WishId::default();
        Wish {
            id,
            person_id,
            member_id,
            hides: false,
            said_by,
            said_on: today,
            entered_by,
            version: 0,
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Wish> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn said(&self, said: Said, entered_by: MemberId, today: Date) -> Result<Wish> {
        FormErrors::unless_come("said_on", said.on, today)?;
        let hides = said.wished == Wished::NotShown;
        Ok(Wish { hides, said_by: said.by, said_on: said.on, entered_by, ..self.clone() })
    }

    pub fn wished(&self) -> Wished {
        if self.hides { Wished::NotShown } else { Wished::Shown }
    }

    pub fn is_said(&self) -> bool {
        self.version > 0
    }

    pub fn day(&self) -> String {
        day::short_words(self.said_on)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn it_is_dated_and_can_be_taken_back() {
        let today = date!(2026 - 11 - 25);
        let unsaid = Wish::unsaid(1.into(), Some(2.into()), 2.into(), today);
        assert!(!unsaid.hides && !unsaid.is_said());
        let by = Line::from("Bram".to_owned());
        let said = |wished, on| Said { wished, by: by.clone(), on };
        let tomorrow = date!(2026 - 11 - 26);
        assert!(unsaid.said(said(Wished::NotShown, tomorrow), 2.into(), today).is_err());
        let hidden = unsaid.said(said(Wished::NotShown, today), 2.into(), today).expect("kept");
        assert!(hidden.hides && hidden.wished() == Wished::NotShown);
        let shown = hidden.said(said(Wished::Shown, today), 2.into(), today).expect("kept");
        assert!(!shown.hides);
    }
}
