//! Who shares the invented record: what Ottoline lowered for Juno, and a neighbor who is invited.

use super::{Telling, line};
use crate::{
    base::reach::Email,
    family::members::{
        invitations::{model::Invitation, store as invitations},
        places::store as places,
    },
    platform::{
        auth::{
            area::{AreaName, Members, Role},
            policy::Level,
        },
        error::Result,
        random,
    },
};

impl Telling<'_> {
    pub(super) async fn sharing(&self) -> Result<()> {
        self.day(6, (9, 50));
        let mut write = self.write::<Members>("Ottoline").await?;
        let juno = self.cast[3].0;
        if let Some(before) = places::of_member(&write, juno).await? {
            let lowered = before.lowered.with(AreaName::Directives, Some(Level::None));
            places::save(&mut write, &before, &before.lowered(lowered)).await?;
        }
        write.commit().await?;
        self.day(1, (12, 5));
        let mut write = self.write::<Members>("Ines").await?;
        let email = Email::from("halvard@example.org".to_owned());
        let offer = (line("Halvard Lind"), Some(email), Role::Reader);
        let invitation = Invitation::new(self.person, offer, (write.member(), write.at()));
        invitations::add(&mut write, &invitation, &random::hex(32)).await?;
        write.commit().await.map(|_| ())
    }
}
