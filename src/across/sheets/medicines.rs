//! The sheets of the medicines: the whole list, the card for a wallet, a week for the pill box,
//! a day with room for who gives what, and a slip with what changed.
//!
//! Each says whose it is, whom to call, and what its medicines were checked against. What is hidden
//! from the one who prints is not on it; what she may not see as a whole is named as not listed.

mod day;
mod list;
pub mod pages;
mod slip;
mod slip_pages;
pub mod wallet;
mod week;

use super::{emergency::Allergies, stamps::Stamps};
use crate::{
    base::{clock::Instant, day as calendar, zone::Zone},
    platform::{
        audit::Names,
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::{
        medicines::{
            model::Medicine,
            schedule::{day::Beside, model::Step, store as schedule},
            store as medicines,
            turns::{model::Turn, standing, store as turns},
        },
        people::{model::Person, paper::Paper, store as people},
    },
};
use serde::Serialize;
use time::{Date, Time};

/// Whose sheet it is, and whom to call.
#[derive(Serialize)]
pub struct Head {
    pub name: String,
    pub born: String,
    pub died: Option<String>,
    /// One number a line; none, where the reader does not see the essentials.
    pub calls: Vec<String>,
}

/// A medicine that is not in a grid, and why.
#[derive(Serialize)]
pub struct BesideItem {
    pub title: String,
    pub says: String,
}

impl From<Beside> for BesideItem {
    fn from(it: Beside) -> BesideItem {
        BesideItem { title: it.title, says: it.says }
    }
}

/// What every sheet of the clinical area is made of, read in one snapshot.
pub(super) struct Ground {
    head: Head,
    paper: &'static str,
    zone: Zone,
    names: Names,
    medicines: Vec<Medicine>,
    steps: Vec<Step>,
    /// The holds that stand, and what is planned.
    turned: Vec<Turn>,
}

impl Ground {
    pub async fn read(view: &View<Clinical>) -> Result<Ground> {
        let whose = view.whose().await?;
        let person = match view.area::<Essentials>() {
            Some(view) => Some(people::find(&view).await?),
            None => None,
        };
        let head = Head {
            name: whose.name,
            born: calendar::words(whose.born),
            died: whose.died.map(calendar::words),
            calls: person.as_ref().map(calls).unwrap_or_default(),
        };
        Ok(Ground {
            head,
            // Letter, where the reader does not see what was chosen.
            paper: person.map_or(Paper::UsLetter, |it| it.paper).code(),
            zone: whose.zone,
            names: view.names().await?,
            medicines: medicines::current(view).await?,
            steps: schedule::list(view).await?,
            turned: turns::standing(view).await?,
        })
    }

    pub fn paper(&self) -> &'static str {
        self.paper
    }

    pub fn name(&self) -> &str {
        &self.head.name
    }

    pub fn head(self) -> Head {
        self.head
    }

    /// The moment a day begins where the person is.
    pub fn begins(&self, day: Date) -> Instant {
        self.zone.instant(day, Time::MIDNIGHT)
    }

    pub async fn allergies(&self, view: &View<Clinical>, reader: &str) -> Result<Allergies> {
        list::allergies_of(view, &self.stamps(), reader).await
    }

    /// Where the whole list is, for a sheet that does not have it.
    pub fn reference(&self) -> String {
        let checked = self.stamp().unwrap_or_else(|| "not checked yet".to_owned());
        format!(
            "Medicines: {} ({checked}). The medicine list has each of them: print it as well.",
            counted(&self.medicines)
        )
    }

    fn stamps(&self) -> Stamps<'_> {
        Stamps { names: &self.names, zone: &self.zone }
    }

    /// What the current medicines were checked against.
    fn stamp(&self) -> Option<String> {
        checked(&self.medicines, &self.stamps())
    }

    /// What begins or ends between these days, medicine by medicine; then what is planned by the
    /// last of them, since the grid lays out what is taken now.
    fn changes(&self, from: Date, until: Date) -> Vec<String> {
        let within = |day: &Date| (from..=until).contains(day);
        let taken = self.medicines.iter().filter(|it| it.is_taken());
        let each = taken.flat_map(|medicine| {
            let own = self.steps.iter().filter(|it| it.medicine_id == medicine.id);
            own.flat_map(move |it| {
                let begins = Some(it.from_on).filter(within).map(|on| {
                    let on = calendar::short_words(on);
                    format!("{}: from {on} {}", medicine.title(), it.directions())
                });
                let ends = it.until_on.filter(within).map(|on| {
                    let on = calendar::short_words(on);
                    format!("{}: {on} is the last day of {}", medicine.title(), it.directions())
                });
                begins.into_iter().chain(ends)
            })
        });
        each.chain(standing::plans(&self.medicines, &self.turned, until)).collect()
    }
}

fn checked(all: &[Medicine], stamps: &Stamps) -> Option<String> {
    stamps.naming(all.iter().map(|it| (it.title(), it.check())))
}

/// Whom to phone: what was told to the family first, then the emergency number.
fn calls(person: &Person) -> Vec<String> {
    let told = (&person.first_whom, &person.first_number, &person.first_said_by);
    let first = match told {
        (Some(whom), Some(number), Some(said_by)) => {
            Some(format!("Phone first: {whom}, {number} (said by {said_by})"))
        }
        _ => None,
    };
    let emergency = format!("In an emergency call {}", person.emergency_number);
    first.into_iter().chain([emergency]).collect()
}

/// "7 medicines, 1 on hold"
fn counted(all: &[Medicine]) -> String {
    let taken = all.iter().filter(|it| it.is_taken()).count();
    let noun = if taken == 1 { "medicine" } else { "medicines" };
    match all.len() - taken {
        0 if taken == 0 => {
            "No medicine is written down. That does not mean that none is taken.".into()
        }
        held => format!("{taken} {noun}, {held} on hold"),
    }
}
