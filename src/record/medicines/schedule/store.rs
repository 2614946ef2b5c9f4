//! All the SQL of schedules. The steps of a medicine that is hidden from the reader are not there.

use super::{
    model::{Rhythm, Step},
    repeat::Weekdays,
    times::Times,
};
use crate::base::{
    change::Change,
    ids::{MedicineId, StepId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every step that was not struck, medicine by medicine, in the order of their days.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Step>> {
    let mut all = steps(view, None, None).await?;
    all.retain(|it| !it.struck);
    Ok(all)
}

/// The steps of one medicine.
pub async fn of_medicine(view: &View<Clinical>, medicine: MedicineId) -> Result<Vec<Step>> {
    let mut all = steps(view, Some(medicine), None).await?;
    all.retain(|it| !it.struck);
    Ok(all)
}

pub async fn find(view: &View<Clinical>, id: StepId) -> Result<Step> {
    steps(view, None, Some(id)).await?.pop().ok_or(Error::NotFound)
}

async fn steps(
    view: &View<Clinical>,
    medicine: Option<MedicineId>,
    id: Option<StepId>,
) -> Result<Vec<Step>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Step,
        r#"select id, person_id, medicine_id, from_on as "from_on: Date",
            until_on as "until_on: Date", rhythm as "rhythm: Rhythm", every,
            weekdays as "weekdays: Weekdays", times as "times: Times", unit as "unit: Line",
            least_hours as "least_hours: Quantity", most_a_day as "most_a_day: Quantity",
            struck as "struck: bool", version
        from step
        where person_id = ?1 and (?2 is null or medicine_id = ?2) and (?3 is null or id = ?3)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?4 and standing)
        order by medicine_id, from_on, id"#,
        person,
        medicine,
        id,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Step) -> Result<StepId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into step (person_id, medicine_id, from_on, until_on, rhythm, every, weekdays,
                times, unit, least_hours, most_a_day, struck)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.from_on,
            new.until_on,
            new.rhythm,
            new.every,
            new.weekdays,
            new.times,
            new.unit,
            new.least_hours,
            new.most_a_day,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Step, new: &Step) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update step set from_on = ?, until_on = ?, rhythm = ?, every = ?, weekdays = ?,
                times = ?, unit = ?, least_hours = ?, most_a_day = ?, struck = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.from_on,
            new.until_on,
            new.rhythm,
            new.every,
            new.weekdays,
            new.times,
            new.unit,
            new.least_hours,
            new.most_a_day,
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The medicine of every step there ever was, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(StepId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select step.id as "id: StepId", name from step
        join medicine on medicine.id = medicine_id
        where step.person_id = ?
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        member
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.name)).collect())
}
