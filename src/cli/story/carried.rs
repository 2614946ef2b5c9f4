//! What each carries in the month: hours, a night, errands, a long drive; one entry for Emeric, who
//! does not sign in.

use super::{Telling, line, some};
use crate::{
    family::carried::{
        model::{Carried, Entry, Kind},
        store,
    },
    platform::{auth::area::Tasks, error::Result},
};

/// Who, what, so many days ago, minutes, miles, in a few words, for whom.
type Row = (&'static str, Kind, i64, i64, i64, &'static str, &'static str);

impl Telling<'_> {
    /// In the evening after the calls each writes down what the week was.
    pub(super) async fn week_carried(&self) -> Result<()> {
        self.day(6, (20, 35));
        self.carried(&[
            ("Ines", Kind::Hours, 8, 210, 0, "the visit, and the pharmacy after it", ""),
            ("Ines", Kind::Travel, 8, 40, 22, "", ""),
            ("Ines", Kind::Errand, 6, 0, 0, "the prescriptions", ""),
            ("Ines", Kind::Night, 9, 0, 0, "up with her twice", "Emeric"),
        ])
        .await?;
        self.day(6, (20, 50));
        self.carried(&[(
            "Bram",
            Kind::Hours,
            7,
            75,
            0,
            "the clinic's letters, scanned and named",
            "",
        )])
        .await
    }

    pub(super) async fn last_days_carried(&self) -> Result<()> {
        self.day(1, (20, 58));
        self.carried(&[
            ("Juno", Kind::Hours, 3, 120, 0, "read all that changed, and rang everyone", ""),
            ("Delia", Kind::Hours, 1, 180, 0, "breakfast, the walk, the linen", ""),
        ])
        .await
    }

    async fn carried(&self, rows: &[Row]) -> Result<()> {
        for (who, kind, ago, minutes, miles, words, name) in rows {
            let mut write = self.write::<Tasks>(who).await?;
            let by = (write.member(), write.at());
            let entry = Entry {
                name: (!name.is_empty()).then(|| line(name)),
                kind: *kind,
                on: self.date(*ago),
                minutes: kind.is_timed().then_some(*minutes),
                miles: Some(*miles).filter(|it| *it > 0),
                words: some(words),
            };
            let new = Carried::new(self.person, entry, by, self.date(0))?;
            store::add(&mut write, &new).await?;
            write.commit().await?;
        }
        Ok(())
    }
}
