//! All the SQL of turns, and of who was told. A turn of a medicine that is not there for the reader
//! (hidden, or for an aide not taken any more) is not there; nor is a telling of a hidden contact.

use super::model::{Telling, Turn, What};
use crate::base::{
    change::Change,
    clock::Instant,
    day,
    ids::{MedicineId, TellingId, TurnId},
    text::Line,
};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Which turns are wanted; those that were struck never are. Empty: all of them.
#[derive(Default)]
pub struct Wanted {
    pub medicine: Option<MedicineId>,
    pub since: Option<Date>,
    /// Only holds, and what is planned.
    pub standing: bool,
}

/// The newest day first.
pub async fn list(view: &View<Clinical>, wanted: &Wanted) -> Result<Vec<Turn>> {
    turns(view, None, wanted).await
}

/// Holds, and what is planned: what stands on Today and on the sheets.
pub async fn standing(view: &View<Clinical>) -> Result<Vec<Turn>> {
    list(view, &Wanted { standing: true, ..Wanted::default() }).await
}

pub async fn find(view: &View<Clinical>, id: TurnId) -> Result<Turn> {
    turns(view, Some(id), &Wanted::default()).await?.pop().ok_or(Error::NotFound)
}

/// The newest turn of a medicine that was not struck: the one that can be taken back.
pub async fn newest(view: &View<Clinical>, medicine: MedicineId) -> Result<Option<Turn>> {
    let wanted = Wanted { medicine: Some(medicine), ..Wanted::default() };
    Ok(list(view, &wanted).await?.into_iter().max_by_key(|it| i64::from(it.id)))
}

async fn turns(view: &View<Clinical>, id: Option<TurnId>, wanted: &Wanted) -> Result<Vec<Turn>> {
    let (person, member, current) = (view.person(), view.member(), view.current_only());
    let Wanted { medicine, since, standing } = wanted;
    view.all(query_as!(
        Turn,
        r#"select id, person_id, medicine_id, what as "what: What", from_on as "from_on: Date",
            said_by as "said_by: Line", reason as "reason: Line",
            replaces_id as "replaces_id: MedicineId", resume_on as "resume_on: Date",
            resume_by as "resume_by: Line", planned as "planned: bool", was, left_at,
            question_id as "question_id: _", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", version
        from turn
        where person_id = ?1 and (?2 is null or id = ?2) and (?3 is null or medicine_id = ?3)
            and (?4 is null or from_on >= ?4) and (not ?5 or planned or what = 'held')
            and not struck
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?6 and standing)
            and (not ?7 or medicine_id in (select id from medicine where status in ('taking', 'on hold')))
        order by from_on desc, id desc"#,
        person,
        id,
        medicine,
        since,
        standing,
        member,
        current
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Turn) -> Result<TurnId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into turn (person_id, medicine_id, what, from_on, said_by, reason, replaces_id,
                resume_on, resume_by, planned, was, left_at, question_id, entered_by, entered_at,
                struck)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.what,
            new.from_on,
            new.said_by,
            new.reason,
            new.replaces_id,
            new.resume_on,
            new.resume_by,
            new.planned,
            new.was,
            new.left_at,
            new.question_id,
            new.entered_by,
            new.entered_at,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Turn, new: &Turn) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update turn set resume_on = ?, resume_by = ?, planned = ?, was = ?, left_at = ?,
                question_id = ?, struck = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.resume_on,
            new.resume_by,
            new.planned,
            new.was,
            new.left_at,
            new.question_id,
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Who was told, of one turn or of all; without what was struck.
pub async fn tellings(view: &View<Clinical>, turn: Option<TurnId>) -> Result<Vec<Telling>> {
    told(view, turn, None).await
}

pub async fn find_telling(view: &View<Clinical>, id: TellingId) -> Result<Telling> {
    told(view, None, Some(id)).await?.pop().ok_or(Error::NotFound)
}

async fn told(
    view: &View<Clinical>,
    turn: Option<TurnId>,
    id: Option<TellingId>,
) -> Result<Vec<Telling>> {
    let (person, member, current) = (view.person(), view.member(), view.current_only());
    view.all(query_as!(
        Telling,
        r#"select id, person_id, turn_id, medicine_id, contact_id as "contact_id: _",
            whom as "whom: Line", told_on as "told_on: Date", told_by, how as "how: Line",
            struck as "struck: bool", version
        from telling
        where person_id = ?1 and (?2 is null or turn_id = ?2) and (?3 is null or id = ?3)
            and not struck
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?4 and standing)
            and (contact_id is null or contact_id not in
                (select item from hidden where kind = 'contact' and member_id = ?4 and standing))
            and (not ?5 or medicine_id in (select id from medicine where status in ('taking', 'on hold')))
        order by told_on, id"#,
        person,
        turn,
        id,
        member,
        current
    ))
    .await
}

pub async fn add_telling(write: &mut Write<Clinical>, new: &Telling) -> Result<TellingId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into telling (person_id, turn_id, medicine_id, contact_id, whom, told_on,
                told_by, how, struck)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.turn_id,
            new.medicine_id,
            new.contact_id,
            new.whom,
            new.told_on,
            new.told_by,
            new.how,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_telling(write: &mut Write<Clinical>, old: &Telling, new: &Telling) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update telling set struck = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Of these turns the medicine, with what it was and its day, for the history. They never end.
pub async fn titles(view: &View<Clinical>, ids: &[i64]) -> Result<Vec<(TurnId, String)>> {
    let (person, member, current) = (view.person(), view.member(), view.current_only());
    let ids = serde_json::json!(ids).to_string();
    let all = view.all(query!(
        r#"select t.id as "id: TurnId", name, what as "what: What", from_on as "from_on: Date"
        from turn t join medicine on medicine.id = medicine_id
        where t.person_id = ? and t.id in (select value from json_each(?))
            and (status in ('taking', 'on hold') or not ?)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        ids,
        current,
        member
    ));
    let title = |name: String, what: What, on: Date| {
        format!("{name}, {} from {}", what.words(), day::words(on))
    };
    Ok(all.await?.into_iter().map(|it| (it.id, title(it.name, it.what, it.from_on))).collect())
}

/// Of these tellings who was told, and of what.
pub async fn telling_titles(
    view: &View<Clinical>,
    ids: &[i64],
) -> Result<Vec<(TellingId, String)>> {
    let (person, member, current) = (view.person(), view.member(), view.current_only());
    let ids = serde_json::json!(ids).to_string();
    let all = view.all(query!(
        r#"select t.id as "id: TellingId", whom, name
        from telling t join medicine on medicine.id = medicine_id
        where t.person_id = ?1 and t.id in (select value from json_each(?3))
            and (status in ('taking', 'on hold') or not ?4)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?2 and standing)
            and (contact_id is null or contact_id not in
                (select item from hidden where kind = 'contact' and member_id = ?2 and standing))"#,
        person,
        member,
        ids,
        current
    ));
    let title = |whom: String, name: String| format!("{whom} of {name}");
    Ok(all.await?.into_iter().map(|it| (it.id, title(it.whom, it.name))).collect())
}
