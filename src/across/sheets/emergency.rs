//! The facts of the emergency sheet: for a nurse or paramedic who has never met the person.
//!
//! Order: whom to phone, who she is, allergies, what was stated of a blood thinner and of implants,
//! which directives stand, medicines, those on hold, conditions, operations, how she usually is, contacts,
//! poison line.
//! A field that is missing is shown as missing (Joint Commission NPSG.03.06.01, 2020 wording).
//! Checks stand with their date, not their age, so the same facts always give the same hash.

mod clinical;
mod contacts;
mod directives;
mod medicines;

pub(super) use self::directives::DirectiveItem;
use self::{
    clinical::{Conditions, Operations, StatementItem, statements},
    contacts::Contacts,
    directives::Directives,
    medicines::{Log, Medicines},
};
use super::{stamps::Stamps, usual::Usual};
use crate::{
    base::{
        day,
        text::{Line, Phone},
    },
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::{
        allergies::{model::Allergy, state::State, store as allergies},
        baseline::store as baseline,
        conditions::store as conditions,
        contacts::store as phones,
        medicines::{store as taken, turns::store as turns},
        operations::store as operations,
        people::{model::Person, store as people},
        statements::store as answers,
    },
};
use serde::Serialize;
use time::Date;

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: &'static str,
    pub person: Head,
    pub allergies: Allergies,
    pub statements: Vec<StatementItem>,
    /// None at all for a member to whom the area was closed: no line, and no word that one is missing.
    pub directives: Option<Directives>,
    pub medicines: Medicines,
    pub conditions: Conditions,
    pub operations: Operations,
    pub usual: Usual,
    pub contacts: Contacts,
}

#[derive(Serialize)]
pub struct Head {
    pub name: Line,
    pub born: String,
    /// Today, or on the day of death.
    pub age: String,
    pub died: Option<String>,
    pub address: Option<Line>,
    pub language: Option<Line>,
    pub needs: Vec<Need>,
    pub emergency_number: Phone,
    pub poison_line: Option<Phone>,
    pub phone_first: Option<PhoneFirst>,
    pub stamp: String,
}

#[derive(Serialize)]
pub struct Need {
    pub what: &'static str,
    pub text: Line,
}

#[derive(Serialize)]
pub struct PhoneFirst {
    pub whom: Line,
    pub number: Phone,
    pub said_by: Line,
}

#[derive(Serialize)]
pub struct Allergies {
    pub sentence: String,
    pub stamp: Option<String>,
    pub items: Vec<AllergyItem>,
}

#[derive(Serialize)]
pub struct AllergyItem {
    pub substance: Line,
    pub kind: String,
    pub reaction: Option<Line>,
    pub since: Option<Line>,
    pub source: Option<Line>,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Essentials>, today: Date) -> Result<Facts> {
        let clinical = view.for_sheet::<Clinical>();
        let (person, names) = (people::find(view).await?, view.names().await?);
        let stamps = Stamps { names: &names, zone: &person.zone };
        let state = State::of(allergies::list(view).await?, allergies::answer(view).await?);
        let medicines = taken::current(&clinical).await?;
        let turned = turns::standing(&clinical).await?;
        let log = Log::read(view, &names, &person.zone).await?;
        let usual = baseline::find(view).await?;
        let contacts = phones::list(view).await?;
        let operations = operations::list(&clinical).await?;
        let conditions = conditions::standing(&clinical).await?;
        let answers = answers::list(&clinical).await?;
        let directives = match view.for_sheet_unless_closed() {
            Some(view) => Some(Directives::read(&view).await?),
            None => None,
        };
        Ok(Facts {
            paper: person.paper.code(),
            lang: "en",
            title: "Emergency sheet",
            allergies: Allergies::of(&state, &stamps),
            statements: statements(&answers, &operations),
            directives,
            medicines: Medicines::of(&medicines, &turned, &stamps, &log),
            conditions: Conditions::of(&conditions, &person.name, &stamps),
            operations: Operations::of(&operations, &stamps),
            usual: Usual::of(&usual, person.name.as_str(), stamps.of(usual.check())),
            contacts: Contacts::of(&contacts, today, &stamps),
            person: Head::of(&person, today, &stamps),
        })
    }
}

impl Head {
    fn of(it: &Person, today: Date, stamps: &Stamps) -> Head {
        let needs = [("Hearing", &it.hearing), ("Vision", &it.vision), ("Mobility", &it.mobility)];
        let need = |(what, text): (_, &Option<Line>)| Some(Need { what, text: text.clone()? });
        let first = (it.first_whom.clone(), it.first_number.clone(), it.first_said_by.clone());
        Head {
            name: it.name.clone(),
            born: day::words(it.born),
            age: it.age(today).to_string(),
            died: it.died_on.map(day::words),
            address: it.address.clone(),
            language: it.language.clone(),
            needs: needs.into_iter().filter_map(need).collect(),
            emergency_number: it.emergency_number.clone(),
            poison_line: it.poison_line.clone(),
            phone_first: match first {
                (Some(whom), Some(number), Some(said_by)) => {
                    Some(PhoneFirst { whom, number, said_by })
                }
                _ => None,
            },
            stamp: stamps.of(it.check()),
        }
    }
}

impl Allergies {
    pub(super) fn of(state: &State, stamps: &Stamps) -> Allergies {
        let item = |it: &Allergy| AllergyItem {
            substance: it.substance.clone(),
            kind: it.nature.to_string(),
            reaction: it.reaction.clone(),
            since: it.since.clone(),
            source: it.source.clone(),
        };
        let sentence = match state.said() {
            Some(said) => format!("{}, {said}", state.sentence()),
            None => state.sentence(),
        };
        Allergies {
            sentence,
            stamp: stamps
                .naming(state.listed().iter().map(|it| (it.substance.to_string(), it.check()))),
            items: state.listed().iter().map(item).collect(),
        }
    }
}
