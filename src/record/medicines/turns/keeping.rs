//! A turn and what it does to the medicine, in one write: for the medicine's own pages, and for what
//! was said at a visit. Whoever calls it has looked whether the medicine stands as it was opened.

use super::super::{
    model::{Label, Medicine},
    stock::{model::Pause, store as stock},
    store as medicines,
};
use super::{
    form::{Start, Taken},
    model::{Said, Turn, What},
    store,
};
use crate::base::text::Line;
use crate::platform::{auth::area::Clinical, db::Write, error::Result, web::form::FormErrors};
use time::Date;

/// A hold, a stop or a resuming: the medicine turned where its day has come, the days without noted,
/// the turn kept. Of a day to come it is a plan.
pub async fn turn(
    write: &mut Write<Clinical>,
    before: &Medicine,
    turn: Turn,
    today: Date,
) -> Result<Turn> {
    let planned = turn.from_on > today;
    // A planned turn is tried as of its day: one that could never be done is not kept.
    let after = turn.turned(before, turn.from_on.max(today))?;
    let mut turn = Turn { planned, ..turn };
    if !planned {
        apply(write, before, &after, turn.from_on).await?;
        turn.left_at = before.version + 1;
    }
    turn.id = store::add(write, &turn).await?;
    Ok(turn)
}

/// The days it was held or stopped use nothing up of what is in the house.
pub(super) async fn apply(
    write: &mut Write<Clinical>,
    before: &Medicine,
    after: &Medicine,
    on: Date,
) -> Result<()> {
    if let Some(pause) = Pause::between(before, after, on) {
        stock::add_pause(write, &pause).await?;
    }
    medicines::save(write, before, after).await
}

/// Taken differently from a day that has come.
pub async fn change(
    write: &mut Write<Clinical>,
    before: &Medicine,
    (taken, said): (Taken, Said),
    today: Date,
) -> Result<Turn> {
    let says = "This day has not come yet. Enter it on that day, or write it as a dated step.";
    let said = said.come(today, says)?;
    before.started_by(said.on)?;
    let source = Line::from(format!("said by {}", said.by));
    let label = taken.onto(before.label(), source).sound(today)?;
    let after = before.relabelled(label);
    if after.title() == before.title() && after.taken() == before.taken() {
        let says =
            "Nothing is taken differently by this. Change the strength, the dose or the time.";
        return Err(FormErrors::at("dose", says).into());
    }
    medicines::save(write, before, &after).await?;
    let turn = Turn::new(before, What::Changed, said, (write.member(), write.at()));
    let mut turn = Turn { left_at: before.version + 1, ..turn };
    turn.id = store::add(write, &turn).await?;
    Ok(turn)
}

/// One that is newly started: the medicine, and who said so.
pub async fn start(
    write: &mut Write<Clinical>,
    label: Label,
    start: Start,
    today: Date,
) -> Result<Turn> {
    if let Some(replaces) = start.replaces {
        let gone = || FormErrors::at("replaces", "This one is not on the list any more.");
        medicines::find(write, replaces).await.map_err(|_| gone())?;
    }
    let new = Medicine::new(write.person(), label.sound(today)?);
    let new = Medicine { id: medicines::add(write, &new).await?, ..new };
    let purpose = || new.purpose.clone().unwrap_or_else(|| Line::from("not said".to_owned()));
    let reason = start.reason.unwrap_or_else(purpose);
    let said = Said { on: new.started_on.unwrap_or(today), by: start.by, reason };
    let turn = Turn::new(&new, What::Started, said, (write.member(), write.at()));
    let mut turn = Turn { replaces_id: start.replaces, was: None, ..turn };
    turn.id = store::add(write, &turn).await?;
    Ok(turn)
}
