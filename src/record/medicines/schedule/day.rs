//! A day and a week laid out: which medicine, how much, at which time.
//!
//! Only what stands in the schedule is laid out. What is on hold, what has no steps, and what is
//! as needed is listed beside it, so that nothing on the list is silently absent from the grid.

use super::super::model::Medicine;
use super::{directions::counted, model::Step, times::When};
use crate::base::{ids::MedicineId, quantity::Quantity};
use std::collections::BTreeMap;
use time::{Date, Duration};

/// What is due at one time of a day.
#[derive(Debug, PartialEq, Eq)]
pub struct Slot {
    /// "morning", "2:30 pm"
    pub name: String,
    /// "6–9 am", for the four standard times.
    pub window: Option<&'static str>,
    /// The minute of the day at which it begins: the order of a day.
    pub begins: u16,
    pub lines: Vec<Line>,
}

/// One medicine at one time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    pub medicine: MedicineId,
    pub title: String,
    /// "1 tablet"
    pub amount: String,
    pub count: Quantity,
    /// What is counted: tablet, drop, mL.
    pub unit: String,
}

/// A medicine that is not in the grid, and why.
#[derive(Debug, PartialEq, Eq)]
pub struct Beside {
    pub medicine: MedicineId,
    pub title: String,
    pub says: String,
}

#[derive(Debug, PartialEq, Eq)]
pub struct Day {
    pub date: Date,
    pub slots: Vec<Slot>,
}

/// The grid of one day.
pub fn day(medicines: &[Medicine], steps: &[Step], date: Date) -> Day {
    let mut slots: BTreeMap<(u16, String), Slot> = BTreeMap::new();
    for medicine in medicines.iter().filter(|it| it.is_taken()) {
        for step in of(steps, medicine) {
            for due in step.due(date) {
                let slot = slots.entry((due.when.begins(), due.when.name()));
                let slot = slot.or_insert_with(|| Slot::at(due.when));
                slot.lines.push(Line {
                    medicine: medicine.id,
                    title: medicine.title(),
                    amount: counted(due.amount, step.unit.as_str()),
                    count: due.amount,
                    unit: step.unit.to_string(),
                });
            }
        }
    }
    Day { date, slots: slots.into_values().collect() }
}

/// Seven days from one on.
pub fn week(medicines: &[Medicine], steps: &[Step], from: Date) -> Vec<Day> {
    (0..7).map(|it| day(medicines, steps, from + Duration::days(it))).collect()
}

impl Slot {
    fn at(when: When) -> Slot {
        Slot { name: when.title(), window: when.window(), begins: when.begins(), lines: Vec::new() }
    }
}

/// What is current and yet not in the grid of these days.
pub fn beside(medicines: &[Medicine], steps: &[Step], dates: &[Date]) -> Vec<Beside> {
    let current = medicines.iter().filter(|it| it.is_current());
    let beside = current.filter_map(|it| {
        let says = absent(it, &of(steps, it).collect::<Vec<_>>(), dates)?;
        Some(Beside { medicine: it.id, title: it.title(), says })
    });
    beside.collect()
}

fn absent(medicine: &Medicine, steps: &[&Step], dates: &[Date]) -> Option<String> {
    let covering: Vec<_> =
        steps.iter().filter(|step| dates.iter().any(|day| step.covers(*day))).collect();
    if medicine.is_on_hold() {
        let reason = medicine.status_reason.as_ref().map_or(String::new(), |it| format!(": {it}"));
        return Some(format!("on hold{reason}"));
    }
    if let Some(step) = covering.iter().find(|it| it.is_as_needed()) {
        return Some(step.directions());
    }
    if medicine.as_needed {
        return Some(format!("as needed: {}", medicine.directions()));
    }
    match (steps.is_empty(), covering.is_empty()) {
        (true, _) => Some(format!("not laid out yet. The label: {}", medicine.directions())),
        (false, true) => Some("no step of its schedule falls here".into()),
        _ => None,
    }
}

