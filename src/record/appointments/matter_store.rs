//! The SQL of what is clinical about an appointment. It is hidden with the appointment.

use super::matter::Matter;
use crate::base::{
    change::Change,
    ids::AppointmentId,
    text::{Line, Note},
};
use crate::platform::{
    auth::area::{Clinical, Tasks},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// Of every appointment that has any.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Matter>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query_as!(
        Matter,
        r#"select id, person_id, appointment_id, purpose as "purpose: Note",
            fasting as "fasting: Line", bring as "bring: Note", referral as "referral: Line",
            referral_until as "referral_until: Date", version
        from appointment_matter
        where person_id = ?
            and appointment_id not in (select item from hidden where kind = 'appointment' and member_id = ? and standing)
        order by id"#,
        person,
        member
    ));
    let mut all = all.await?;
    // An appointment that leans on what is hidden from her is not there, nor is this.
    let seen = match view.area::<Tasks>() {
        Some(view) => super::store::titles(&view).await?,
        None => Vec::new(),
    };
    all.retain(|it| seen.iter().any(|(id, _)| *id == it.appointment_id));
    Ok(all)
}

/// Of one; empty where nothing was written.
pub async fn of(view: &View<Clinical>, id: AppointmentId) -> Result<Matter> {
    let found = list(view).await?.into_iter().find(|it| it.appointment_id == id);
    Ok(found.unwrap_or_else(|| Matter::none(view.person(), id)))
}

/// Kept for the first time, or once more. Nothing at all is not kept.
pub async fn keep(write: &mut Write<Clinical>, old: &Matter, new: &Matter) -> Result<()> {
    match old.version {
        0 if new.is_empty() => Ok(()),
        0 => add(write, new).await,
        _ => save(write, old, new).await,
    }
}

async fn add(write: &mut Write<Clinical>, new: &Matter) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into appointment_matter (person_id, appointment_id, purpose, fasting, bring,
                referral, referral_until)
            values (?, ?, ?, ?, ?, ?, ?)",
            person,
            new.appointment_id,
            new.purpose,
            new.fasting,
            new.bring,
            new.referral,
            new.referral_until
        ),
    );
    added.await.map(|_| ())
}

async fn save(write: &mut Write<Clinical>, old: &Matter, new: &Matter) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update appointment_matter set purpose = ?, fasting = ?, bring = ?, referral = ?,
                referral_until = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.purpose,
            new.fasting,
            new.bring,
            new.referral,
            new.referral_until,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The name of the appointment, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(i64, String)>> {
    let (all, titles) = match view.area::<Tasks>() {
        Some(tasks) => (list(view).await?, super::store::titles(&tasks).await?),
        None => return Ok(Vec::new()),
    };
    let title = |it: &Matter| titles.iter().find(|(id, _)| *id == it.appointment_id);
    Ok(all.iter().filter_map(|it| Some((it.id, title(it)?.1.clone()))).collect())
}
