//! What was fetched from the pharmacy and counted in the month, so that it can be reckoned how
//! long it lasts.

use super::{Telling, some};
use crate::{
    base::{
        ids::{CountId, FillId},
        quantity::Quantity,
    },
    platform::{auth::area::Clinical, error::Result},
    record::medicines::{
        model::Medicine,
        stock::{
            Amount,
            model::{Class, Count, Fill},
            store as stock,
        },
        store as medicines,
    },
};

/// Medicine, so many days ago, thousandths, of what, the label's days, refills left.
type Fetched = (&'static str, i64, i64, &'static str, Option<i64>, i64);

impl Telling<'_> {
    /// Ines sits down with the bottles and the receipts.
    pub(super) async fn supply_begins(&self) -> Result<()> {
        self.day(26, (20, 40));
        for it in [
            ("Warfarin", 57, 30_000, "tablet", Some(30), 2),
            ("Warfarin", 26, 30_000, "tablet", Some(30), 1),
            ("Furosemide", 27, 90_000, "tablet", None, 3),
            ("Metoprolol succinate", 40, 90_000, "tablet", Some(90), 0),
            ("Alendronate", 26, 4_000, "tablet", Some(28), 5),
        ] {
            self.fetched("Ines", it).await?;
        }
        for (name, count) in [("Warfarin", 31), ("Metoprolol succinate", 76)] {
            self.counted("Ines", name, count).await?;
        }
        Ok(())
    }

    pub(super) async fn drops_fetched(&self) -> Result<()> {
        self.day(9, (9, 25));
        self.fetched("Ines", ("Latanoprost", 9, 2_500, "mL", Some(25), 2)).await
    }

    /// Found in the bathroom and in the handbag.
    pub(super) async fn acetaminophen_counted(&self) -> Result<()> {
        self.day(9, (17, 15));
        self.counted("Ines", "Acetaminophen", 64).await
    }

    pub(super) async fn new_bottle_fetched(&self) -> Result<()> {
        self.day(8, (14, 40));
        self.fetched("Ines", ("Levothyroxine", 8, 30_000, "tablet", Some(30), 5)).await
    }

    async fn counted(&self, who: &str, name: &str, count: i64) -> Result<()> {
        let mut write = self.write::<Clinical>(who).await?;
        let Some(medicine) = named(&medicines::list(&write).await?, name) else { return Ok(()) };
        let count = Count {
            id: CountId::default(),
            person_id: self.person,
            medicine_id: medicine.id,
            counted_on: self.zone.day(write.at()),
            amount: Amount::of(Quantity::whole(count), "tablet"),
            entered_by: write.member(),
            entered_at: write.at(),
            struck: false,
            version: 1,
        };
        stock::add_count(&mut write, &count).await?;
        write.commit().await.map(|_| ())
    }

    async fn fetched(&self, who: &str, it: Fetched) -> Result<()> {
        let (name, ago, thousandths, unit, label_days, refills_left) = it;
        let mut write = self.write::<Clinical>(who).await?;
        let Some(medicine) = named(&medicines::list(&write).await?, name) else { return Ok(()) };
        let fill = Fill {
            id: FillId::default(),
            person_id: self.person,
            medicine_id: medicine.id,
            filled_on: self.date(ago),
            amount: Amount::of(Quantity::thousandths(thousandths), unit),
            label_days,
            pharmacy: some("Harbor Street Pharmacy"),
            pharmacy_days: None,
            refills_left: Some(refills_left),
            written_on: None,
            expires_on: None,
            class: Class::NoneKnown,
            earliest_refill: None,
            entered_by: write.member(),
            entered_at: write.at(),
            struck: false,
            version: 1,
        };
        stock::add_fill(&mut write, &fill).await?;
        write.commit().await.map(|_| ())
    }
}

/// The last one of this name, as in the other themes.
fn named(all: &[Medicine], name: &str) -> Option<Medicine> {
    all.iter().filter(|it| it.name.as_str() == name).max_by_key(|it| it.id).cloned()
}
