//! The clinic's printout that came by mail after the visit: Bram takes it in, and it waits to be
//! settled. It is an older list than the record, as such lists often are.

use super::{Telling, line};
use crate::{
    across::reconciliation::{
        lines,
        model::{ListLine, ListState, Paper, SecondList},
        store,
    },
    base::ids::SecondListId,
    platform::{
        auth::area::Clinical,
        error::{Error, Result},
    },
};

const PRINTOUT: &str = "\
1. WARFARIN 2.5 mg tablet, 1 tablet in the evening
2. FUROSEMIDE 20 mg tablet, 1 tablet in the morning
3. METOPROLOL TARTRATE 50 mg tablet, twice daily
4. LEVOTHYROXINE 88 µg tablet, 1 tablet in the morning, before breakfast
5. STOP: LISINOPRIL 10 mg tablet
6. ALENDRONATE 70 mg tablet, 1 tablet on Sunday mornings
7. LATANOPROST 0.005% eye drops
8. SENNA 8.6 mg tablet, 1 tablet as needed";

impl Telling<'_> {
    pub(super) async fn printout_taken_in(&self) -> Result<()> {
        self.day(1, (18, 20));
        let mut write = self.write::<Clinical>("Bram").await?;
        let mut list = SecondList {
            id: SecondListId::default(),
            person_id: self.person,
            paper: Paper::Printout,
            dated_on: self.date(8),
            source: line("Dr Oyelaran's clinic, by mail"),
            born: None,
            entered_by: write.member(),
            entered_at: write.at(),
            state: ListState::Open,
            finished_on: None,
            struck_reason: None,
            version: 1,
        };
        list.id = store::add(&mut write, &list).await?;
        let read = lines::read(PRINTOUT).map_err(|it| Error::Internal(it.says.into()))?;
        for (words, understood) in read {
            store::add_line(&mut write, &ListLine::new(&list, words, understood)).await?;
        }
        write.commit().await.map(|_| ())
    }
}
