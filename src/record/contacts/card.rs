//! A contact as a vCard 4.0 (IETF RFC 6350 (2011)), for a phone's own list of contacts.
//!
//! Only what a phone is for goes into it: name, what the contact is, numbers, mail, address, hours.
//! What was noted beside stays in the record: a phone shares its contacts with other programs. The
//! writer is our own because crates for vCards bring a parser, a calendar and their zones.

#[cfg(test)]
mod tests;

use super::model::Contact;
use crate::base::{
    clock::Instant,
    content_line::{escaped, folded, part},
    reach::Phone,
};
use crate::platform::audit::steady_uuid;
use time::macros::format_description;

/// One card as it is served.
pub struct Card<'a> {
    pub contact: &'a Contact,
    /// The address of the house: a card stays itself when it is saved again.
    pub house: &'a str,
    pub revised: Instant,
    /// On the contact's own clocks, with their place.
    pub hours: Option<String>,
}

impl Card<'_> {
    /// The lines of the card, each ended and folded as the standard asks.
    pub fn text(&self) -> String {
        let it = self.contact;
        let mut lines = vec!["BEGIN:VCARD".to_owned(), "VERSION:4.0".to_owned()];
        lines.push(format!(
            "UID:urn:uuid:{}",
            steady_uuid(&format!("{} {} {}", self.house, it.person_id, it.id))
        ));
        lines.push(format!("REV:{}", revision(self.revised)));
        lines.push(format!("FN:{}", escaped(it.name.as_str())));
        lines.extend(self.naming());
        if let Some(kind) = it.kind.said() {
            lines.push(format!("CATEGORIES:{}", escaped(kind)));
        }
        lines.extend(it.phones().zip(1..).map(|(phone, place)| number(phone, place)));
        lines.extend(it.email.iter().map(|email| format!("EMAIL:{}", escaped(email.as_str()))));
        // Post office box, extended address, street, town, state, code, country: what was typed is
        // one text, and no program can tell which words of it are the town.
        let address = it.address.iter();
        lines.extend(address.map(|it| format!("ADR:;;{};;;;", part(it.as_str()))));
        lines.extend(it.zone.iter().map(|zone| format!("TZ:{}", escaped(zone.name()))));
        lines.extend(self.note().map(|note| format!("NOTE:{}", escaped(&note))));
        lines.push("END:VCARD".to_owned());
        lines.iter().map(|line| folded(line)).collect()
    }

    /// Which part of a name is the family's differs between languages, so the whole name stands
    /// where the given name does; a place has no such parts.
    fn naming(&self) -> Vec<String> {
        let it = self.contact;
        let (name, organization) = (part(it.name.as_str()), it.organization.as_ref());
        let within = organization.map(|it| part(it.as_str()));
        match it.kind.is_place() {
            true => vec!["KIND:org".into(), format!("ORG:{}", within.unwrap_or(name))],
            false => [
                Some("KIND:individual".to_owned()),
                Some(format!("N:;{name};;;")),
                within.map(|it| format!("ORG:{it}")),
            ]
            .into_iter()
            .flatten()
            .collect(),
        }
    }

    fn note(&self) -> Option<String> {
        let who = self.contact.who.as_ref().map(ToString::to_string);
        let hours = self.hours.as_ref().map(|it| format!("answers {it}"));
        let said: Vec<String> = who.into_iter().chain(hours).collect();
        (!said.is_empty()).then(|| said.join("\n"))
    }
}

/// A number that leads out of any country is a link. Of another one RFC 3966, section 5.1.4, asks
/// for the place it is dialled from, which nobody has said: it goes as the text that was typed.
fn number(phone: &Phone, place: u8) -> String {
    let dial = phone.dial();
    match dial.starts_with('+') {
        true => format!("TEL;VALUE=uri;TYPE=voice;PREF={place}:tel:{dial}"),
        false => format!("TEL;VALUE=text;TYPE=voice;PREF={place}:{}", escaped(phone.as_str())),
    }
}

/// "20261125T151200Z"
fn revision(at: Instant) -> String {
    let form = format_description!("[year][month][day]T[hour][minute][second]Z");
    at.utc().format(form).unwrap_or_else(|_| at.to_string())
}
