//! What refusals and the calls about them are called: by the medicine that was refused.

use crate::{
    base::ids::{MedicineId, RefusalCallId, RefusalId},
    platform::{
        auth::area::{Clinical, Papers},
        db::View,
        error::Result,
    },
    record::{
        coverage::refusals::{model::Refusal, store},
        medicines::store as medicines,
    },
};
use std::collections::HashMap;

/// The medicines that the reader sees, by what each is called.
pub struct Medicines(HashMap<MedicineId, String>);

impl Medicines {
    /// None of them for who does not see the clinical area.
    pub async fn read(view: &View<Papers>) -> Result<Medicines> {
        let Some(view) = view.area::<Clinical>() else { return Ok(Medicines(HashMap::new())) };
        Ok(Medicines(medicines::titles(&view).await?.into_iter().collect()))
    }

    pub fn of(&self, it: &Refusal) -> &str {
        self.0.get(&it.medicine_id).map_or("a medicine", String::as_str)
    }

    /// "Latanoprost 0.005 %, refused Mon 23 Nov 2026"
    pub fn title(&self, it: &Refusal) -> String {
        it.title(self.of(it))
    }
}

pub async fn refusals(view: &View<Papers>) -> Result<Vec<(RefusalId, String)>> {
    let medicines = Medicines::read(view).await?;
    let all = store::list(view).await?.into_iter();
    Ok(all.map(|it| (it.id, medicines.title(&it))).collect())
}

/// A call is called as its refusal is.
pub async fn calls(view: &View<Papers>) -> Result<Vec<(RefusalCallId, String)>> {
    let named: HashMap<_, _> = refusals(view).await?.into_iter().collect();
    let all = store::calls(view).await?.into_iter();
    Ok(all.filter_map(|it| Some((it.id, named.get(&it.refusal_id)?.clone()))).collect())
}
