//! The cards and covers that Ines and Ottoline photograph at the kitchen table, and eye drops that are
//! refused at the counter. Names and numbers are invented; a Medicare number never begins with a zero.

use super::{Telling, line, phone, some};
use crate::{
    base::{
        ids::{CoverId, RefusalId},
        picture::Picture,
        text::Note,
        time_of_day::TimeOfDay,
    },
    platform::{
        auth::area::{Clinical, Papers},
        error::{Error, Result},
    },
    record::{
        coverage::{
            cards::{
                model::{Card, Named, Sides, Sort},
                store as cards,
            },
            kind::Kind,
            model::{Cover, Numbers, Terms},
            refusals::{
                calls::{Call, Told},
                model::{Refusal, Said},
                mover::Mover,
                store as refusals,
            },
            store as covers,
        },
        medicines::store as medicines,
    },
};
use time::{Date, Duration, Month, macros::time};

/// The front and the back of each card.
fn pictures() -> [Vec<u8>; 2] {
    let blank = || Picture::plain((856, 540), [246, 243, 234]);
    let stripe = |it: Picture, top| it.with((60, top), (420, 22), [90, 90, 96]);
    let front = blank().with((0, 0), (856, 120), [58, 94, 116]).with(
        (640, 300),
        (150, 180),
        [200, 206, 210],
    );
    let back = blank().with((0, 60), (856, 90), [40, 40, 44]);
    let lines = |it| [220, 280, 340, 400].into_iter().fold(it, stripe);
    [lines(front).png(), lines(back).png()]
}

impl Telling<'_> {
    pub(super) async fn cards_photographed(&self) -> Result<()> {
        self.day(5, (21, 45));
        let medicare = Terms {
            phone: Some(phone("218-555-0191")),
            ..terms("Medicare", "", Kind::OriginalMedicare)
        };
        let number = Numbers { member_number: some("0AA0-AA0-AA00"), ..Numbers::default() };
        let medicare = self.covered(medicare, number).await?;
        let this_year = self.date(5).year();
        let drugs = Terms {
            phone: Some(phone("218-555-0192")),
            hours: some("every day from 8 to 8"),
            talks: some("Ines"),
            talks_until: Date::from_calendar_date(this_year, Month::December, 31).ok(),
            ..terms("Brindlewood Mutual", "Harbor Drug Plan", Kind::DrugPlan)
        };
        let numbers = Numbers {
            member_number: some("BW 7710 0042 19"),
            group_number: None,
            rx_bin: some("000042"),
            rx_pcn: some("BRNDL"),
            rx_group: some("HDP7"),
        };
        let drugs = self.covered(drugs, numbers).await?;
        let sides = self.sides().await?;
        self.photographed(&sides, ("Medicare", Some(medicare), Sort::Insurance)).await?;
        self.photographed(&sides, ("Harbor Drug Plan", Some(drugs), Sort::Insurance)).await?;
        self.photographed(&sides, ("State identity card", None, Sort::Identity)).await
    }

    /// The pictures, kept among the house's files.
    async fn sides(&self) -> Result<Sides> {
        let mut sums = Vec::new();
        for picture in pictures() {
            let kept = self.files.keep(picture.into()).await?;
            sums.push(kept.map_err(|unfit| Error::Internal(unfit.says().into()))?);
        }
        let back = sums.pop();
        Ok(Sides { front: sums.pop().ok_or(Error::NotFound)?, back })
    }

    async fn covered(&self, terms: Terms, numbers: Numbers) -> Result<CoverId> {
        let mut write = self.write::<Papers>("Ines").await?;
        let id = covers::add(&mut write, &Cover::new(self.person, terms, numbers)?).await?;
        write.commit().await.map(|_| id)
    }

    async fn photographed(
        &self,
        sides: &Sides,
        (title, cover_id, kind): (&str, Option<CoverId>, Sort),
    ) -> Result<()> {
        let mut write = self.write::<Papers>("Ines").await?;
        let expires_on = match kind {
            Sort::Identity => Some(self.date(5) + Duration::days(900)),
            Sort::Insurance => None,
        };
        let named = Named { title: line(title), kind, cover_id, expires_on };
        let by = (write.member(), self.zone.day(write.at()));
        let new = Card::new(self.person, named, sides.clone(), by)?;
        cards::add(&mut write, &new).await?;
        write.commit().await.map(|_| ())
    }

    /// Juno phones the plan from afar; the prescriber's office has sent its statement.
    pub(super) async fn drops_refused(&self) -> Result<()> {
        self.day(1, (14, 20));
        let Some(refused) = self.refused().await? else { return Ok(()) };
        self.day(1, (15, 45));
        let mut write = self.write::<Papers>("Juno").await?;
        let told = Told {
            on: self.zone.day(write.at()),
            time: Some(TimeOfDay::of(time!(15:30))),
            with_whom: line("Mr Aldous at Harbor Drug Plan"),
            said: Note::from("They have the statement of Dr Oyelaran’s office since 3:10 pm. The answer comes in writing.".to_owned()),
        };
        let by = (write.member(), write.at(), told.on);
        refusals::add_call(&mut write, &Call::new(self.person, refused, told, by)?).await?;
        let before = refusals::find(&write, refused).await?;
        let on = self.date(1);
        let at = self.zone.instant(on, time!(15:10)).min(write.at());
        let after = before.stated((at, on), false, write.at())?;
        refusals::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }

    async fn refused(&self) -> Result<Option<RefusalId>> {
        let clinical = self.write::<Clinical>("Ines").await?;
        let all = medicines::list(&clinical).await?;
        let Some(drops) = all.iter().find(|it| it.name.as_str() == "Latanoprost") else {
            return Ok(None);
        };
        let mut write = clinical.area::<Papers>()?;
        let covers = covers::list(&write).await?;
        let said = Said {
            medicine_id: drops.id,
            cover_id: covers.iter().find(|it| it.kind == Kind::DrugPlan).map(|it| it.id),
            refused_on: self.zone.day(write.at()),
            pharmacy: some("Harbor Street Pharmacy"),
            words: Note::from("Quantity above the plan’s limit.".to_owned()),
            code: some("76"),
        };
        let by = (write.member(), write.at(), said.refused_on);
        let new = Refusal::new(self.person, said, Mover::Prescriber, by)?;
        let id = refusals::add(&mut write, &new).await?;
        write.commit().await.map(|_| Some(id))
    }
}

fn terms(payer: &str, plan: &str, kind: Kind) -> Terms {
    Terms {
        payer: line(payer),
        plan: some(plan),
        kind,
        calendar_year: false,
        phone: None,
        hours: None,
        talks: None,
        talks_until: None,
        from_on: None,
        until_on: None,
    }
}
