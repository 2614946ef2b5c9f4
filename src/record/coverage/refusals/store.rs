//! All the SQL of refusals and of the calls about them.
//!
//! A refusal names a medicine: it is there only for those who see the medicines too, and not for
//! those from whom it or its medicine is hidden. A call is there with its refusal.

use super::{
    calls::Call,
    model::Refusal,
    mover::{Decision, Mover},
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{CoverId, MedicineId, RefusalCallId, RefusalId},
    text::{Line, Note},
    time_of_day::TimeOfDay,
};
use crate::platform::{
    auth::area::{Clinical, Papers},
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every refusal there ever was, the newest first; none for who does not see the medicines.
pub async fn list(view: &View<Papers>) -> Result<Vec<Refusal>> {
    if view.area::<Clinical>().is_none() {
        return Ok(Vec::new());
    }
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Refusal,
        r#"select id, person_id, medicine_id as "medicine_id: MedicineId",
            cover_id as "cover_id: CoverId", refused_on as "refused_on: Date",
            pharmacy as "pharmacy: Line", words as "words: Note", code as "code: Line",
            mover as "mover: Mover", mover_since as "mover_since: Date",
            statement_at as "statement_at: Instant", expedited as "expedited: bool",
            decision as "decision: Decision", decided_on as "decided_on: Date",
            decision_words as "decision_words: Note", next_step as "next_step: Line",
            next_by as "next_by: Date", settled_on as "settled_on: Date",
            settled_how as "settled_how: Line", entered_by,
            entered_at as "entered_at: Instant", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from refusal
        where person_id = ?1
            and id not in (select item from hidden where kind = 'refusal' and member_id = ?2 and standing)
            and medicine_id not in
                (select item from hidden where kind = 'medicine' and member_id = ?2 and standing)
        order by refused_on desc, id desc"#,
        person,
        member
    ))
    .await
}

pub async fn standing(view: &View<Papers>) -> Result<Vec<Refusal>> {
    Ok(list(view).await?.into_iter().filter(Refusal::stands).collect())
}

pub async fn find(view: &View<Papers>, id: RefusalId) -> Result<Refusal> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Papers>, new: &Refusal) -> Result<RefusalId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into refusal (person_id, medicine_id, cover_id, refused_on, pharmacy, words,
                code, mover, mover_since, entered_by, entered_at)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.cover_id,
            new.refused_on,
            new.pharmacy,
            new.words,
            new.code,
            new.mover,
            new.mover_since,
            new.entered_by,
            new.entered_at
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Papers>, old: &Refusal, new: &Refusal) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update refusal set medicine_id = ?, cover_id = ?, refused_on = ?, pharmacy = ?,
                words = ?, code = ?, mover = ?, mover_since = ?, statement_at = ?, expedited = ?,
                decision = ?, decided_on = ?, decision_words = ?, next_step = ?, next_by = ?,
                settled_on = ?, settled_how = ?, struck = ?, struck_reason = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.medicine_id,
            new.cover_id,
            new.refused_on,
            new.pharmacy,
            new.words,
            new.code,
            new.mover,
            new.mover_since,
            new.statement_at,
            new.expedited,
            new.decision,
            new.decided_on,
            new.decision_words,
            new.next_step,
            new.next_by,
            new.settled_on,
            new.settled_how,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The calls about every refusal that the reader sees, the newest first.
pub async fn calls(view: &View<Papers>) -> Result<Vec<Call>> {
    let seen: Vec<RefusalId> = list(view).await?.into_iter().map(|it| it.id).collect();
    let person = view.person();
    let mut all = view
        .all(query_as!(
            Call,
            r#"select id, person_id, refusal_id as "refusal_id: RefusalId",
                called_on as "called_on: Date", called_time as "called_time: TimeOfDay",
                with_whom as "with_whom: Line", said as "said: Note", entered_by,
                entered_at as "entered_at: Instant", struck as "struck: bool",
                struck_reason as "struck_reason: Line", version
            from refusal_call where person_id = ?
            order by called_on desc, called_time desc, id desc"#,
            person
        ))
        .await?;
    all.retain(|it| seen.contains(&it.refusal_id));
    Ok(all)
}

pub async fn calls_about(view: &View<Papers>, id: RefusalId) -> Result<Vec<Call>> {
    Ok(calls(view).await?.into_iter().filter(|it| it.refusal_id == id && !it.struck).collect())
}

/// A call under its own refusal.
pub async fn call(view: &View<Papers>, of: RefusalId, id: RefusalCallId) -> Result<Call> {
    let found = calls(view).await?.into_iter().find(|it| it.id == id && it.refusal_id == of);
    found.ok_or(Error::NotFound)
}

pub async fn add_call(write: &mut Write<Papers>, new: &Call) -> Result<RefusalCallId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into refusal_call (person_id, refusal_id, called_on, called_time, with_whom,
                said, entered_by, entered_at)
            values (?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.refusal_id,
            new.called_on,
            new.called_time,
            new.with_whom,
            new.said,
            new.entered_by,
            new.entered_at
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_call(write: &mut Write<Papers>, old: &Call, new: &Call) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update refusal_call set struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
