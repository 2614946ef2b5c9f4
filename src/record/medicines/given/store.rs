//! All the SQL of the log. What is about a medicine that is hidden from the reader is not there.

use super::{
    keeping::LogKeeping,
    model::{Given, Outcome, title},
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{GivenId, LogKeepingId, MedicineId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::{
    auth::area::{Clinical, Log},
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// For which medicines the log is, or was, kept.
pub async fn keeping(view: &View<Clinical>) -> Result<Vec<LogKeeping>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        LogKeeping,
        r#"select id, person_id, medicine_id as "medicine_id: _", standing as "standing: bool",
            turned_by, turned_at as "turned_at: Instant", version
        from log_keeping
        where person_id = ? and (medicine_id is null or medicine_id not in
            (select item from hidden where kind = 'medicine' and member_id = ? and standing))
        order by medicine_id"#,
        person,
        member
    ))
    .await
}

pub async fn add_keeping(write: &mut Write<Clinical>, new: &LogKeeping) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into log_keeping (person_id, medicine_id, standing, turned_by, turned_at)
            values (?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.standing,
            new.turned_by,
            new.turned_at
        ),
    );
    added.await.map(|_| ())
}

pub async fn save_keeping(
    write: &mut Write<Clinical>,
    old: &LogKeeping,
    new: &LogKeeping,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update log_keeping set standing = ?, turned_by = ?, turned_at = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.standing,
            new.turned_by,
            new.turned_at,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The entries of these days that were not struck, of one medicine or of all.
pub async fn list(
    view: &View<Log>,
    medicine: Option<MedicineId>,
    (from, to): (Date, Date),
) -> Result<Vec<Given>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Given,
        r#"select id, person_id, medicine_id, day as "day: Date", time_of_day,
            at as "at: Instant", amount as "amount: Quantity", unit as "unit: Line",
            outcome as "outcome: Outcome", note as "note: Line", given_by as "given_by: _",
            given_name as "given_name: Line", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from given
        where person_id = ?1 and day between ?2 and ?3 and not struck
            and (?4 is null or medicine_id = ?4)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?5 and standing)
        order by id"#,
        person,
        from,
        to,
        medicine,
        member
    ))
    .await
}

/// The entries of the last day of each medicine: the last one is among them.
pub async fn last_days(view: &View<Log>) -> Result<Vec<Given>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Given,
        r#"select id, person_id, medicine_id, day as "day: Date", time_of_day,
            at as "at: Instant", amount as "amount: Quantity", unit as "unit: Line",
            outcome as "outcome: Outcome", note as "note: Line", given_by as "given_by: _",
            given_name as "given_name: Line", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from given
        where person_id = ?1 and not struck
            and (medicine_id, day) in (select medicine_id, max(day) from given
                where person_id = ?1 and not struck group by medicine_id)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?2 and standing)
        order by id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Log>, id: GivenId) -> Result<Given> {
    let (person, member) = (view.person(), view.member());
    let found = view.maybe(query_as!(
        Given,
        r#"select id, person_id, medicine_id, day as "day: Date", time_of_day,
            at as "at: Instant", amount as "amount: Quantity", unit as "unit: Line",
            outcome as "outcome: Outcome", note as "note: Line", given_by as "given_by: _",
            given_name as "given_name: Line", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from given
        where person_id = ? and id = ?
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        id,
        member
    ));
    found.await?.ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Log>, new: &Given) -> Result<GivenId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into given (person_id, medicine_id, day, time_of_day, at, amount, unit, outcome,
                note, given_by, given_name, entered_by, entered_at, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.day,
            new.time_of_day,
            new.at,
            new.amount,
            new.unit,
            new.outcome,
            new.note,
            new.given_by,
            new.given_name,
            new.entered_by,
            new.entered_at,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Log>, old: &Given, new: &Given) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update given set day = ?, at = ?, amount = ?, outcome = ?, note = ?, given_by = ?,
                given_name = ?, struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.day,
            new.at,
            new.amount,
            new.outcome,
            new.note,
            new.given_by,
            new.given_name,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// What each of these entries is called. Entries never end, so only those that are asked for.
pub async fn titles(view: &View<Log>, ids: &[i64]) -> Result<Vec<(GivenId, String)>> {
    let (person, member) = (view.person(), view.member());
    let ids = serde_json::json!(ids).to_string();
    let all = view.all(query!(
        r#"select given.id as "id: GivenId", name, strength, day as "day: Date", time_of_day
        from given join medicine on medicine.id = medicine_id
        where given.person_id = ? and given.id in (select value from json_each(?))
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        ids,
        member
    ));
    let named = |name: String, strength: Option<String>| match strength {
        Some(strength) => format!("{name} {strength}"),
        None => name,
    };
    let all = all.await?.into_iter();
    let titled = all.map(|it| {
        let medicine = named(it.name, it.strength);
        (it.id, title(&medicine, it.day, it.time_of_day.as_deref()))
    });
    Ok(titled.collect())
}

/// The medicine of every row that says of which a log is kept, for the history.
pub async fn keeping_titles(view: &View<Clinical>) -> Result<Vec<(LogKeepingId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select log_keeping.id as "id: LogKeepingId", name as "name?" from log_keeping
        left join medicine on medicine.id = medicine_id
        where log_keeping.person_id = ? and (medicine_id is null or medicine_id not in
            (select item from hidden where kind = 'medicine' and member_id = ? and standing))"#,
        person,
        member
    ));
    let named = |name: Option<String>| name.unwrap_or_else(|| "all medicines".into());
    Ok(all.await?.into_iter().map(|it| (it.id, named(it.name))).collect())
}
