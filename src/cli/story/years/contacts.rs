//! Whom to phone, over years: they come one by one, change their numbers and their places, and
//! are rung now and then to hear whether the number still holds.

use super::{Week, names::OTHERS};
use crate::{
    cli::story::{phone, some},
    platform::{auth::area::Essentials, error::Result},
    record::contacts::{kind::Kind, model::Contact, store},
};

impl Week<'_> {
    pub(super) async fn numbers(&mut self) -> Result<()> {
        if let Some((name, who)) = self.newcomer() {
            let number = self.number_of_the_invented();
            self.it.contact("Ines", (name, Kind::NotSaid, who, &number)).await?;
        }
        if self.turn(4, 1) {
            self.number_changed().await?;
        }
        if self.turn(13, 6) {
            self.place_changed().await?;
        }
        if self.turn(26, 14) {
            let number = self.number_of_the_invented();
            self.it.own_phone("Juno", &number).await?;
        }
        if self.turn(2, 0) {
            self.it.check_contacts("Bram", "a call to each number").await?;
        }
        Ok(())
    }

    /// One comes every other week at first, until all are there.
    fn newcomer(&self) -> Option<(&'static str, &'static str)> {
        let nth = usize::try_from(self.number / 2).ok()?;
        OTHERS.get(nth).copied().filter(|_| self.turn(2, 1))
    }

    fn number_of_the_invented(&mut self) -> String {
        format!("218-555-01{:02}", self.dice.below(100))
    }

    async fn number_changed(&mut self) -> Result<()> {
        let number = self.number_of_the_invented();
        let others = OTHERS.map(|(name, _)| name);
        let name = self.dice.one_of(&others).copied().unwrap_or_default();
        self.it
            .change_contact("Juno", name, |it| Contact {
                phone: Some(phone(&number)),
                source: some("their message on the answering machine"),
                ..it.clone()
            })
            .await
    }

    async fn place_changed(&mut self) -> Result<()> {
        let view = self.it.write::<Essentials>("Ines").await?;
        let all = store::list(&view).await?;
        drop(view);
        let Some(one) = all.get(self.dice.below(all.len())) else { return Ok(()) };
        self.it.moved_ahead("Ines", one.name.as_str()).await
    }
}
