//! The conditions of the invented family's mother, her hip, and what her doctor said when Ines
//! asked.

use super::{Telling, line, some};
use crate::{
    base::{check::Check, text::Note},
    platform::{auth::area::Clinical, error::Result},
    record::{
        conditions::{
            model::{Condition, Entry},
            store as conditions,
            wish::WantsTold,
        },
        operations::{self, model::Operation, store as operations_store},
        statements::{
            model::{Question, Said},
            store as statements,
        },
    },
};
use time::{Date, macros::date};

/// Name, since when, who may know, what she wants to be told, when she was told.
type Row = (&'static str, &'static str, &'static str, WantsTold, Date);

#[rustfmt::skip]
const CONDITIONS: [Row; 3] = [
    ("Atrial fibrillation", "2004", "everyone", WantsTold::Everything, date!(2004 - 04 - 02)),
    ("Hypothyroidism", "about 2003", "everyone", WantsTold::Everything, date!(2003 - 10 - 14)),
    ("Osteoporosis", "2005, after a fall", "not the neighbors", WantsTold::Outline, date!(2005 - 06 - 21)),
];

impl Telling<'_> {
    pub(super) async fn conditions(&self) -> Result<()> {
        let doctor = "Dr Adaeze Oyelaran";
        let mut write = self.write::<Clinical>("Ines").await?;
        for (name, since, who_may_know, wants_told, told_on) in CONDITIONS {
            let entry = Entry {
                name: line(name),
                since: some(since),
                followed_by: some(doctor),
                note: None,
                source: some("read off the summary of the last visit"),
                who_may_know: some(who_may_know),
                wants_told,
                told_on: Some(told_on),
                told_by: some(doctor),
            };
            conditions::add(&mut write, &Condition::new(self.person, entry)).await?;
        }
        let hip = operations::model::Entry {
            name: line("Left hip replaced"),
            done_when: some("October 2005"),
            done_where: some("Lakeshore Hospital, Duluth, Dr Petra Lindqvist"),
            implant: some("hip joint"),
            implant_card: some("H-2005-0042"),
            note: Some(Note::from("The card is in the drawer with the glasses.".to_owned())),
            source: some("read off the implant's card"),
        };
        operations_store::add(&mut write, &Operation::new(self.person, hip)).await?;
        write.commit().await.map(|_| ())
    }

    /// Ines phones the doctor, writes both answers down, and checks what she entered.
    pub(super) async fn answers(&self) -> Result<()> {
        let mut write = self.write::<Clinical>("Ines").await?;
        for (question, which) in
            [(Question::BloodThinner, "warfarin"), (Question::Implant, "hip joint")]
        {
            let today = self.date(29);
            let said = Said { which: some(which), by: line("Dr Oyelaran"), on: today };
            let before = statements::find(&write, question).await?;
            statements::save(&mut write, &before, &before.said(said, today)?).await?;
        }
        let (at, by, against) = (write.at(), write.member(), line("Dr Oyelaran by phone"));
        let check = Check { at, by, against };
        for it in conditions::list(&write).await? {
            conditions::save(&mut write, &it, &it.checked(check.clone())).await?;
        }
        for it in operations_store::list(&write).await? {
            operations_store::save(&mut write, &it, &it.checked(check.clone())).await?;
        }
        write.commit().await.map(|_| ())
    }
}
