//! Ottoline's directives: a living will and a power of attorney for health care of 2022, an older power
//! that the new one superseded, and who has copies. Emeric was not asked yet. Every name is invented.

use super::{Telling, line, some};
use crate::{
    base::ids::{ContactId, DirectiveId},
    platform::{
        auth::area::{Directives, Essentials},
        error::Result,
    },
    record::{
        contacts::store as contacts,
        directives::{
            copies::{DirectiveCopy, Holder},
            copy_store,
            kind::{Kind, Starts, State},
            model::{Directive, Entry},
            store,
        },
    },
};
use time::{Date, macros::date};

const SIGNED: Date = date!(2022 - 04 - 12);

impl Telling<'_> {
    pub(super) async fn directives_written(&self) -> Result<()> {
        self.day(6, (10, 20));
        let emeric = self.contact_called("Emeric Varga").await?;
        let (ines, juno) =
            (self.contact_called("Ines Varga").await?, self.contact_called("Juno Varga").await?);
        let (doctor, lawyer) = (
            self.contact_called("Dr Adaeze Oyelaran").await?,
            self.contact_called("Tamsin Reyes").await?,
        );
        let older = Entry {
            named: [emeric, None, None],
            kept_where: some("gone, as far as Ottoline knows"),
            source: some("said by Ottoline"),
            ..entry(Kind::HealthPower, date!(2011 - 06 - 14))
        };
        let older = self.directive(older).await?;
        self.copy(older, Holder::Words(line("the hospital's records desk")), None).await?;
        self.copy(older, Holder::Words(line("Quarry Street Family Practice")), None).await?;
        let will = Entry {
            kept_where: some("the blue folder in the hall cupboard"),
            ..entry(Kind::LivingWill, SIGNED)
        };
        let will = self.directive(will).await?;
        let power = Entry {
            named: [ines, juno, None],
            starts: Starts::CannotDecide,
            kept_where: some("the safe of Reyes and Daughter"),
            holder_id: lawyer,
            notary: some("Tamsin Reyes"),
            ..entry(Kind::HealthPower, SIGNED)
        };
        let power = self.directive(power).await?;
        self.superseded(older, power).await?;
        for (of, whose) in [(will, doctor), (power, doctor), (power, ines)] {
            if let Some(whose) = whose {
                self.copy(of, Holder::Contact(whose), Some(date!(2022 - 04 - 19))).await?;
            }
        }
        Ok(())
    }

    async fn contact_called(&self, name: &str) -> Result<Option<ContactId>> {
        let view = self.write::<Essentials>("Ines").await?;
        let all = contacts::list(&view).await?;
        Ok(all.iter().find(|it| it.name.as_str() == name).map(|it| it.id))
    }

    async fn directive(&self, entry: Entry) -> Result<DirectiveId> {
        let mut write = self.write::<Directives>("Ines").await?;
        let new = Directive::new(self.person, entry, State::InForce);
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn superseded(&self, older: DirectiveId, by: DirectiveId) -> Result<()> {
        let mut write = self.write::<Directives>("Ines").await?;
        let before = store::find(&write, older).await?;
        store::save(&mut write, &before, &before.superseded(by)).await?;
        write.commit().await.map(|_| ())
    }

    async fn copy(&self, of: DirectiveId, holder: Holder, on: Option<Date>) -> Result<()> {
        let mut write = self.write::<Directives>("Ines").await?;
        let today = self.zone.day(write.at());
        let new = DirectiveCopy::new(self.person, of, holder, on, today)?;
        copy_store::add(&mut write, &new).await?;
        write.commit().await.map(|_| ())
    }
}

/// Of this kind, signed on this day, on the form of Minnesota.
fn entry(kind: Kind, signed_on: Date) -> Entry {
    Entry {
        kind,
        form_of: some("Minnesota"),
        signed_on: Some(signed_on),
        witnesses: some("Halvard Lind, Runa Holm"),
        notary: None,
        named: [None; 3],
        starts: Starts::NotSaid,
        starts_words: None,
        kept_where: None,
        holder_id: None,
        note: None,
        source: some("read off the original"),
    }
}
