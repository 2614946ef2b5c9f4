//! What a contact is, and what may happen to it.

use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    ids::{ContactId, MemberId, PersonId},
    text::{Line, Phone},
};
use crate::platform::error::{Error, Result};

#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    pub id: ContactId,
    pub person_id: PersonId,
    pub name: Line,
    /// Daughter, clinic, neighbour with a key.
    pub who: Option<Line>,
    pub phone: Phone,
    pub other_phone: Option<Phone>,
    /// When to phone, and how.
    pub note: Option<Line>,
    /// Read off which paper, or said by whom.
    pub source: Option<Line>,
    /// Only its order counts: numbers may be missing between two contacts.
    pub call_order: i64,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub checked_at: Option<Instant>,
    pub checked_by: Option<MemberId>,
    pub checked_against: Option<Line>,
    pub version: i64,
}

audited!(Contact as "contact" {
    name: "name", who: "who", phone: "phone", other_phone: "other phone", note: "when to phone",
    source: "source", call_order: "calling order", struck: "struck", struck_reason: "reason",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// What is typed about a contact when it is added or edited.
#[derive(Clone, Debug)]
pub struct Entry {
    pub name: Line,
    pub who: Option<Line>,
    pub phone: Phone,
    pub other_phone: Option<Phone>,
    pub note: Option<Line>,
    pub source: Option<Line>,
}

impl Contact {
    pub fn new(person_id: PersonId, entry: Entry, call_order: i64) -> Contact {
        Contact {
            id: ContactId::default(),
            person_id,
            name: entry.name,
            who: entry.who,
            phone: entry.phone,
            other_phone: entry.other_phone,
            note: entry.note,
            source: entry.source,
            call_order,
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
    pub fn edited(&self, entry: Entry) -> Contact {
        let after = Contact {
            name: entry.name,
            who: entry.who,
            phone: entry.phone,
            other_phone: entry.other_phone,
            note: entry.note,
            source: entry.source,
            ..self.clone()
        };
        if after == *self {
            return after;
        }
        Contact { checked_at: None, checked_by: None, checked_against: None, ..after }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Contact> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Taken off the list: it was a mistake, or need not be phoned any more.
    pub fn struck(&self, reason: Line) -> Contact {
        Contact { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Contact {
        Contact { struck: false, struck_reason: None, ..self.clone() }
    }

    /// At the place of another one.
    pub fn moved_to(&self, place: &Contact) -> Contact {
        Contact { call_order: place.call_order, ..self.clone() }
    }

    pub fn checked(&self, check: Check) -> Contact {
        Contact {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    /// The numbers, the one to try first in front.
    pub fn phones(&self) -> impl Iterator<Item = &Phone> {
        std::iter::once(&self.phone).chain(&self.other_phone)
    }
}

/// A step in the calling order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    Earlier,
    Later,
}

/// The one in the list and the neighbour it changes places with; `None` where it is at the end
/// already, or not in the list.
pub fn places(list: &[Contact], id: ContactId, step: Step) -> Option<(&Contact, &Contact)> {
    let at = list.iter().position(|it| it.id == id)?;
    let neighbour = match step {
        Step::Earlier => at.checked_sub(1)?,
        Step::Later => at + 1,
    };
    Some((&list[at], list.get(neighbour)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn contact(id: i64, name: &str) -> Contact {
        let phone = Phone::from("555-0101".to_owned());
        let (name, who) = (Line::from(name.to_owned()), None);
        let entry = Entry { name, who, phone, other_phone: None, note: None, source: None };
        Contact { id: id.into(), ..Contact::new(PersonId::from(1), entry, id * 10) }
    }

    fn list() -> [Contact; 3] {
        [contact(1, "Ines"), contact(2, "Emeric"), contact(3, "Bram")]
    }

    #[test]
    fn a_step_changes_places_with_the_neighbour_and_ends_at_the_ends() {
        let list = list();
        let ids = |id: i64, step| {
            places(&list, id.into(), step)
                .map(|(one, other)| (i64::from(one.id), i64::from(other.id)))
        };
        assert_eq!(ids(2, Step::Earlier), Some((2, 1)));
        assert_eq!(ids(2, Step::Later), Some((2, 3)));
        assert_eq!(ids(1, Step::Earlier), None);
        assert_eq!(ids(3, Step::Later), None);
        assert_eq!(ids(9, Step::Later), None);
    }

    #[test]
    fn an_edit_takes_the_check_off_and_keeps_the_place() {
        let (at, by) = (Instant::from_unix(0), MemberId::from(1));
        let check = Check { at, by, against: Line::from("by ringing".to_owned()) };
        let kept = contact(2, "Emeric").checked(check);
        let entry = |it: Contact| Entry {
            name: it.name,
            who: it.who,
            phone: it.phone,
            other_phone: it.other_phone,
            note: it.note,
            source: it.source,
        };
        assert_eq!(kept.edited(entry(contact(2, "Emeric"))), kept);
        let after = kept.edited(entry(contact(2, "Emeric Varga")));
        assert_eq!((after.check(), after.call_order), (None, 20));
        assert!(kept.moved_to(&contact(1, "Ines")).check().is_some());
    }
}
