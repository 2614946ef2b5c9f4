//! Medicines that come and go: each begins, is made stronger or weaker, is held and taken again,
//! and is stopped. New bottles of what is taken are written down as they come.

use super::{Week, names::COURSES};
use crate::{
    base::day,
    cli::story::{line, some, weeks::unchecked},
    platform::{auth::area::Clinical, error::Result},
    record::medicines::{
        model::{Medicine, Supply},
        store,
        turns::model::What,
    },
};

/// A course begins once in so many weeks.
const EVERY: i64 = 10;
/// Bottles picked up in a week.
const BOTTLES: usize = 6;

impl Week<'_> {
    /// What this week brings each course that is under way.
    pub(super) async fn courses(&mut self) -> Result<()> {
        let first = (self.number / EVERY - 6).max(0);
        for nth in first..=self.number / EVERY {
            let length = COURSES.len() as i64;
            let course = &COURSES[(nth % length) as usize];
            let (name, age) = (course.name, self.number - nth * EVERY);
            let today = self.it.date(self.ago - 1);
            if age == 0 {
                self.begins((nth % length) as usize).await?;
            } else if age == course.weeks {
                let said = (What::Stopped, "Dr Adaeze Oyelaran at the visit", "no longer needed");
                self.it
                    .turned("Ines", name, said, |it| it.stopped(today, line(said.2), today))
                    .await?;
            } else if age == course.weeks / 2 && course.strength.0 != course.strength.1 {
                let said = (What::Changed, "Dr Adaeze Oyelaran by phone", "it did too little");
                self.it
                    .turned("Bram", name, said, |it| {
                        Ok(Medicine { strength: some(course.strength.1), ..unchecked(it) })
                    })
                    .await?;
            } else if age == course.weeks / 3 && course.weeks > 20 {
                let said = (What::Held, "the pharmacist", "a stomach upset");
                self.it
                    .turned("Juno", name, said, |it| it.held(today, line(said.2), today))
                    .await?;
            } else if age == course.weeks / 3 + 1 && course.weeks > 20 {
                let said = (What::Resumed, "the pharmacist", "the stomach is well again");
                self.it.turned("Juno", name, said, |it| it.resumed(today, today)).await?;
            }
        }
        Ok(())
    }

    async fn begins(&mut self, at: usize) -> Result<()> {
        let it = &COURSES[at];
        // As the label has it; made up, like everything here.
        let dose = match it.form {
            "eye drops" => "1 drop in each eye",
            "cream" | "gel" | "ointment" => "a thin layer",
            "inhaler" | "nasal spray" => "2 puffs",
            "powder" => "1 capful in water",
            "patch" => "1 patch",
            "capsule" | "extended-release capsule" => "1 capsule",
            _ => "1 tablet",
        };
        let since = self.it.date(self.ago - 1);
        let row =
            (it.name, it.strength.0, it.form, dose, it.times, it.purpose, "", it.supply, since);
        self.it.medicines_by("Ines", &[row]).await
    }

    /// New bottles from the pharmacy: what is read off them is the new source.
    pub(super) async fn new_bottles(&mut self) -> Result<()> {
        let mut write = self.it.write::<Clinical>("Ines").await?;
        let mut taken = store::list(&write).await?;
        taken.retain(|it| it.is_taken() && it.supply == Supply::Prescription);
        let today = day::words(self.it.date(self.ago - 4));
        let source = some(&format!("read off the bottle of {today}"));
        let from = self.dice.below(taken.len());
        for it in taken.iter().cycle().skip(from).take(BOTTLES.min(taken.len())) {
            let after = Medicine { source: source.clone(), ..unchecked(it) };
            store::save(&mut write, it, &after).await?;
        }
        write.commit().await.map(|_| ())
    }
}
