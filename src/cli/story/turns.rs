//! What was held, stopped and taken differently in the month, who said so, and who was told.

use super::{Telling, line};
use crate::{
    base::ids::{TellingId, TurnId},
    platform::{
        auth::area::{Clinical, Essentials},
        error::{Error, Result},
    },
    record::{
        contacts::store as contacts,
        medicines::{
            model::Medicine,
            store as medicines,
            turns::{
                model::{Said, Telling as Told, Turn, What},
                store as turns,
            },
        },
    },
};

impl Telling<'_> {
    /// A medicine turns on the day that is told, by what someone said, for a reason.
    pub(super) async fn turned(
        &self,
        who: &str,
        name: &str,
        (what, by, reason): (What, &str, &str),
        turn: impl Fn(&Medicine) -> Result<Medicine>,
    ) -> Result<TurnId> {
        let mut write = self.write::<Clinical>(who).await?;
        let mut named = medicines::list(&write).await?;
        named.retain(|it| it.name.as_str() == name);
        let before = named.into_iter().max_by_key(|it| it.id);
        let before = before.ok_or(Error::NotFound)?;
        medicines::save(&mut write, &before, &turn(&before)?).await?;
        let said = Said { on: self.zone.day(write.at()), by: line(by), reason: line(reason) };
        let turn = Turn::new(&before, what, said, (write.member(), write.at()));
        let turn = Turn { left_at: before.version + 1, ..turn };
        let id = turns::add(&mut write, &turn).await?;
        write.commit().await?;
        Ok(id)
    }

    /// A contact was told of it, by whoever writes it down.
    pub(super) async fn told_of(
        &self,
        who: &str,
        turn: TurnId,
        whom: &str,
        how: &str,
    ) -> Result<()> {
        let essentials = self.write::<Essentials>(who).await?;
        let contacts = contacts::list(&essentials).await?;
        drop(essentials);
        let mut write = self.write::<Clinical>(who).await?;
        let contact = contacts.iter().find(|it| it.name.as_str().contains(whom));
        let turn = turns::find(&write, turn).await?;
        let told = Told {
            id: TellingId::default(),
            person_id: turn.person_id,
            turn_id: turn.id,
            medicine_id: turn.medicine_id,
            contact_id: contact.map(|it| it.id),
            whom: contact.map_or_else(|| line(whom), |it| it.name.clone()),
            told_on: self.zone.day(write.at()),
            told_by: write.member(),
            how: Some(line(how)),
            struck: false,
            version: 1,
        };
        turns::add_telling(&mut write, &told).await?;
        write.commit().await.map(|_| ())
    }
}
