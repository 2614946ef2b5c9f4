//! The questions and the medicines that stand in the form of a note: what waits and what is taken,
//! and whatever else she has typed something at. What moved on since it was shown says so.

use super::fields;
use crate::{
    across::questions::occasion::{self, With},
    platform::{auth::area::Clinical, db::View, error::Result, web::typed::Typed},
    record::{
        medicines::{model::Medicine, store as medicines},
        questions::{
            model::Question,
            store::{self as questions, Wanted},
        },
        visits::store,
    },
};

pub struct QuestionRow {
    pub question: Question,
    /// How often it stood at a visit already.
    pub carried: usize,
    /// Whether it is another one than was shown when she typed.
    pub moved: bool,
}

impl QuestionRow {
    pub fn name(&self, part: &str) -> String {
        fields::question(self.question.id, part)
    }
}

pub struct MedicineRow {
    pub medicine: Medicine,
    pub moved: bool,
}

impl MedicineRow {
    pub fn name(&self, part: &str) -> String {
        fields::medicine(self.medicine.id, part)
    }

    /// Whether something is typed at it: then it stands open.
    pub fn is_open(&self, typed: &Typed) -> bool {
        self.moved || medicine_typed(&self.medicine, typed)
    }
}

/// Those that wait for whom the visit is with, in their order; all that wait, where that is not said.
pub async fn questions(
    view: &View<Clinical>,
    with: Option<&With>,
    typed: &Typed,
) -> Result<Vec<QuestionRow>> {
    let all = questions::list(view, &Wanted::default()).await?;
    let waiting = match with {
        Some(with) => occasion::waiting(view, with).await?,
        None => all.iter().filter(|it| it.waits()).cloned().collect(),
    };
    let carried = store::carried(view).await?;
    let beside = all.into_iter().filter(|it| question_typed(it, typed));
    let beside: Vec<_> = beside.filter(|it| !waiting.iter().any(|one| one.id == it.id)).collect();
    let row = |question: Question| QuestionRow {
        carried: carried.get(&question.id).copied().unwrap_or(0),
        moved: question_typed(&question, typed)
            && is_older(typed, &fields::question(question.id, "version"), question.version),
        question,
    };
    Ok(waiting.into_iter().chain(beside).map(row).collect())
}

fn question_typed(question: &Question, typed: &Typed) -> bool {
    let name = |part: &str| fields::question(question.id, part);
    let answer = name("answer");
    !typed.value(&answer).trim().is_empty() || typed.checked(&name("asked"))
}

/// Those that are taken or on hold.
pub async fn medicines(view: &View<Clinical>, typed: &Typed) -> Result<Vec<MedicineRow>> {
    let all = medicines::list(view).await?.into_iter();
    let all = all.filter(|it| it.is_current() || medicine_typed(it, typed));
    let row = |medicine: Medicine| MedicineRow {
        moved: medicine_typed(&medicine, typed)
            && is_older(typed, &fields::medicine(medicine.id, "version"), medicine.version),
        medicine,
    };
    Ok(all.map(row).collect())
}

fn medicine_typed(medicine: &Medicine, typed: &Typed) -> bool {
    let value = |part: &str| typed.value(&fields::medicine(medicine.id, part)).trim().to_owned();
    let chosen = !matches!(value("what").as_str(), "" | super::form::Becomes::NOTHING);
    let parts = ["why", "on", "resume", "strength", "dose", "times"];
    chosen || parts.into_iter().any(|part| !value(part).is_empty())
}

fn is_older(typed: &Typed, name: &str, version: i64) -> bool {
    let shown = typed.value(name);
    !shown.is_empty() && shown != version.to_string()
}
