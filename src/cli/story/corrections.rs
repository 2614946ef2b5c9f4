//! What was found and put right in the first weeks: a year, a medicine entered twice, a purpose
//! that was missing, the house where the key is.

use super::{MEDICINES, Telling, line, some, weeks::unchecked};
use crate::{
    platform::{auth::area::Essentials, error::Result},
    record::{
        allergies::{model::Allergy, store as allergies},
        medicines::model::Medicine,
        people::{model::Person, store as people},
    },
};

impl Telling<'_> {
    pub(super) async fn corrections(&self) -> Result<()> {
        self.day(25, (12, 30));
        self.printed("Delia").await?;
        self.day(25, (20, 30));
        self.codeine_remembered().await?;
        self.day(24, (10, 15));
        self.check_list("Juno", "the pharmacy's list").await?;
        self.day(23, (18, 5));
        self.medicines_by("Bram", &MEDICINES[6..7]).await?;
        self.day(22, (9, 40));
        let twice = "entered twice: the box in the bathroom is the same";
        let today = self.date(22);
        self.change("Ines", "Acetaminophen", |it| Ok(it.struck(line(twice), today))).await?;
        self.day(21, (19, 15));
        self.change("Juno", "Vitamin D3", |it| {
            let source = some("asked the nurse at Dr Oyelaran's");
            Ok(Medicine { purpose: some("bones"), source, ..unchecked(it) })
        })
        .await?;
        self.day(20, (21, 10));
        self.key_at_another_house().await
    }

    async fn codeine_remembered(&self) -> Result<()> {
        let mut write = self.write::<Essentials>("Ines").await?;
        let all = allergies::list(&write).await?;
        if let Some(before) = all.iter().find(|it| it.substance.as_str() == "Codeine") {
            let source = some("Ottoline remembers it herself");
            let (since, checked_at, checked_by) = (some("2003"), None, None);
            let checked_against = None;
            let after = Allergy {
                since,
                source,
                checked_at,
                checked_by,
                checked_against,
                ..before.clone()
            };
            allergies::save(&mut write, before, &after).await?;
        }
        write.commit().await.map(|_| ())
    }

    async fn key_at_another_house(&self) -> Result<()> {
        let mut write = self.write::<Essentials>("Bram").await?;
        let before = people::find(&write).await?;
        let address = some("114 Old Lock Street, Duluth, Minnesota; key with the neighbor at 118");
        let after = before.edited(Person { address, ..before.clone() });
        people::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}
