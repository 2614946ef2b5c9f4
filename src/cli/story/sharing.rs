//! Who shares the invented record: what Ottoline hides from a neighbor and lowers for Juno, and
//! another neighbor who is invited.

use super::{Telling, line};
use crate::{
    across::visibility::{model::Hidden, store as visibility},
    base::reach::Email,
    family::members::{
        invitations::{model::Invitation, store as invitations},
        places::store as places,
    },
    platform::{
        auth::{
            area::{AreaName, Clinical, Members, Role},
            policy::Level,
        },
        error::Result,
        random,
    },
    record::conditions::store as conditions,
};

impl Telling<'_> {
    pub(super) async fn osteoporosis_hidden(&self) -> Result<()> {
        self.day(7, (10, 25));
        let view = self.write::<Clinical>("Ottoline").await?;
        let all = conditions::list(&view).await?;
        let found = all.iter().find(|it| it.name.as_str() == "Osteoporosis").map(|it| it.id);
        drop(view);
        match found {
            Some(id) => self.seen("Ottoline", ("condition", id.into()), "Rosalind", false).await,
            None => Ok(()),
        }
    }

    /// Hides an item from a member, or shows it again.
    pub(super) async fn seen(
        &self,
        by: &str,
        (kind, item): (&str, i64),
        from: &str,
        seen: bool,
    ) -> Result<()> {
        let ((_, role), (member, _)) = (self.member(by), self.member(from));
        let mut write = self.write::<Members>(by).await?;
        let before = visibility::list(&write, kind, item).await?;
        match before.iter().find(|it| it.member_id == member) {
            Some(before) => {
                visibility::save(&mut write, before, &before.decided(!seen, role)).await?
            }
            None => {
                let new = Hidden::new(self.person, member, (kind, item)).decided(!seen, role);
                visibility::add(&mut write, &new).await?
            }
        }
        write.commit().await.map(|_| ())
    }

    pub(super) async fn directives_lowered(&self) -> Result<()> {
        self.day(6, (9, 50));
        self.lowered("Ottoline", "Juno", AreaName::Directives, Some(Level::None)).await
    }

    /// Lowers an area for a member, or (`None`) gives it back.
    pub(super) async fn lowered(
        &self,
        by: &str,
        whose: &str,
        area: AreaName,
        to: Option<Level>,
    ) -> Result<()> {
        let mut write = self.write::<Members>(by).await?;
        if let Some(before) = places::of_member(&write, self.member(whose).0).await? {
            let after = before.lowered(before.lowered.with(area, to));
            places::save(&mut write, &before, &after).await?;
        }
        write.commit().await.map(|_| ())
    }

    pub(super) async fn neighbor_invited(&self) -> Result<()> {
        self.day(1, (12, 5));
        let mut write = self.write::<Members>("Ines").await?;
        let email = Email::from("halvard@example.org".to_owned());
        let offer = (line("Halvard Lind"), Some(email), Role::Reader);
        let invitation = Invitation::new(self.person, offer, (write.member(), write.at()));
        invitations::add(&mut write, &invitation, &random::hex(32)).await?;
        write.commit().await.map(|_| ())
    }
}
