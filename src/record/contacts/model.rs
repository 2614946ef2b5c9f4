//! What a contact is, and what may happen to it.

use super::{answering::Answering, hours::Hours, kind::Kind};
use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    ids::{ContactId, MemberId, PersonId},
    text::{Email, Line, Note, Phone},
    zone::Zone,
};
use crate::platform::error::{Error, Result};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    pub id: ContactId,
    pub person_id: PersonId,
    pub name: Line,
    pub kind: Kind,
    /// Daughter, clinic, neighbour with a key.
    pub who: Option<Line>,
    pub organization: Option<Line>,
    /// One of number, mail and address is there.
    pub phone: Option<Phone>,
    pub other_phone: Option<Phone>,
    pub email: Option<Email>,
    pub address: Option<Note>,
    /// Where its clocks are; `None`: where the person's are.
    pub zone: Option<Zone>,
    pub hours: Option<Hours>,
    /// How to phone.
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
    name: "name", kind: "kind", who: "who", organization: "organization",
    phone: "phone", other_phone: "other phone", email: "e-mail", address: "postal address",
    zone: "time zone", hours: "hours", note: "way to phone",
    source: "source", call_order: "calling order", struck: "struck", struck_reason: "reason",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// What is typed about a contact when it is added or edited.
#[derive(Clone, Debug)]
pub struct Entry {
    pub name: Line,
    pub kind: Kind,
    pub who: Option<Line>,
    pub organization: Option<Line>,
    pub phone: Option<Phone>,
    pub other_phone: Option<Phone>,
    pub email: Option<Email>,
    pub address: Option<Note>,
    pub zone: Option<Zone>,
    pub hours: Option<Hours>,
    pub note: Option<Line>,
    pub source: Option<Line>,
}

impl Entry {
    /// Whom to ask for at which number, and nothing else yet.
    pub fn new(name: Line, phone: Option<Phone>) -> Entry {
        Entry {
            name,
            kind: Kind::NotSaid,
            who: None,
            organization: None,
            phone,
            other_phone: None,
            email: None,
            address: None,
            zone: None,
            hours: None,
            note: None,
            source: None,
        }
    }
}

impl Contact {
    pub fn new(person_id: PersonId, entry: Entry, call_order: i64) -> Contact {
        Contact {
            id: ContactId::default(),
            person_id,
            name: entry.name,
            kind: entry.kind,
            who: entry.who,
            organization: entry.organization,
            phone: entry.phone,
            other_phone: entry.other_phone,
            email: entry.email,
            address: entry.address,
            zone: entry.zone,
            hours: entry.hours,
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
            id: self.id,
            struck: self.struck,
            struck_reason: self.struck_reason.clone(),
            checked_at: self.checked_at,
            checked_by: self.checked_by,
            checked_against: self.checked_against.clone(),
            version: self.version,
            ..Contact::new(self.person_id, entry, self.call_order)
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
        self.phone.iter().chain(&self.other_phone)
    }

    /// "doctor: family doctor, since 2011; Lakeside Family Practice", as far as written down.
    pub fn described(&self) -> Option<String> {
        let (kind, who) = (self.kind.said(), self.who.as_ref().map(Line::as_str));
        let first = match (kind, who) {
            (Some(kind), Some(who)) => Some(format!("{kind}: {who}")),
            (one, other) => one.or(other).map(str::to_owned),
        };
        let organization = self.organization.as_ref().map(ToString::to_string);
        let said: Vec<String> = first.into_iter().chain(organization).collect();
        (!said.is_empty()).then(|| said.join("; "))
    }

    /// Where its clocks are.
    pub fn zone<'a>(&'a self, person: &'a Zone) -> &'a Zone {
        self.zone.as_ref().unwrap_or(person)
    }

    pub fn answering(&self, now: Instant, person: &Zone) -> Answering {
        self.hours
            .as_ref()
            .map_or(Answering::Unknown, |it| Answering::at(now, &it.week(), self.zone(person)))
    }

    /// Its hours as the clocks of the person show them in the coming seven days, with the place
    /// where that is not what its own clocks show.
    pub fn hours_there(&self, person: &Zone, today: Date) -> Option<String> {
        let hours = self.hours.as_ref()?;
        let week = hours.week();
        let shown = week.shown_in(self.zone(person), person, today);
        Some(match shown == week {
            true => hours.to_string(),
            false => format!("{}, {} time", shown.words(), person.place()),
        })
    }

    /// Its hours on its own clocks, with the place where those differ from the person's.
    pub fn hours_here(&self, person: &Zone, today: Date) -> Option<String> {
        let (hours, there) = (self.hours.as_ref()?, self.hours_there(person, today)?);
        let same = there == hours.to_string();
        Some(if same { there } else { hours.at(self.zone(person)) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn contact(id: i64, name: &str) -> Contact {
        let phone = Phone::from("555-0101".to_owned());
        let entry = Entry::new(Line::from(name.to_owned()), Some(phone));
        Contact { id: id.into(), ..Contact::new(PersonId::from(1), entry, id * 10) }
    }

    #[test]
    fn an_edit_takes_the_check_off_and_keeps_the_place() {
        let (at, by) = (Instant::from_unix(0), MemberId::from(1));
        let check = Check { at, by, against: Line::from("by ringing".to_owned()) };
        let kept = contact(2, "Emeric").checked(check);
        let entry = |it: Contact| Entry::new(it.name, it.phone);
        assert_eq!(kept.edited(entry(contact(2, "Emeric"))), kept);
        let after = kept.edited(entry(contact(2, "Emeric Varga")));
        assert_eq!((after.check(), after.call_order), (None, 20));
        assert!(kept.moved_to(&contact(1, "Ines")).check().is_some());
    }

    #[test]
    fn hours_name_the_place_where_the_clocks_differ() {
        let zone = |name: &str| Zone::parse(name).expect("a zone");
        let (duluth, today) = (zone("America/Chicago"), time::macros::date!(2026 - 11 - 25));
        let hours = Some(Hours::parse("Mon-Fri 8-17").expect("hours"));
        let own = Contact { hours, ..contact(1, "Ines") };
        let said = |it: &Contact| (it.hours_here(&duluth, today), it.hours_there(&duluth, today));
        let words = Some("Mon–Fri 8 am–5 pm".to_owned());
        assert_eq!(said(&own), (words.clone(), words.clone()));
        let menominee = Contact { zone: Some(zone("America/Menominee")), ..own.clone() };
        assert_eq!(said(&menominee), (words.clone(), words));
        let portland = Contact { zone: Some(zone("America/Los_Angeles")), ..own };
        let (here, there) = said(&portland);
        assert_eq!(here.as_deref(), Some("Mon–Fri 8 am–5 pm, Los Angeles time"));
        assert_eq!(there.as_deref(), Some("Mon–Fri 10 am–7 pm, Chicago time"));
    }
}
