//! All the SQL of drafts. Every query names the member: nobody reads another's.
//!
//! They are machinery: the history does not tell of typing. They are kept through a `Write<Notes>`
//! without the form's key, which belongs to the save.

use super::model::{Draft, Sent, Step};
use crate::base::{
    clock::Instant,
    ids::{AppointmentId, DraftId},
};
use crate::platform::{
    auth::area::{Clinical, Notes},
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Her own, the newest in front. One of a visit that is hidden from her is not there.
pub async fn list<A>(view: &View<A>) -> Result<Vec<Draft>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Draft,
        r#"select id, person_id, member_id, appointment_id as "appointment_id: _",
            occurrence_on as "occurrence_on: Date", token, page, count, fields,
            kept_at as "kept_at: Instant", version
        from visit_draft
        where person_id = ?1 and member_id = ?2
            and (appointment_id is null or appointment_id not in
                (select item from hidden where kind = 'appointment' and member_id = ?2 and standing))
        order by kept_at desc, id desc"#,
        person,
        member
    ))
    .await
}

pub async fn find<A>(view: &View<A>, id: DraftId) -> Result<Draft> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

/// Hers of one time of an appointment.
pub async fn of_meeting<A>(
    view: &View<A>,
    meeting: (AppointmentId, Date),
) -> Result<Option<Draft>> {
    Ok(list(view).await?.into_iter().find(|it| it.meeting() == Some(meeting)))
}

/// The one that a page means: of its visit, or by its mark.
pub async fn meant<A>(view: &View<A>, sent: &Sent) -> Result<Option<Draft>> {
    let mut all = list(view).await?.into_iter();
    Ok(all.find(|it| match sent.meeting {
        Some(meeting) => it.meeting() == Some(meeting),
        // One whose visit left the calendar goes on without it.
        None => it.token == sent.token,
    }))
}

/// Keeps what a page sent; `Stale` where another page has kept something it has not seen.
pub async fn keep(write: &Write<Notes>, sent: &Sent) -> Result<Draft> {
    let kept = meant(write, sent).await?;
    let step = sent.onto(kept.as_ref());
    match (step, &kept) {
        (Step::Conflict, _) => return Err(Error::Stale),
        (Step::Pass, Some(kept)) => return Ok(kept.clone()),
        (_, Some(kept)) => replace(write, kept, sent).await?,
        (_, None) => begin(write, sent).await?,
    }
    let now = meant(write, sent).await?;
    now.ok_or_else(|| Error::Internal("a draft was not kept".into()))
}

async fn begin(write: &Write<Notes>, sent: &Sent) -> Result<()> {
    let (person, member, at) = (write.person(), write.member(), write.at());
    let (appointment, on) = sent.meeting.unzip();
    let added = write.machinery(query!(
        "insert into visit_draft (person_id, member_id, appointment_id, occurrence_on, token, page,
            count, fields, kept_at)
        values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        person,
        member,
        appointment,
        on,
        sent.token,
        sent.page,
        sent.count,
        sent.fields,
        at
    ));
    added.await.map(|_| ())
}

async fn replace(write: &Write<Notes>, kept: &Draft, sent: &Sent) -> Result<()> {
    let (person, member, at) = (write.person(), write.member(), write.at());
    let saved = write.machinery(query!(
        "update visit_draft set page = ?, count = ?, fields = ?, kept_at = ?, version = version + 1
        where person_id = ? and member_id = ? and id = ?",
        sent.page,
        sent.count,
        sent.fields,
        at,
        person,
        member,
        kept.id
    ));
    saved.await.map(|_| ())
}

/// Ends it, in the write that saves the note.
pub async fn end(write: &Write<Clinical>, draft: &Draft) -> Result<()> {
    let (person, member) = (write.person(), write.member());
    let gone = write.machinery(query!(
        "delete from visit_draft where person_id = ? and member_id = ? and id = ?",
        person,
        member,
        draft.id
    ));
    gone.await.map(|_| ())
}
