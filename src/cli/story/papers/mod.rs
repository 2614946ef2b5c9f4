//! A drawer is emptied: Ines photographs what was in it, Bram and she file it in the evenings, and some of
//! it still waits.

mod leaf;

use super::{Telling, line, some};
use crate::{
    base::ids::PaperId,
    platform::{
        auth::area::{Directives, Papers},
        error::{Error, Result},
    },
    record::{
        directives::{kind::Kind as Power, store as directives},
        papers::{
            kind::{Kind, Original},
            model::{Filing, Paper},
            page::PaperPage,
            page_store as pages, store,
        },
    },
};
use time::macros::date;

impl Telling<'_> {
    /// Seven files at once; the card has two sides.
    pub(super) async fn drawer_emptied(&self) -> Result<()> {
        self.day(5, (21, 20));
        let summary = leaf::pdf(&[
            "Lakeshore Hospital, Duluth",
            "Summary of a stay, October 2005",
            "Left hip replaced.",
        ]);
        let power = leaf::pdf(&[
            "Power of attorney for health care",
            "Ottoline Varga names Ines as agent.",
        ]);
        let placard = leaf::pdf(&["Parking placard", "Made out to Ottoline Varga"]);
        let bill = leaf::pdf(&["Superior Street Pharmacy", "Paid (in full): 14.60 dollars"]);
        for (name, bytes) in [
            ("card-front.png", leaf::picture(&[60, 85, 40, 0, 70])),
            ("card-back.png", leaf::picture(&[90, 90, 90, 75])),
            ("scan-0001.pdf", summary),
            ("scan-0002.pdf", power),
            ("scan-0003.pdf", placard),
            ("scan-0004.pdf", bill),
            ("letter.png", leaf::picture(&[50, 0, 95, 90, 95, 60, 0, 95, 80])),
        ] {
            self.put_in("Ines", name, &bytes).await?;
        }
        self.day(5, (21, 40));
        let card = self.in_tray("card-front.png").await?;
        self.joined("Ines", card, "card-back.png").await?;
        let card = Filing {
            original: Some(Original::Person),
            ..named(Kind::InsuranceCard, "Medicare card, both sides")
        };
        self.filed(
            "Ines",
            "card-front.png",
            Filing { original_where: some("the brown purse"), ..card },
        )
        .await?;
        let power = Filing {
            about: self.power_of_attorney().await?,
            dated_on: Some(date!(2022 - 04 - 12)),
            original: Some(Original::Lawyer),
            ..named(Kind::Directive, "Power of attorney for health care")
        };
        self.filed("Ines", "scan-0002.pdf", power).await
    }

    /// The directive whose scan is among them.
    async fn power_of_attorney(&self) -> Result<Option<String>> {
        let write = self.write::<Directives>("Ines").await?;
        let mut all = directives::list(&write).await?.into_iter();
        let found = all.find(|it| it.kind == Power::HealthPower && it.is_in_force());
        Ok(found.map(|it| format!("directive/{}", it.id)))
    }

    pub(super) async fn drawer_filed(&self) -> Result<()> {
        self.day(4, (20, 10));
        let summary = Filing {
            dated_on: Some(date!(2005 - 10 - 21)),
            from_name: some("Lakeshore Hospital"),
            original: Some(Original::Home),
            original_where: some("the blue folder on the shelf"),
            ..named(Kind::Discharge, "Hip operation, summary of the stay")
        };
        self.filed("Bram", "scan-0001.pdf", summary).await?;
        let placard = Filing {
            original: Some(Original::Elsewhere),
            original_where: some("in Ines’s car, behind the mirror"),
            expires_on: Some(self.date(-12)),
            ..named(Kind::IdentityCard, "Parking placard")
        };
        self.filed("Bram", "scan-0003.pdf", placard).await
    }

    async fn put_in(&self, who: &str, name: &str, bytes: &[u8]) -> Result<()> {
        let trouble = |e: std::io::Error| Error::Internal(e.into());
        let mut arriving = self.files.arrive().await.map_err(trouble)?;
        arriving.push(bytes).await.map_err(trouble)?;
        let arrival = arriving.end().await.map_err(trouble)?;
        let arrival = arrival.map_err(|e| Error::Internal(e.says().into()))?;
        self.files.settle(&arrival).await?;
        let mut write = self.write::<Papers>(who).await?;
        let by = (write.member(), write.at());
        let id = store::add(&mut write, &Paper::arrived(self.person, some(name), by)).await?;
        pages::add(&mut write, &PaperPage::arrived(self.person, id, &arrival)).await?;
        write.commit().await.map(|_| ())
    }

    async fn in_tray(&self, name: &str) -> Result<PaperId> {
        let write = self.write::<Papers>("Ines").await?;
        let mut waiting = store::waiting(&write).await?;
        waiting.retain(|it| it.sent_as.as_ref().is_some_and(|it| it.as_str() == name));
        waiting.pop().map(|it| it.id).ok_or(Error::NotFound)
    }

    async fn joined(&self, who: &str, to: PaperId, name: &str) -> Result<()> {
        let from = self.in_tray(name).await?;
        let mut write = self.write::<Papers>(who).await?;
        let from = store::find(&write, from).await?;
        for page in pages::of(&write, &from).await? {
            pages::save(&mut write, &page, &page.at(to, 2)).await?;
        }
        store::save(&mut write, &from, &from.joined(to)).await?;
        write.commit().await.map(|_| ())
    }

    async fn filed(&self, who: &str, name: &str, filing: Filing) -> Result<()> {
        let id = self.in_tray(name).await?;
        let mut write = self.write::<Papers>(who).await?;
        let before = store::find(&write, id).await?;
        let by = (write.member(), write.at());
        let after = before.filed(filing, by, self.zone.day(by.1))?;
        store::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}

fn named(kind: Kind, title: &str) -> Filing {
    Filing {
        about: None,
        kind,
        title: line(title),
        dated_on: None,
        contact_id: None,
        from_name: None,
        original: None,
        original_where: None,
        stewards_only: false,
        expires_on: None,
        note: None,
    }
}
