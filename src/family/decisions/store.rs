//! All the SQL of decisions.
//!
//! One that is hidden from the reader is not there; and none is, for whom it is not to be seen who
//! shares the record.

use super::{
    model::Decision,
    right::{Right, State},
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{DecisionId, MemberId},
    text::{Line, Note},
};
use crate::platform::{
    auth::area::{Clinical, Members, Role},
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as, query_scalar};
use time::Date;

/// Whether the reader is one to whom decisions are told.
pub fn told_to(view: &View<Clinical>) -> Result<()> {
    view.area::<Members>().map(|_| ()).ok_or(Error::NotFound)
}

/// Every decision there ever was, in the order of a meeting.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Decision>> {
    told_to(view)?;
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Decision,
        r#"select id, person_id, matter as "matter: Line", background as "background: Note",
            decided as "decided: Note", reasons as "reasons: Note", heard,
            heard_others as "heard_others: Line", her_words as "her_words: Note",
            not_asked as "not_asked: Line", decider as "decider: Line",
            by_right as "by_right: Right", right_words as "right_words: Line",
            decided_on as "decided_on: Date", look_again_on as "look_again_on: Date",
            state as "state: State", replaced_by as "replaced_by: DecisionId",
            withdrawn_reason as "withdrawn_reason: Line", place, entered_by,
            entered_at as "entered_at: Instant", version
        from decision
        where person_id = ?1
            and id not in (select item from hidden where kind = 'decision' and member_id = ?2 and standing)
        order by place, id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Clinical>, id: DecisionId) -> Result<Decision> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

/// The place behind all others, the hidden ones too.
pub async fn last_place(view: &View<Clinical>) -> Result<i64> {
    told_to(view)?;
    let person = view.person();
    let last = view.values(query_scalar!(
        r#"select coalesce(max(place), 0) as "place!: i64" from decision where person_id = ?"#,
        person
    ));
    Ok(last.await?.pop().unwrap_or(0))
}

pub async fn add(write: &mut Write<Clinical>, new: &Decision) -> Result<DecisionId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into decision (person_id, matter, background, state, place, entered_by,
                entered_at)
            values (?, ?, ?, ?, ?, ?, ?)",
            person,
            new.matter,
            new.background,
            new.state,
            new.place,
            new.entered_by,
            new.entered_at
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Decision, new: &Decision) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update decision set matter = ?, background = ?, decided = ?, reasons = ?, heard = ?,
                heard_others = ?, her_words = ?, not_asked = ?, decider = ?, by_right = ?,
                right_words = ?, decided_on = ?, look_again_on = ?, state = ?, replaced_by = ?,
                withdrawn_reason = ?, place = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.matter,
            new.background,
            new.decided,
            new.reasons,
            new.heard,
            new.heard_others,
            new.her_words,
            new.not_asked,
            new.decider,
            new.by_right,
            new.right_words,
            new.decided_on,
            new.look_again_on,
            new.state,
            new.replaced_by,
            new.withdrawn_reason,
            new.place,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Everyone with a standing place here but the person: who may have been heard.
pub async fn members(view: &View<Clinical>) -> Result<Vec<(MemberId, String)>> {
    let person = view.person();
    let all = view.all(query!(
        r#"select m.id as "id: MemberId", m.name, s.role as "role: Role"
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? and s.state = 'standing' order by s.id"#,
        person
    ));
    let all = all.await?.into_iter().filter(|it| it.role != Role::Person);
    Ok(all.map(|it| (it.id, it.name)).collect())
}

/// What each was about, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(DecisionId, String)>> {
    let all = list(view).await?.into_iter();
    Ok(all.map(|it| (it.id, it.matter.to_string())).collect())
}
