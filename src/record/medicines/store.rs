//! All the SQL of medicines. A medicine that is hidden from the reader is not there; nor, for an
//! aide, is one that is not taken any more.

use super::model::{Medicine, Status, Supply};
use crate::base::{change::Change, clock::Instant, ids::MedicineId, text::Line};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// Every medicine that was not struck: those taken first, then held, then stopped.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Medicine>> {
    those(view, false).await
}

/// Those taken and those on hold: after years most of a list has been stopped.
pub async fn current(view: &View<Clinical>) -> Result<Vec<Medicine>> {
    those(view, true).await
}

async fn those(view: &View<Clinical>, current: bool) -> Result<Vec<Medicine>> {
    let (person, member) = (view.person(), view.member());
    let current = current || view.current_only();
    view.all(query_as!(
        Medicine,
        r#"select id, person_id, name as "name: Line", strength as "strength: Line",
            form as "form: Line", dose as "dose: Line", route as "route: Line",
            times as "times: Line", purpose as "purpose: Line",
            prescriber as "prescriber: Line", started_on as "started_on: Date",
            as_needed as "as_needed: bool", label_limit as "label_limit: Line",
            supply as "supply: Supply", source as "source: Line", status as "status: Status",
            status_since as "status_since: Date", status_reason as "status_reason: Line",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from medicine
        where person_id = ? and status in ('taking', 'on hold', iif(?, 'taking', 'stopped'))
            and id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)
        order by status = 'stopped', status = 'on hold', as_needed, lower(name), id"#,
        person,
        current,
        member
    ))
    .await
}

pub async fn find(view: &View<Clinical>, id: MedicineId) -> Result<Medicine> {
    let (person, member, current) = (view.person(), view.member(), view.current_only());
    view.one(query_as!(
        Medicine,
        r#"select id, person_id, name as "name: Line", strength as "strength: Line",
            form as "form: Line", dose as "dose: Line", route as "route: Line",
            times as "times: Line", purpose as "purpose: Line",
            prescriber as "prescriber: Line", started_on as "started_on: Date",
            as_needed as "as_needed: bool", label_limit as "label_limit: Line",
            supply as "supply: Supply", source as "source: Line", status as "status: Status",
            status_since as "status_since: Date", status_reason as "status_reason: Line",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from medicine
        where person_id = ? and id = ? and (status in ('taking', 'on hold') or not ?)
            and id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        id,
        current,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Medicine) -> Result<MedicineId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into medicine (person_id, name, strength, form, dose, route, times, purpose,
                prescriber, started_on, as_needed, label_limit, supply, source, status,
                status_since, status_reason, checked_at, checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.name,
            new.strength,
            new.form,
            new.dose,
            new.route,
            new.times,
            new.purpose,
            new.prescriber,
            new.started_on,
            new.as_needed,
            new.label_limit,
            new.supply,
            new.source,
            new.status,
            new.status_since,
            new.status_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Medicine, new: &Medicine) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update medicine set name = ?, strength = ?, form = ?, dose = ?, route = ?, times = ?,
                purpose = ?, prescriber = ?, started_on = ?, as_needed = ?, label_limit = ?,
                supply = ?, source = ?, status = ?, status_since = ?, status_reason = ?,
                checked_at = ?, checked_by = ?, checked_against = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.strength,
            new.form,
            new.dose,
            new.route,
            new.times,
            new.purpose,
            new.prescriber,
            new.started_on,
            new.as_needed,
            new.label_limit,
            new.supply,
            new.source,
            new.status,
            new.status_since,
            new.status_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The name of every medicine there ever was, for the history and for what names one.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(MedicineId, String)>> {
    let (person, member, current) = (view.person(), view.member(), view.current_only());
    let all = view.all(query!(
        r#"select id as "id: MedicineId", name, strength from medicine
        where person_id = ? and (status in ('taking', 'on hold') or not ?)
            and id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        current,
        member
    ));
    let title = |name: String, strength: Option<String>| match strength {
        Some(strength) => format!("{name} {strength}"),
        None => name,
    };
    Ok(all.await?.into_iter().map(|it| (it.id, title(it.name, it.strength))).collect())
}

/// The names of the medicines that are hidden from this reader: so that what was read off another
/// list does not tell her of them either. They are never shown to her.
pub async fn hidden_names(view: &View<Clinical>) -> Result<Vec<String>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        "select name from medicine
        where person_id = ?
            and id in (select item from hidden where kind = 'medicine' and member_id = ? and standing)",
        person,
        member
    ));
    Ok(all.await?.into_iter().map(|it| it.name).collect())
}
