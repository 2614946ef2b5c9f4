//! The block of the emergency sheet that says what is taken, and what the family's log of doses
//! says was entered last. A dose that is not entered is not known, and that is said.

use super::Stamps;
use crate::{
    base::{ids::MedicineId, text::Line, zone::Zone},
    platform::{
        audit::Names,
        auth::area::{self, Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::medicines::{
        given::{
            keeping::{LogKeeping, keeps},
            model::Given,
            store as given,
        },
        model::Medicine,
        turns::{model::Turn, standing},
    },
};
use serde::Serialize;
use std::collections::HashMap;

#[derive(Serialize)]
pub struct Medicines {
    pub stamp: Option<String>,
    /// Whether the family keeps a log of doses, and what was entered last.
    pub log: Option<String>,
    pub taking: Vec<MedicineItem>,
    pub held: Vec<MedicineItem>,
}

#[derive(Serialize)]
pub struct MedicineItem {
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub route: Option<Line>,
    pub dose: Option<Line>,
    pub times: Option<Line>,
    pub purpose: Option<Line>,
    pub as_needed: bool,
    pub limit: Option<Line>,
    pub supply: String,
    pub prescriber: Option<Line>,
    /// Where it differs from the block's.
    pub stamp: Option<String>,
    pub since: Option<String>,
    pub reason: Option<Line>,
    /// Its hold and what is planned, with who said so.
    pub turns: Option<String>,
    /// What was entered last, where doses are logged.
    pub logged: Option<String>,
}

impl Medicines {
    pub(super) fn of(all: &[Medicine], turns: &[Turn], stamps: &Stamps, log: &Log) -> Medicines {
        let current = all.iter().filter(|it| it.is_current());
        let block = stamps.block(current.map(Medicine::check));
        let item = |it: &Medicine| MedicineItem {
            name: it.name.clone(),
            strength: it.strength.clone(),
            form: it.form.clone(),
            route: it.route.clone(),
            dose: it.dose.clone(),
            times: it.times.clone(),
            purpose: it.purpose.clone(),
            as_needed: it.as_needed,
            limit: it.label_limit.clone(),
            supply: it.supply.to_string(),
            prescriber: it.prescriber.clone(),
            stamp: block.mark(stamps.of(it.check())),
            since: it.turned_on(),
            reason: it.status_reason.clone(),
            turns: standing::on_paper(it, turns),
            logged: log.of(it),
        };
        Medicines {
            stamp: block.stamp.clone(),
            log: log.sentence(all),
            taking: all.iter().filter(|it| it.is_taken()).map(item).collect(),
            held: all.iter().filter(|it| it.is_on_hold()).map(item).collect(),
        }
    }

    /// "7 medicines, 1 on hold": so that a lost page is noticed. The press counts the same.
    pub fn counted(&self) -> Option<String> {
        let (taking, held) = (self.taking.len(), self.held.len());
        let noun = if taking == 1 { "medicine" } else { "medicines" };
        (taking + held > 0).then(|| format!("{taking} {noun}, {held} on hold"))
    }
}

/// The family's log of doses, as far as a sheet tells it.
pub struct Log {
    keeping: Vec<LogKeeping>,
    /// The last entry of each medicine, in words, with the moment of its dose.
    last: HashMap<MedicineId, (crate::base::clock::Instant, String)>,
}

impl Log {
    pub(super) async fn read(view: &View<Essentials>, names: &Names, zone: &Zone) -> Result<Log> {
        let keeping = given::keeping(&view.for_sheet::<Clinical>()).await?;
        let entries = given::last_days(&view.for_sheet::<area::Log>()).await?;
        Ok(Log { keeping, last: last(&entries, names, zone) })
    }

    /// "last entered here Wed 25 Nov 2026, 8:10 am, Delia: 1 tablet given in the morning"
    fn of(&self, medicine: &Medicine) -> Option<String> {
        keeps(&self.keeping, medicine.id)?;
        Some(match self.last.get(&medicine.id) {
            Some((_, words)) => format!("Last entered here: {words}"),
            None => "No dose is entered here yet".into(),
        })
    }

    /// One line for the block; nothing, where there is no medicine to log.
    fn sentence(&self, all: &[Medicine]) -> Option<String> {
        let current: Vec<&Medicine> = all.iter().filter(|it| it.is_current()).collect();
        let logged: Vec<_> =
            current.iter().filter(|it| keeps(&self.keeping, it.id).is_some()).collect();
        if logged.is_empty() {
            return (!current.is_empty()).then(|| "Doses given are not logged.".into());
        }
        let last = logged.iter().filter_map(|it| Some((self.last.get(&it.id)?, &it.name)));
        let last = match last.max_by_key(|(last, _)| last.0) {
            Some(((_, words), name)) => format!("Last entered of all: {name}, {words}."),
            None => "None is entered yet.".into(),
        };
        let some = match (logged.len(), current.len()) {
            (some, all) if some == all => "Doses given are logged".to_owned(),
            (some, all) => {
                format!("Doses given are logged for {some} of {all}, not for the others")
            }
        };
        Some(format!("{some}; doses not entered here are not known. {last}"))
    }
}

fn last(
    entries: &[Given],
    names: &Names,
    zone: &Zone,
) -> HashMap<MedicineId, (crate::base::clock::Instant, String)> {
    let mut last = HashMap::new();
    for it in entries {
        let (moment, words) = (it.moment(zone), it.last_words(names, zone));
        let kept = last.entry(it.medicine_id).or_insert_with(|| (moment, words.clone()));
        if moment >= kept.0 {
            *kept = (moment, words);
        }
    }
    last
}
