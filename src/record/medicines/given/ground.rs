//! What a page of the log stands on: the medicines the reader may see, those of which a log is
//! kept, their steps.

use super::super::{
    model::Medicine,
    schedule::{model::Step, store as schedule},
    store as medicines,
};
use super::{
    day::{self, AsNeeded, Slot},
    keeping::logged,
    label::Taken,
    model::Given,
    store,
};
use crate::base::ids::MedicineId;
use crate::platform::{
    audit::Names,
    auth::{
        area::{Clinical, Log},
        grant::{Grant, Leave},
    },
    db::View,
    error::{Error, Result},
};
use time::{Date, Duration};

pub struct Ground {
    pub shown: Vec<Medicine>,
    pub logged: Vec<Medicine>,
    pub steps: Vec<Step>,
}

impl Ground {
    /// Who does not see the medicines does not see the log either.
    pub async fn read(view: &View<Log>) -> Result<Ground> {
        let clinical = view.area::<Clinical>().ok_or(Error::NotFound)?;
        let shown = medicines::list(&clinical).await?;
        let steps = schedule::list(&clinical).await?;
        let keeping = store::keeping(&clinical).await?;
        Ok(Ground { logged: logged(&shown, &keeping), shown, steps })
    }

    pub fn slots(&self, entries: &[Given], date: Date) -> Vec<Slot> {
        day::slots((&self.shown, &self.logged), &self.steps, entries, date)
    }

    pub fn as_needed(&self, entries: &[Given], date: Date) -> Vec<AsNeeded> {
        day::as_needed((&self.shown, &self.logged), &self.steps, entries, date)
    }

    /// A medicine of which a log is kept now.
    pub fn find(&self, id: MedicineId) -> Result<&Medicine> {
        self.logged.iter().find(|it| it.id == id).ok_or(Error::NotFound)
    }
}

/// What was given of a medicine around a day: enough to look 24 hours back and ahead.
pub async fn taken<L: Leave>(
    view: &View<Log>,
    grant: &Grant<L>,
    (medicine, date): (MedicineId, Date),
    names: &Names,
) -> Result<Vec<Taken>> {
    let days = (date - Duration::days(15), date + Duration::days(2));
    let entries = store::list(view, Some(medicine), days).await?;
    let taken = entries.iter().filter_map(|it| Taken::of(it, it.giver(names), grant.zone()));
    Ok(taken.collect())
}
