//! The block of the emergency sheet that says whom to phone, in calling order.

use super::Stamps;
use crate::{
    base::text::{Line, Phone},
    record::contacts::model::Contact,
};
use serde::Serialize;
use time::Date;

#[derive(Serialize)]
pub struct Contacts {
    pub stamp: Option<String>,
    /// Those with a number: nobody phones the others.
    pub items: Vec<ContactItem>,
    /// How many have none, so that nobody thinks them lost.
    pub without: Option<String>,
}

#[derive(Serialize)]
pub struct ContactItem {
    pub name: Line,
    /// Kind, who it is, organization: as far as written down.
    pub who: Option<String>,
    pub numbers: Vec<Phone>,
    /// On the clocks of the person.
    pub hours: Option<String>,
    pub note: Option<Line>,
}

impl Contacts {
    pub(super) fn of(all: &[Contact], today: Date, stamps: &Stamps) -> Contacts {
        let (listed, silent): (Vec<&Contact>, Vec<&Contact>) =
            all.iter().partition(|it| it.phone.is_some());
        let item = |it: &&Contact| ContactItem {
            name: it.name.clone(),
            who: it.described(),
            numbers: it.phones().cloned().collect(),
            hours: it.hours_there(stamps.zone, today),
            note: it.note.clone(),
        };
        Contacts {
            stamp: stamps.naming(listed.iter().map(|it| (it.name.to_string(), it.check()))),
            items: listed.iter().map(item).collect(),
            without: match silent.len() {
                0 => None,
                1 => Some("1 contact has no number: see the record.".into()),
                many => Some(format!("{many} contacts have no number: see the record.")),
            },
        }
    }
}
