//! What the story made, counted: the things there ever were, and the entries of both histories
//! that a reader of the record meets, hers and the house's.

use super::Telling;
use crate::{
    across::sheets::store as sheets,
    base::ids::PersonId,
    platform::{
        auth::area::{Clinical, Essentials},
        error::Result,
    },
    record::{
        allergies::store as allergies, conditions::store as conditions,
        contacts::store as contacts, medicines::store as medicines,
        operations::store as operations,
    },
};
use std::fmt;

/// Things that were struck count too: they stand in the history.
#[derive(Debug, PartialEq, Eq)]
pub struct Told {
    pub years: u8,
    pub medicines: usize,
    pub conditions: usize,
    pub operations: usize,
    pub allergies: usize,
    pub contacts: usize,
    pub prints: i64,
    pub entries: i64,
}

impl Telling<'_> {
    pub(super) async fn told(&self, years: u8) -> Result<Told> {
        let house = PersonId::default();
        let entries =
            self.operator.entries(self.person).await? + self.operator.entries(house).await?;
        let view = self.operator.view().await?;
        let (ottoline, _) = self.cast[0];
        let clinical = view.in_record::<Clinical>(self.person, ottoline)?;
        let essentials = view.in_record::<Essentials>(self.person, ottoline)?;
        Ok(Told {
            years,
            medicines: medicines::titles(&clinical).await?.len(),
            conditions: conditions::titles(&clinical).await?.len(),
            operations: operations::titles(&clinical).await?.len(),
            allergies: allergies::titles(&essentials).await?.len(),
            contacts: contacts::titles(&essentials).await?.len(),
            prints: sheets::count(&essentials).await?,
            entries,
        })
    }
}

impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let years = if self.years == 1 { "1 year".into() } else { format!("{} years", self.years) };
        write!(f, "Told: {years} and a month: ")?;
        for (count, of) in [
            (self.medicines, "medicines"),
            (self.conditions, "conditions"),
            (self.operations, "operations"),
            (self.allergies, "allergies"),
            (self.contacts, "contacts"),
        ] {
            write!(f, "{count} {of}, ")?;
        }
        write!(f, "{} prints, {} history entries", self.prints, self.entries)
    }
}
