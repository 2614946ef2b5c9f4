//! The visit at the doctor's: the list is checked and the sheet printed before it, and what was
//! said there is written down after it.

use super::{Telling, line, some, weeks::unchecked};
use crate::{
    platform::{auth::area::Clinical, error::Result},
    record::{
        conditions::store as conditions,
        contacts::model::Contact,
        medicines::{model::Medicine, turns::model::What},
    },
};

impl Telling<'_> {
    pub(super) async fn visit(&self) -> Result<()> {
        self.toast_noticed().await?;
        self.morning_dose(9).await?;
        self.drops_noted().await?;
        self.drops_fetched().await?;
        self.day(9, (17, 5));
        self.check_list("Ines", "the bottles on the table").await?;
        self.acetaminophen_counted().await?;
        self.morning_dose(8).await?;
        self.day(8, (8, 50));
        self.printed("Ines").await?;
        self.day(8, (14, 30));
        let source = || some("read off the new bottle");
        let said = (What::Changed, "Dr Adaeze Oyelaran at the visit", "the last thyroid test");
        self.turned("Ines", "Levothyroxine", said, |it| {
            Ok(Medicine { strength: some("88 mcg"), source: source(), ..unchecked(it) })
        })
        .await?;
        self.new_bottle_fetched().await?;
        self.day(8, (14, 45));
        let mut write = self.write::<Clinical>("Ines").await?;
        let against = line("the summary of the visit");
        let check = write.check(against);
        for it in conditions::list(&write).await?.iter().filter(|it| it.is_standing()) {
            conditions::save(&mut write, it, &it.checked(check.clone())).await?;
        }
        write.commit().await?;
        self.hip_hurts(8, 20).await?;
        self.day(8, (21, 35));
        let note = "the nurse's line answers sooner: press 2";
        self.change_contact("Bram", "Dr Adaeze Oyelaran", |it| Contact {
            note: some(note),
            ..it.clone()
        })
        .await
    }
}
