//! A bladder infection: five days of a medicine that is stopped when they are over, and a
//! condition that comes and goes.

use super::{Row, Telling, line, some};
use crate::{
    platform::{auth::area::Clinical, error::Result},
    record::{
        conditions::{
            model::{Condition, Entry},
            store as conditions,
            wish::WantsTold,
        },
        medicines::{model::Supply, turns::model::What},
    },
};
use time::Date;

const NAME: &str = "Bladder infection";

impl Telling<'_> {
    pub(super) async fn infection(&self) -> Result<()> {
        self.day(16, (17, 20));
        self.condition_begins("Ines", (NAME, "this week", "everyone")).await?;
        self.medicines_by("Ines", &[nitrofurantoin(self.date(16))]).await?;
        self.day(14, (9, 5));
        self.printed("Delia").await?;
        self.heart_asked().await?;
        self.heart_noted().await?;
        self.dizziness_noted().await?;
        self.heart_read().await?;
        self.day(11, (18, 10));
        let over = "the five days on the label are over";
        let said = (What::Stopped, "the label", over);
        self.turned("Ines", "Nitrofurantoin", said, |it| {
            it.stopped(self.date(11), line(over), self.date(11))
        })
        .await?;
        self.day(10, (16, 0));
        self.condition_over("Ines", NAME, "the nurse at Dr Oyelaran's, by phone").await
    }

    /// A condition that was told today: its name, since when, who may know.
    pub(super) async fn condition_begins(
        &self,
        by: &str,
        (name, since, who_may_know): (&str, &str, &str),
    ) -> Result<()> {
        let mut write = self.write::<Clinical>(by).await?;
        let doctor = "Dr Adaeze Oyelaran";
        let entry = Entry {
            name: line(name),
            since: some(since),
            followed_by: some(doctor),
            note: None,
            source: some("said at the visit, written down the same day"),
            who_may_know: some(who_may_know),
            wants_told: WantsTold::Everything,
            told_on: Some(self.zone.day(write.at())),
            told_by: some(doctor),
        };
        conditions::add(&mut write, &Condition::new(self.person, entry)).await?;
        write.commit().await.map(|_| ())
    }

    /// The one of this name that stands is over from today.
    pub(super) async fn condition_over(&self, by: &str, name: &str, said_by: &str) -> Result<()> {
        let mut write = self.write::<Clinical>(by).await?;
        let today = self.zone.day(write.at());
        let all = conditions::list(&write).await?;
        let standing = |it: &&Condition| it.is_standing() && it.name.as_str() == name;
        if let Some(before) = all.iter().find(standing) {
            let after = before.over(today, line(said_by), today)?;
            conditions::save(&mut write, before, &after).await?;
        }
        write.commit().await.map(|_| ())
    }
}

fn nitrofurantoin(since: Date) -> Row {
    let (dose, times) = ("1 capsule", "in the morning and at bedtime");
    let supply = Supply::Prescription;
    ("Nitrofurantoin", "100 mg", "capsule", dose, times, "bladder infection", "", supply, since)
}
