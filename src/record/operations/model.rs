//! What an operation is, and what may happen to it.

use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    ids::{MemberId, OperationId, PersonId},
    text::{Line, Note},
};
use crate::platform::error::{Error, Result};

#[derive(Clone, Debug, PartialEq)]
pub struct Operation {
    pub id: OperationId,
    pub person_id: PersonId,
    /// What was done.
    pub name: Line,
    /// As it is remembered: a year is enough.
    pub done_when: Option<Line>,
    /// Where, and by whom.
    pub done_where: Option<Line>,
    /// What was put in: an implant or a device.
    pub implant: Option<Line>,
    /// The number on its card. Never without an implant.
    pub implant_card: Option<Line>,
    pub note: Option<Note>,
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

audited!(Operation as "operation" {
    name: "name", done_when: "time", done_where: "place", implant: "implant",
    implant_card: "implant's card", note: "note", source: "source",
    struck: "struck", struck_reason: "reason",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// What is typed about an operation when it is added or edited.
#[derive(Clone, Debug)]
pub struct Entry {
    pub name: Line,
    pub done_when: Option<Line>,
    pub done_where: Option<Line>,
    pub implant: Option<Line>,
    pub implant_card: Option<Line>,
    pub note: Option<Note>,
    pub source: Option<Line>,
}

impl Operation {
    pub fn new(person_id: PersonId, entry: Entry) -> Operation {
        Operation {
            id: OperationId::default(),
            person_id,
            name: entry.name,
            done_when: entry.done_when,
            done_where: entry.done_where,
            implant: entry.implant,
            implant_card: entry.implant_card,
            note: entry.note,
            source: entry.source,
            struck: false,
            struck_reason: None,
            checked_at: None,
            checked_by: None,
            checked_against: None,
            version: 1,
        }
    }

    /// With another entry, which has not been checked. The same again changes nothing, and
    /// leaves the check.
    pub fn edited(&self, entry: Entry) -> Operation {
        let after = Operation {
            name: entry.name,
            done_when: entry.done_when,
            done_where: entry.done_where,
            implant: entry.implant,
            implant_card: entry.implant_card,
            note: entry.note,
            source: entry.source,
            ..self.clone()
        };
        if after == *self {
            return after;
        }
        Operation { checked_at: None, checked_by: None, checked_against: None, ..after }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Operation> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Taken off the list because it was entered by mistake.
    pub fn struck(&self, reason: Line) -> Operation {
        Operation { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Operation {
        Operation { struck: false, struck_reason: None, ..self.clone() }
    }

    pub fn checked(&self, check: Check) -> Operation {
        Operation {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    /// "hip joint, titanium, card H-2017-0042": what was put in, with the number of its card.
    pub fn put_in(&self) -> Option<String> {
        let implant = self.implant.as_ref()?;
        Some(match &self.implant_card {
            Some(card) => format!("{implant}, card {card}"),
            None => implant.to_string(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn entry(implant: Option<&str>, card: Option<&str>) -> Entry {
        Entry {
            name: line("Left hip replaced"),
            done_when: None,
            done_where: None,
            implant: implant.map(line),
            implant_card: card.map(line),
            note: None,
            source: None,
        }
    }

    #[test]
    fn an_edit_takes_the_check_off_and_the_same_again_leaves_it() {
        let (at, by) = (Instant::from_unix(0), MemberId::from(1));
        let kept = Operation::new(PersonId::from(1), entry(None, None));
        let kept = kept.checked(Check { at, by, against: line("the hospital's letter") });
        assert_eq!(kept.edited(entry(None, None)), kept);
        assert_eq!(kept.edited(entry(Some("hip joint"), None)).check(), None);
    }

    #[test]
    fn what_is_brought_back_is_as_it_was() {
        let kept = Operation::new(PersonId::from(1), entry(None, None));
        assert_eq!(kept.struck(line("it is her sister's")).brought_back(), kept);
    }

    #[test]
    fn what_was_put_in_stands_with_its_card() {
        let put_in = |it, card| Operation::new(PersonId::from(1), entry(it, card)).put_in();
        let both = put_in(Some("hip joint"), Some("H-2017-0042"));
        assert_eq!(both.as_deref(), Some("hip joint, card H-2017-0042"));
        assert_eq!(put_in(Some("hip joint"), None).as_deref(), Some("hip joint"));
        assert_eq!(put_in(None, None), None);
    }
}
