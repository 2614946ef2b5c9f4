//! What is mailed in the invented family: Ottoline lets mail name appointments, and Bram hears every
//! day how much is new.

use super::Telling;
use crate::{
    family::members::mail_choices::{
        model::{HowOften, MailChoice},
        store as choices,
    },
    platform::{auth::area::Essentials, db::Door, error::Result},
    record::people::{mail::MailSays, store as people},
};

impl Telling<'_> {
    pub(super) async fn mail_chosen(&self) -> Result<()> {
        self.day(6, (10, 5));
        let mut write = self.write::<Essentials>("Ottoline").await?;
        let before = people::find(&write).await?;
        people::save(&mut write, &before, &before.saying(MailSays::Names)).await?;
        write.commit().await?;
        let (bram, role) = self.member("Bram");
        let mut write = self.operator.write_as(bram, Door::Member).await?;
        let before = choices::find(&write, (self.person, bram), role).await?;
        let after = MailChoice { digest: HowOften::Daily, ..before.clone() };
        choices::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}
