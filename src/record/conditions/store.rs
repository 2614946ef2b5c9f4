//! All the SQL of conditions. One that is hidden from the reader is not there; nor, for an aide, is
//! one that is over.

use super::{model::Condition, wish::WantsTold};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::ConditionId,
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// Every condition that was not struck: the standing ones first, then those that are over.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Condition>> {
    those(view, false).await
}

/// Those that are not over.
pub async fn standing(view: &View<Clinical>) -> Result<Vec<Condition>> {
    those(view, true).await
}

async fn those(view: &View<Clinical>, standing: bool) -> Result<Vec<Condition>> {
    let (person, member) = (view.person(), view.member());
    let standing = standing || view.current_only();
    view.all(query_as!(
        Condition,
        r#"select id, person_id, name as "name: Line", since as "since: Line",
            followed_by as "followed_by: Line", note as "note: Note", source as "source: Line",
            who_may_know as "who_may_know: Line", wants_told as "wants_told: WantsTold",
            told_on as "told_on: Date", told_by as "told_by: Line", over_on as "over_on: Date",
            over_said_by as "over_said_by: Line", struck as "struck: bool",
            struck_reason as "struck_reason: Line", checked_at as "checked_at: Instant",
            checked_by as "checked_by: _", checked_against as "checked_against: Line", version
        from condition
        where person_id = ? and not struck and (over_on is null or not ?)
            and id not in (select item from hidden where kind = 'condition' and member_id = ? and standing)
        order by over_on is not null, lower(name), id"#,
        person,
        standing,
        member
    ))
    .await
}

pub async fn find(view: &View<Clinical>, id: ConditionId) -> Result<Condition> {
    let (person, member, standing) = (view.person(), view.member(), view.current_only());
    view.one(query_as!(
        Condition,
        r#"select id, person_id, name as "name: Line", since as "since: Line",
            followed_by as "followed_by: Line", note as "note: Note", source as "source: Line",
            who_may_know as "who_may_know: Line", wants_told as "wants_told: WantsTold",
            told_on as "told_on: Date", told_by as "told_by: Line", over_on as "over_on: Date",
            over_said_by as "over_said_by: Line", struck as "struck: bool",
            struck_reason as "struck_reason: Line", checked_at as "checked_at: Instant",
            checked_by as "checked_by: _", checked_against as "checked_against: Line", version
        from condition
        where person_id = ? and id = ? and (not ? or not struck and over_on is null)
            and id not in (select item from hidden where kind = 'condition' and member_id = ? and standing)"#,
        person,
        id,
        standing,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Condition) -> Result<ConditionId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into condition (person_id, name, since, followed_by, note, source, who_may_know,
                wants_told, told_on, told_by, over_on, over_said_by, struck, struck_reason,
                checked_at, checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.name,
            new.since,
            new.followed_by,
            new.note,
            new.source,
            new.who_may_know,
            new.wants_told,
            new.told_on,
            new.told_by,
            new.over_on,
            new.over_said_by,
            new.struck,
            new.struck_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Condition, new: &Condition) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update condition set name = ?, since = ?, followed_by = ?, note = ?, source = ?,
                who_may_know = ?, wants_told = ?, told_on = ?, told_by = ?, over_on = ?,
                over_said_by = ?, struck = ?, struck_reason = ?, checked_at = ?, checked_by = ?,
                checked_against = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.since,
            new.followed_by,
            new.note,
            new.source,
            new.who_may_know,
            new.wants_told,
            new.told_on,
            new.told_by,
            new.over_on,
            new.over_said_by,
            new.struck,
            new.struck_reason,
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

/// The name of every one there ever was, for the history and for what names one.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(ConditionId, String)>> {
    let (person, member, standing) = (view.person(), view.member(), view.current_only());
    let all = view.all(query!(
        r#"select id as "id: ConditionId", name as title from condition
        where person_id = ? and (not ? or not struck and over_on is null)
            and id not in (select item from hidden where kind = 'condition' and member_id = ? and standing)"#,
        person,
        standing,
        member
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.title)).collect())
}
