//! Whom the invented family phones, in its order: each kind once, with hours and clocks of their
//! own. Every name, number and address is invented.

use super::{Telling, line, phone, some};
use crate::{
    base::{reach::Email, text::Note, zone::Zone},
    platform::{auth::area::Essentials, error::Result},
    record::contacts::{
        hours::Hours,
        kind::Kind,
        model::{Contact, Entry},
        store,
    },
};

/// Name, what it is, who it is, number, when it answers, on which clocks where not on the person's.
type Row = (&'static str, Kind, &'static str, &'static str, &'static str, &'static str);

#[rustfmt::skip]
const CONTACTS: [Row; 13] = [
    ("Ines Varga", Kind::Family, "daughter, lives nearby, has a key", "218-555-0101", "any time", ""),
    ("Emeric Varga", Kind::Family, "husband, lives with her", "218-555-0110", "", ""),
    ("Bram Varga", Kind::Family, "son, in Portland", "503-555-0102", "every day 7-23", "America/Los_Angeles"),
    ("Juno Varga", Kind::Family, "daughter, in Boston", "617-555-0103", "Mon-Fri 17-23; weekend 8-23", "America/New_York"),
    ("Halvard Lind", Kind::Friend, "neighbor at 116, has a key", "218-555-0116", "", ""),
    ("Dr Adaeze Oyelaran", Kind::Doctor, "family doctor", "218-555-0120 ext. 4", "Mon-Fri 8-17", ""),
    ("Runa Holm", Kind::Nurse, "visiting nurse, Tuesdays", "218-555-0124", "Mon-Fri 7:30-16", ""),
    ("Harbor Street Pharmacy", Kind::Pharmacy, "fills all her prescriptions", "218-555-0131", "Mon-Fri 9-20; Sat 9-18", ""),
    ("Great Lakes Elder Plan", Kind::Insurer, "membership questions", "+1 312 555 0140", "Mon-Fri 8-18", "America/New_York"),
    ("Father Anselm", Kind::Faith, "St. Brannoc's parish", "218-555-0145", "", ""),
    ("Tamsin Reyes", Kind::Lawyer, "drew up the papers of 2022", "", "", ""),
    ("Kettle Ridge House", Kind::Respite, "takes her in for a weekend, with a week's notice", "218-555-0150", "Mon-Fri 8-17", ""),
    ("Night line of the county", Kind::Crisis, "someone to talk to", "218-555-0151", "any time", ""),
];

impl Telling<'_> {
    pub(super) async fn contacts(&self) -> Result<()> {
        let mut write = self.write::<Essentials>("Ines").await?;
        for (order, (name, kind, who, number, hours, zone)) in (1..).zip(CONTACTS) {
            let entry = Entry {
                kind,
                who: some(who),
                zone: Zone::parse(zone),
                hours: Hours::parse(hours).ok(),
                ..Entry::new(line(name), (!number.is_empty()).then(|| phone(number)))
            };
            let contact = Contact::new(self.person, placed(entry), order);
            store::add(&mut write, &contact).await?;
        }
        write.commit().await.map(|_| ())
    }
}

/// With where it is, and where letters and mail go.
fn placed(entry: Entry) -> Entry {
    let address = |text: &str| Some(Note::from(text.to_owned()));
    match entry.kind {
        Kind::Doctor => Entry {
            organization: some("Quarry Street Family Practice"),
            email: Some(Email::from("desk@example.org".to_owned())),
            address: address("12 Quarry Street\nDuluth, Minnesota"),
            note: some("press 2 for the nurse"),
            ..entry
        },
        Kind::Lawyer => Entry {
            organization: some("Reyes and Daughter"),
            email: Some(Email::from("tamsin@example.org".to_owned())),
            address: address("Suite 9, 40 Canal Park\nDuluth, Minnesota"),
            ..entry
        },
        _ => entry,
    }
}
