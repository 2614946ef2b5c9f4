//! One day of the log: what is due of the medicines of which a log is kept, each dose with its
//! entry, or with none. A dose that was entered and is not due (any more) stands there too.

use super::super::{
    model::Medicine,
    schedule::{directions::counted, model::Step, times::When},
};
use super::model::Given;
use crate::base::{ids::MedicineId, quantity::Quantity, text::Line};
use std::collections::BTreeMap;
use time::Date;

/// What is due at one time of the day.
#[derive(Debug)]
pub struct Slot {
    pub when: When,
    pub doses: Vec<Dose>,
}

/// One medicine at one time.
#[derive(Clone, Debug)]
pub struct Dose {
    pub medicine: MedicineId,
    pub title: String,
    pub amount: Quantity,
    pub unit: Line,
    pub entry: Option<Given>,
}

/// A medicine that is as needed, with what was entered on this day.
#[derive(Debug)]
pub struct AsNeeded {
    pub medicine: Medicine,
    /// The step of the schedule that says how much, and what the label says.
    pub step: Option<Step>,
    pub entries: Vec<Given>,
}

impl Dose {
    pub fn counted(&self) -> String {
        counted(self.amount, self.unit.as_str())
    }
}

impl Slot {
    pub fn open(&self) -> impl Iterator<Item = &Dose> {
        self.doses.iter().filter(|it| it.entry.is_none())
    }
}

/// The slots of a day. `shown` are those the reader may see; of `logged` a log is kept now.
pub fn slots(
    (shown, logged): (&[Medicine], &[Medicine]),
    steps: &[Step],
    entries: &[Given],
    date: Date,
) -> Vec<Slot> {
    let mut slots: BTreeMap<(u16, String), Slot> = BTreeMap::new();
    let mut add = |when: When, dose: Dose| {
        let slot = slots.entry((when.begins(), when.name()));
        slot.or_insert_with(|| Slot { when, doses: Vec::new() }).doses.push(dose);
    };
    let mut placed = Vec::new();
    for medicine in logged.iter().filter(|it| it.is_taken()) {
        for step in steps.iter().filter(|it| it.medicine_id == medicine.id) {
            for due in step.due(date) {
                let name = due.when.name();
                let fits = |it: &&Given| {
                    it.medicine_id == medicine.id && it.time_of_day.as_deref() == Some(&name)
                };
                let entry = entries.iter().find(fits).cloned();
                placed.extend(entry.as_ref().map(|it| it.id));
                let (title, unit) = (medicine.title(), step.unit.clone());
                let amount = due.amount;
                add(due.when, Dose { medicine: medicine.id, title, amount, unit, entry });
            }
        }
    }
    for entry in entries.iter().filter(|it| !placed.contains(&it.id)) {
        let medicine = shown.iter().find(|it| it.id == entry.medicine_id);
        if let (Some(medicine), Some(when)) = (medicine, entry.when()) {
            let (title, unit) = (medicine.title(), entry.unit.clone());
            let (amount, entry) = (entry.amount, Some(entry.clone()));
            add(when, Dose { medicine: medicine.id, title, amount, unit, entry });
        }
    }
    slots.into_values().collect()
}

/// What is as needed, or was entered at a time of its own.
pub fn as_needed(
    (shown, logged): (&[Medicine], &[Medicine]),
    steps: &[Step],
    entries: &[Given],
    date: Date,
) -> Vec<AsNeeded> {
    let each = shown.iter().filter_map(|medicine| {
        let step = needed_step(steps, medicine.id, date);
        let own = |it: &&Given| it.medicine_id == medicine.id && it.at.is_some();
        let mut entries: Vec<Given> = entries.iter().filter(own).cloned().collect();
        entries.sort_by_key(|it| it.at);
        let logged = medicine.is_taken() && logged.iter().any(|it| it.id == medicine.id);
        let offered = logged && (step.is_some() || medicine.as_needed);
        let step = step.cloned();
        (offered || !entries.is_empty()).then(|| AsNeeded {
            medicine: medicine.clone(),
            step,
            entries,
        })
    });
    each.collect()
}

/// The as-needed step of a medicine that covers a day.
pub fn needed_step(steps: &[Step], medicine: MedicineId, date: Date) -> Option<&Step> {
    let fits = |it: &&Step| it.medicine_id == medicine && it.is_as_needed() && it.covers(date);
    steps.iter().find(fits)
}
