//! The facts of the card for a wallet: who she is, allergies, what was stated of a blood thinner
//! and of implants, whom to phone, and each medicine with how often it is taken.
//!
//! The card is small: what does not fit is counted on it and named in full below it. It is a part
//! of what the emergency sheet says, and is seen by whoever sees that sheet.

use super::{Head, calls, checked, counted};
use crate::{
    across::sheets::stamps::Stamps,
    base::day as calendar,
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::{
        allergies::{model::Allergy, state::State as Allergies, store as allergies},
        contacts::{model::Contact, store as contacts},
        medicines::{
            model::Medicine,
            schedule::{model::Step, store as schedule},
            store as medicines,
            turns::{model::Turn, standing, store as turns},
        },
        people::{model::Person, store as people},
        statements::{state::State, store as statements},
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
    pub allergies: Short,
    pub statements: Vec<Stated>,
    pub first: Option<Call>,
    pub medicines: Short,
    /// What each part was checked against.
    pub sources: Vec<String>,
}

/// What a list comes to, and its lines.
#[derive(Serialize)]
pub struct Short {
    pub sentence: String,
    pub items: Vec<String>,
}

#[derive(Serialize)]
pub struct Stated {
    pub subject: &'static str,
    pub sentence: String,
}

#[derive(Serialize)]
pub struct Call {
    pub whom: String,
    pub number: String,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Essentials>, today: Date) -> Result<Facts> {
        let clinical = view.for_sheet::<Clinical>();
        let (person, names) = (people::find(view).await?, view.names().await?);
        let stamps = Stamps { names: &names, zone: &person.zone };
        let state = allergies::state(view).await?;
        let (all, steps) = (medicines::current(&clinical).await?, schedule::list(&clinical).await?);
        let turned = turns::standing(&clinical).await?;
        let phones = contacts::list(view).await?;
        let said = statements::list(&clinical).await?;
        let stated = said.iter().map(|it| Stated {
            subject: it.question.subject(),
            sentence: State::of(it).sentence(),
        });
        let first = phones.iter().find(|it| it.phone.is_some());
        Ok(Facts {
            paper: person.paper.code(),
            lang: "en",
            title: "Wallet card",
            statements: stated.collect(),
            first: told(&person).or(first.and_then(Call::of)),
            medicines: Short {
                sentence: counted(&all),
                items: all.iter().map(|it| short(it, &steps, &turned, today)).collect(),
            },
            sources: sources(&stamps, &state, &all, first),
            allergies: reactions(&state),
            person: Head {
                name: person.name.to_string(),
                born: calendar::words(person.born),
                died: person.died_on.map(calendar::words),
                calls: calls(&person),
            },
        })
    }
}

fn reactions(state: &Allergies) -> Short {
    let item = |it: &Allergy| match &it.reaction {
        Some(reaction) => format!("{} ({reaction})", it.substance),
        None => it.substance.to_string(),
    };
    Short {
        sentence: match state.said() {
            Some(said) => format!("{}, {said}", state.sentence()),
            None => state.sentence(),
        },
        items: state.listed().iter().map(item).collect(),
    }
}

/// Whom the family was told to phone first.
fn told(person: &Person) -> Option<Call> {
    let (whom, number) = (person.first_whom.as_ref()?, person.first_number.as_ref()?);
    Some(Call { whom: whom.to_string(), number: number.to_string() })
}

impl Call {
    fn of(contact: &Contact) -> Option<Call> {
        let whom = match &contact.who {
            Some(who) => format!("{}, {who}", contact.name),
            None => contact.name.to_string(),
        };
        Some(Call { whom, number: contact.phone.as_ref()?.to_string() })
    }
}

/// "Warfarin 2.5 mg: evening"; a medicine whose steps will change says until when, and one that is
/// planned to be held or stopped says that there is more to read.
fn short(medicine: &Medicine, steps: &[Step], turned: &[Turn], today: Date) -> String {
    // The number and its unit are kept on one line.
    let strength = medicine.strength.as_ref().map(|it| it.as_str().replace(' ', "\u{a0}"));
    let name = format!("{} {}", medicine.name, strength.unwrap_or_default());
    let name = name.trim_end();
    if medicine.is_on_hold() {
        return format!("On hold: {name}");
    }
    let planned = match standing::planned(medicine.id, turned).is_empty() {
        true => "",
        false => " (a change is planned: see the list)",
    };
    format!("{name}: {}{planned}", often(medicine, steps, today))
}

fn often(medicine: &Medicine, steps: &[Step], today: Date) -> String {
    let own = steps.iter().filter(|it| it.medicine_id == medicine.id);
    let regular = own.filter(|it| !it.is_as_needed()).find(|it| it.covers(today));
    match (regular, &medicine.times) {
        _ if medicine.as_needed => "as needed".into(),
        (Some(step), _) => match step.until_on {
            Some(until) => format!("{} until {}", step.often(), calendar::words(until)),
            None => step.often(),
        },
        (None, Some(times)) => times.to_string(),
        (None, None) => "how often: not written down".into(),
    }
}

fn sources(
    stamps: &Stamps,
    allergies: &Allergies,
    medicines: &[Medicine],
    first: Option<&Contact>,
) -> Vec<String> {
    let listed = allergies.listed().iter();
    let allergies = stamps.naming(listed.map(|it| (it.substance.to_string(), it.check())));
    let medicines = checked(medicines, stamps);
    let first = first.map(|it| stamps.of(it.check()));
    let parts = [("Allergies", allergies), ("Medicines", medicines), ("First contact", first)];
    let said = parts.into_iter().filter_map(|(what, stamp)| Some(format!("{what}: {}", stamp?)));
    said.collect()
}
