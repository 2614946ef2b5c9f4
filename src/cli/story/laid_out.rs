//! When and how much: Ines says the labels in numbers, so that the pill box can be filled.

use super::{Telling, line};
use crate::{
    base::{
        ids::{PersonId, StepId},
        quantity::Quantity,
    },
    platform::{auth::area::Clinical, error::Result},
    record::medicines::{
        model::Medicine,
        schedule::{
            model::{Rhythm, Step},
            repeat::Weekdays,
            store as schedule,
            times::Times,
        },
        store as medicines,
    },
};

/// Name, how often, on which days, at which times how much, counted in what.
const STEPS: [(&str, Rhythm, &str, &str, &str); 9] = [
    ("Warfarin", Rhythm::Days, "", "evening 1", "tablet"),
    ("Furosemide", Rhythm::Days, "", "morning 1", "tablet"),
    ("Metoprolol succinate", Rhythm::Days, "", "morning 1", "tablet"),
    ("Levothyroxine", Rhythm::Days, "", "06:30 1", "tablet"),
    ("Lisinopril", Rhythm::Days, "", "morning 1", "tablet"),
    ("Alendronate", Rhythm::Weekdays, "sun", "06:30 1", "tablet"),
    ("Acetaminophen", Rhythm::AsNeeded, "", "morning 1", "tablet"),
    ("Latanoprost", Rhythm::Days, "", "bedtime 2", "drop"),
    ("Vitamin D3", Rhythm::Days, "", "morning 1", "capsule"),
];

impl Telling<'_> {
    pub(super) async fn laid_out(&self) -> Result<()> {
        self.day(26, (20, 30));
        let mut write = self.write::<Clinical>("Ines").await?;
        let all = medicines::list(&write).await?;
        for (name, rhythm, days, times, unit) in STEPS {
            let those = all.iter().filter(|it| it.is_current() && it.name.as_str() == name);
            for medicine in those.take(1) {
                let step = self.step(medicine, rhythm, (days, times, unit));
                schedule::add(&mut write, &step).await?;
            }
        }
        write.commit().await.map(|_| ())
    }

    fn step(&self, of: &Medicine, rhythm: Rhythm, said: (&str, &str, &str)) -> Step {
        let (days, times, unit) = said;
        let as_needed = rhythm == Rhythm::AsNeeded;
        Step {
            id: StepId::default(),
            person_id: PersonId::default(),
            medicine_id: of.id,
            from_on: self.date(26),
            until_on: None,
            rhythm,
            every: 1,
            weekdays: Weekdays::of(days.split(' ')),
            times: Times::from(times.to_owned()),
            unit: line(unit),
            // The label of the demo says so; every label is read for itself.
            least_hours: as_needed.then(|| Quantity::whole(6)),
            most_a_day: as_needed.then(|| Quantity::whole(6)),
            struck: false,
            version: 1,
        }
    }
}
