//! Who shares the record, over years: an item is hidden for some weeks and shown again, an area is
//! lowered and given back, a place is paused and stands again.

use super::Week;
use crate::{
    family::members::{model::State, places::store as places},
    platform::{
        auth::{
            area::{AreaName, Clinical, Members},
            policy::Level,
        },
        error::Result,
    },
    record::medicines::store as medicines,
};

/// The weeks of a year in which Rosalind's place is paused, and stands again.
const PAUSED: i64 = 30;
const BACK: i64 = 38;

impl Week<'_> {
    pub(super) async fn sharing(&mut self) -> Result<()> {
        if self.turn(8, 2) || self.turn(8, 5) {
            self.medicine_seen(self.turn(8, 5)).await?;
        }
        if self.turn(26, 7) {
            self.it.lowered("Ines", "Bram", AreaName::Members, Some(Level::None)).await?;
        }
        if self.turn(26, 15) {
            self.it.lowered("Ines", "Bram", AreaName::Members, None).await?;
        }
        if self.turn(52, PAUSED) {
            self.place_turned("Rosalind", State::Paused).await?;
        }
        if self.turn(52, BACK) {
            self.place_turned("Rosalind", State::Standing).await?;
        }
        Ok(())
    }

    /// From the week her place is paused until it stands again.
    pub(super) fn rosalind_is_paused(&self) -> bool {
        (PAUSED..BACK).contains(&(self.number % 52))
    }

    /// One medicine out of the eight weeks at hand, from Rosalind: hidden, and later seen again.
    async fn medicine_seen(&self, seen: bool) -> Result<()> {
        let view = self.it.write::<Clinical>("Ines").await?;
        let mut all = medicines::list(&view).await?;
        drop(view);
        all.sort_by_key(|it| it.id);
        let by = if self.turn(16, 2) || self.turn(16, 5) { "Ines" } else { "Ottoline" };
        let nth = usize::try_from(self.number / 8).unwrap_or(0) % all.len().clamp(1, 9);
        match all.get(nth) {
            Some(it) => self.it.seen(by, ("medicine", it.id.into()), "Rosalind", seen).await,
            None => Ok(()),
        }
    }

    async fn place_turned(&self, whose: &str, state: State) -> Result<()> {
        let mut write = self.it.write::<Members>("Ines").await?;
        if let Some(before) = places::of_member(&write, self.it.member(whose).0).await? {
            let after = before.turned(state, write.at());
            places::save(&mut write, &before, &after).await?;
        }
        write.commit().await.map(|_| ())
    }
}
