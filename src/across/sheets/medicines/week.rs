//! The facts of a week for the pill box: each time of the day with its medicines, seven days side
//! by side, a square to tick for each dose that goes in.
//!
//! A day on which a step begins is marked there, and told above the grid; what does not go into
//! the box stands beside it with why.

use super::{BesideItem, Ground, Head, counted};
use crate::{
    base::{day as calendar, ids::MedicineId},
    platform::{auth::area::Clinical, db::View, error::Result},
    record::medicines::schedule::{
        day::{self, Day},
        directions::plural,
        model::Step,
    },
};
use serde::Serialize;
use time::Date;

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: &'static str,
    pub person: Head,
    /// "Wed 25 Nov 2026 to Tue 1 Dec 2026"
    pub span: String,
    /// "Wed 25", seven of them.
    pub days: Vec<String>,
    pub sentence: String,
    pub stamp: Option<String>,
    pub changes: Vec<String>,
    pub slots: Vec<Slot>,
    pub beside: Vec<BesideItem>,
}

#[derive(Serialize)]
pub struct Slot {
    pub name: String,
    pub window: Option<&'static str>,
    pub rows: Vec<Row>,
}

/// One medicine at one time of the day, counted in one unit.
#[derive(Serialize)]
pub struct Row {
    pub title: String,
    /// "tablets"
    pub units: String,
    pub cells: Vec<Cell>,
    #[serde(skip)]
    medicine: MedicineId,
    #[serde(skip)]
    unit: String,
}

/// How much on one day; nothing, where nothing falls on it.
#[derive(Clone, Default, Serialize)]
pub struct Cell {
    pub count: Option<String>,
    /// Whether a step begins here: it may be another amount than the day before.
    pub begins: bool,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Clinical>, from: Date) -> Result<Facts> {
        let ground = Ground::read(view).await?;
        let days = day::week(&ground.medicines, &ground.steps, from);
        let dates: Vec<Date> = days.iter().map(|it| it.date).collect();
        let until = dates.last().copied().unwrap_or(from);
        let beside = day::beside(&ground.medicines, &ground.steps, &dates);
        let (first, last) = (calendar::short_words(from), calendar::short_words(until));
        Ok(Facts {
            paper: ground.paper,
            lang: "en",
            title: "A week for the pill box",
            span: format!("{first} to {last}"),
            days: dates.iter().map(short).collect(),
            sentence: counted(&ground.medicines),
            stamp: ground.stamp(),
            changes: ground.changes(from, until),
            slots: slots(&days, &ground.steps),
            beside: beside.into_iter().map(BesideItem::from).collect(),
            person: ground.head,
        })
    }
}

/// "Wed 25"
fn short(day: &Date) -> String {
    let weekday = day.weekday().to_string();
    format!("{} {}", &weekday[..3], day.day())
}

/// The days, each a list of times, turned into times, each a row for a medicine with seven days.
fn slots(days: &[Day], steps: &[Step]) -> Vec<Slot> {
    let mut order: Vec<(u16, Slot)> = Vec::new();
    for (place, day) in days.iter().enumerate() {
        for slot in &day.slots {
            let found = order.iter().position(|(_, it)| it.name == slot.name);
            let at = found.unwrap_or_else(|| {
                let new = Slot { name: slot.name.clone(), window: slot.window, rows: Vec::new() };
                order.push((slot.begins, new));
                order.len() - 1
            });
            for line in &slot.lines {
                let row = order[at].1.row(line);
                let begins = steps
                    .iter()
                    .any(|it| it.medicine_id == line.medicine && it.from_on == day.date);
                row.cells[place] = Cell { count: Some(line.count.to_string()), begins };
            }
        }
    }
    order.sort_by_key(|(begins, _)| *begins);
    order.into_iter().map(|(_, slot)| slot).collect()
}

impl Slot {
    /// The row of this medicine in this unit; it is begun where there is none yet.
    fn row(&mut self, line: &day::Line) -> &mut Row {
        let is_it = |it: &Row| it.medicine == line.medicine && it.unit == line.unit;
        let at = self.rows.iter().position(is_it).unwrap_or_else(|| {
            self.rows.push(Row {
                title: line.title.clone(),
                units: plural(&line.unit),
                cells: vec![Cell::default(); 7],
                medicine: line.medicine,
                unit: line.unit.clone(),
            });
            self.rows.len() - 1
        });
        &mut self.rows[at]
    }
}
