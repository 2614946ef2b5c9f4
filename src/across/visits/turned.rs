//! What was said of the medicines at a visit, written as their own pages write it: the medicine and
//! the change of it, said by whom the visit was with. What is wrong is told at that medicine.

use super::{
    fields,
    form::{Becomes, Started, Turned},
};
use crate::{
    base::{ids::MedicineId, text::Line},
    platform::{
        auth::area::Clinical,
        db::Write,
        error::{Error, Result},
        web::form::FormErrors,
    },
    record::{
        medicines::{
            model::{Label, Medicine},
            store as medicines,
            turns::{
                form::{Start, Taken},
                keeping,
                model::{Said, Turn, What},
            },
        },
        visits::{
            model::{Item, Visit},
            store,
        },
    },
};
use time::Date;

/// A hold, a stop, or another way to take it. A medicine that moved on since it was shown is stale.
pub async fn turn(
    write: &mut Write<Clinical>,
    visit: &Visit,
    it: Turned,
    today: Date,
) -> Result<()> {
    let id = it.medicine;
    let before = medicines::find(write, id).await?.opened_at(it.version)?;
    let turn = written(write, visit, &before, it, today).await;
    let turn = turn.map_err(|e| at_medicine(e, id))?;
    store::add_item(write, &Item::medicine(visit, turn.id, id)).await
}

async fn written(
    write: &mut Write<Clinical>,
    visit: &Visit,
    before: &Medicine,
    it: Turned,
    today: Date,
) -> Result<Turn> {
    let on = it.on.unwrap_or(visit.held_on);
    let said = Said { on, by: visit.with_whom.clone(), reason: it.reason };
    let what = match it.becomes {
        Becomes::Held => What::Held,
        Becomes::Stopped => What::Stopped,
        Becomes::Changed => {
            // What is left empty stays as it is.
            let now = Taken::of(before.label());
            let taken = Taken {
                strength: it.strength.or(now.strength),
                dose: it.dose.or(now.dose),
                times: it.times.or(now.times),
                ..now
            };
            return keeping::change(write, before, (taken, said), today).await;
        }
    };
    if [&it.strength, &it.dose, &it.times].iter().any(|it| it.is_some()) {
        let says = "Strength, dose and times are for “taken differently”. Leave them empty, or choose that.";
        return Err(FormErrors::at("what", says).into());
    }
    let resume_on = it.resume_on.filter(|_| what == What::Held);
    if it.resume_on.is_some() && resume_on.is_none() {
        let says = "Only what is on hold has a day to resume.";
        return Err(FormErrors::at("resume_on", says).into());
    }
    let turn = Turn::new(before, what, said.sound(today)?, (write.member(), write.at()));
    keeping::turn(write, before, turn.resuming(resume_on, None)?, today).await
}

/// A new medicine, as its label or the clinician says.
pub async fn start(
    write: &mut Write<Clinical>,
    visit: &Visit,
    it: Started,
    today: Date,
) -> Result<()> {
    let at = it.at;
    let label = Label {
        name: it.name,
        strength: it.strength,
        form: it.form,
        dose: it.dose,
        route: None,
        times: it.times,
        purpose: it.purpose.clone(),
        prescriber: Some(visit.with_whom.clone()),
        started_on: Some(it.on.unwrap_or(visit.held_on)),
        as_needed: false,
        label_limit: None,
        supply: it.supply,
        source: Some(Line::from(format!("said by {}", visit.with_whom))),
    };
    let start = Start { by: visit.with_whom.clone(), reason: it.purpose, replaces: None };
    let turn = keeping::start(write, label, start, today).await;
    let turn = turn.map_err(|e| elsewhere(e, |_| fields::row("new", at, "on")))?;
    store::add_item(write, &Item::medicine(visit, turn.id, turn.medicine_id)).await
}

/// The fields of a medicine's own page have other names in the form of a note.
fn at_medicine(e: Error, id: MedicineId) -> Error {
    elsewhere(e, |field| {
        let part = match field {
            "on" => "on",
            "resume_on" => "resume",
            "dose" => "dose",
            _ => "what",
        };
        fields::medicine(id, part)
    })
}

fn elsewhere(e: Error, name: impl Fn(&str) -> String) -> Error {
    match e {
        Error::Invalid(errors) => match errors.iter().next() {
            Some(first) => FormErrors::at(name(&first.field), first.says.clone()).into(),
            None => Error::Stale,
        },
        other => other,
    }
}