fn of<'a>(steps: &'a [Step], medicine: &Medicine) -> impl Iterator<Item = &'a Step> {
    let id = medicine.id;
    steps.iter().filter(move |it| it.medicine_id == id)
}

#[cfg(test)]
mod tests {
    use super::super::super::model::{Label, Supply};
    use super::super::{model::Rhythm, repeat::Weekdays, times::Times};
    use super::*;
    use crate::base::{ids::StepId, text::Line as Text};
    use time::macros::date;

    const MONDAY: Date = date!(2026 - 11 - 23);

    fn medicine(id: i64, name: &str, as_needed: bool) -> Medicine {
        let label = Label {
            name: Text::from(name.to_owned()),
            strength: None,
            form: None,
            dose: Some(Text::from("1 tablet".to_owned())),
            route: None,
            times: None,
            purpose: None,
            prescriber: None,
            started_on: None,
            as_needed,
            label_limit: None,
            supply: Supply::Prescription,
            source: None,
        };
        Medicine { id: id.into(), ..Medicine::new(1.into(), label) }
    }

    fn step(medicine: i64, rhythm: Rhythm, times: &str) -> Step {
        Step {
            id: StepId::default(),
            person_id: 1.into(),
            medicine_id: medicine.into(),
            from_on: date!(2026 - 11 - 01),
            until_on: None,
            rhythm,
            every: 1,
            weekdays: Weekdays::of(["sun"]),
            times: Times::from(times.to_owned()),
            unit: Text::from("tablet".to_owned()),
            least_hours: None,
            most_a_day: None,
            struck: false,
            version: 1,
        }
    }

    #[test]
    fn a_day_is_in_its_order_and_holds_what_falls_on_it() {
        let medicines = [medicine(1, "Warfarin", false), medicine(2, "Alendronate", false)];
        let steps =
            [step(1, Rhythm::Days, "07:15 0.5, evening 1"), step(2, Rhythm::Weekdays, "morning 1")];
        let said = |date| {
            let slots = day(&medicines, &steps, date).slots.into_iter();
            let each = slots.map(|it| {
                let lines = it.lines.iter().map(|it| format!("{} {}", it.amount, it.title));
                format!("{}: {}", it.name, lines.collect::<Vec<_>>().join(", "))
            });
            each.collect::<Vec<_>>().join("; ")
        };
        assert_eq!(said(MONDAY), "7:15 am: 0.5 tablet Warfarin; evening: 1 tablet Warfarin");
        let sunday = "morning: 1 tablet Alendronate; 7:15 am: 0.5 tablet Warfarin; evening: 1 tablet Warfarin";
        assert_eq!(said(date!(2026 - 11 - 29)), sunday);
        assert_eq!(week(&medicines, &steps, MONDAY).len(), 7);
    }

    #[test]
    fn nothing_current_is_silently_absent() {
        let held = Medicine {
            status: super::super::super::model::Status::OnHold,
            ..medicine(4, "Lisinopril", false)
        };
        let medicines = [
            medicine(1, "Warfarin", false),
            medicine(2, "Acetaminophen", true),
            medicine(3, "Latanoprost", false),
            held,
        ];
        let steps = [step(1, Rhythm::Days, "evening 1"), step(4, Rhythm::Days, "morning 1")];
        let beside = beside(&medicines, &steps, &[MONDAY]);
        let says: Vec<_> = beside.iter().map(|it| format!("{}: {}", it.title, it.says)).collect();
        assert_eq!(
            says,
            [
                "Acetaminophen: as needed: 1 tablet",
                "Latanoprost: not laid out yet. The label: 1 tablet",
                "Lisinopril: on hold",
            ]
        );
        // Held, it is not in the grid either.
        assert_eq!(day(&medicines, &steps, MONDAY).slots.len(), 1);
    }
}
