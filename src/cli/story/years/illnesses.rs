//! Conditions that come and are over, operations, and reactions that were seen or taken for one.

use super::{
    Week,
    names::{ILLNESSES, OPERATIONS, REACTIONS},
};
use crate::{
    base::day,
    cli::story::{line, some},
    platform::{
        auth::area::{Clinical, Essentials},
        error::Result,
    },
    record::{
        allergies::{
            model::{Account, Allergy, Nature},
            store as allergies,
        },
        operations::{
            model::{Entry, Operation},
            store as operations,
        },
    },
};

/// An illness begins once in so many weeks.
const EVERY: i64 = 17;

impl Week<'_> {
    pub(super) async fn illnesses(&mut self) -> Result<()> {
        let first = (self.number / EVERY - 4).max(0);
        for nth in first..=self.number / EVERY {
            let (name, weeks) = ILLNESSES[(nth as usize) % ILLNESSES.len()];
            let age = self.number - nth * EVERY;
            if age == 0 {
                let since = day::words(self.it.date(self.ago - 2));
                self.it.condition_begins("Ines", (name, &since, "the family")).await?;
            } else if age == weeks {
                self.it.condition_over("Bram", name, "Dr Oyelaran, by phone").await?;
            }
        }
        if self.turn(65, 20) {
            self.operated().await?;
        }
        if self.turn(86, 30) {
            self.reaction_seen().await?;
        }
        if self.turn(172, 124) {
            self.reaction_struck().await?;
        }
        Ok(())
    }

    async fn operated(&mut self) -> Result<()> {
        let (name, implant) = OPERATIONS[(self.number / 65) as usize % OPERATIONS.len()];
        let entry = Entry {
            name: line(name),
            done_when: some(&day::words(self.it.date(self.ago - 2))),
            done_where: some("Lakeshore Hospital, Duluth"),
            implant: some(implant),
            implant_card: None,
            note: None,
            source: some("read off the discharge papers"),
        };
        let mut write = self.it.write::<Clinical>("Ines").await?;
        operations::add(&mut write, &Operation::new(self.it.person, entry)).await?;
        write.commit().await.map(|_| ())
    }

    async fn reaction_seen(&mut self) -> Result<()> {
        let (substance, reaction) = REACTIONS[(self.number / 86) as usize % REACTIONS.len()];
        let account = Account {
            substance: line(substance),
            nature: Nature::NotKnownWhich,
            reaction: some(reaction),
            since: some(&day::words(self.it.date(self.ago - 2))),
            source: some("seen by Delia"),
        };
        let mut write = self.it.write::<Essentials>("Ines").await?;
        allergies::add(&mut write, &Allergy::new(self.it.person, account)).await?;
        write.commit().await.map(|_| ())
    }

    /// It was none: the one that came last.
    async fn reaction_struck(&mut self) -> Result<()> {
        let mut write = self.it.write::<Essentials>("Ines").await?;
        let all = allergies::list(&write).await?;
        if let Some(before) = all.iter().max_by_key(|it| it.id) {
            let reason = line("it was the new soap; Dr Oyelaran looked at it");
            allergies::save(&mut write, before, &before.struck(reason)).await?;
        }
        write.commit().await.map(|_| ())
    }
}
