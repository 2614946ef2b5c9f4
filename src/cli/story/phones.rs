//! Numbers that change: Bram has a new phone, the aide's agency joins the list, and Juno rings
//! them all.

use super::{Telling, line, phone, some};
use crate::{
    family::members::{model::Member, store as members},
    platform::{auth::area::Essentials, db::Door, error::Result},
    record::contacts::{
        kind::Kind,
        model::{Contact, Entry},
        store as contacts,
    },
};

impl Telling<'_> {
    pub(super) async fn phones(&self) -> Result<()> {
        self.day(19, (22, 20));
        self.own_phone("Bram", "503-555-0112").await?;
        self.change_contact("Bram", "Bram Varga", |it| Contact {
            phone: Some(phone("503-555-0112")),
            source: some("his new phone"),
            ..it.clone()
        })
        .await?;
        self.day(18, (18, 30));
        self.contact("Juno", ("Delia", Kind::Aide, "comes on weekdays", "218-555-0104")).await?;
        self.contact(
            "Juno",
            ("Lakeside Home Care", Kind::Aide, "sends Delia; rings back", "218-555-0134"),
        )
        .await?;
        self.day(17, (19, 45));
        self.moved_ahead("Ines", "Delia").await?;
        self.day(17, (20, 25));
        self.check_contacts("Juno", "a call to each number").await
    }

    /// Her own number, in her own settings.
    pub(super) async fn own_phone(&self, who: &str, number: &str) -> Result<()> {
        let (member, _) = self.member(who);
        let mut write = self.operator.write_as(member, Door::Member).await?;
        let before = members::find(&write, member).await?;
        let after = Member { phone: Some(phone(number)), ..before.clone() };
        members::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }

    /// A new contact: the name, what and who it is, the number.
    pub(super) async fn contact(
        &self,
        by: &str,
        (name, kind, who, number): (&str, Kind, &str, &str),
    ) -> Result<()> {
        let mut write = self.write::<Essentials>(by).await?;
        let (who, source) = (some(who), some("their card"));
        let entry = Entry { kind, who, source, ..Entry::new(line(name), Some(phone(number))) };
        let place = contacts::last_place(&write).await?;
        contacts::add(&mut write, &Contact::new(self.person, entry, place)).await?;
        write.commit().await.map(|_| ())
    }

    /// One place earlier in the calling order.
    pub(super) async fn moved_ahead(&self, by: &str, name: &str) -> Result<()> {
        let mut write = self.write::<Essentials>(by).await?;
        let all = contacts::list(&write).await?;
        let at = all.iter().position(|it| it.name.as_str() == name).unwrap_or(0);
        if let Some([before, it]) = at.checked_sub(1).and_then(|from| all.get(from..=at)) {
            contacts::save(&mut write, it, &it.moved_to(before)).await?;
            contacts::save(&mut write, before, &before.moved_to(it)).await?;
        }
        write.commit().await.map(|_| ())
    }
}
