//! All the SQL of operations. One that is hidden from the reader is not there.

use super::model::Operation;
use crate::base::{
    change::Change,
    clock::Instant,
    ids::OperationId,
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};

/// Every operation that was not struck, as they were entered: when one was is a line, no day.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Operation>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Operation,
        r#"select id, person_id, name as "name: Line", done_when as "done_when: Line",
            done_where as "done_where: Line", implant as "implant: Line",
            implant_card as "implant_card: Line", note as "note: Note", source as "source: Line",
            struck as "struck: bool", struck_reason as "struck_reason: Line",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from operation
        where person_id = ? and not struck
            and id not in (select item from hidden where kind = 'operation' and member_id = ? and standing)
        order by id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Clinical>, id: OperationId) -> Result<Operation> {
    let (person, member) = (view.person(), view.member());
    view.one(query_as!(
        Operation,
        r#"select id, person_id, name as "name: Line", done_when as "done_when: Line",
            done_where as "done_where: Line", implant as "implant: Line",
            implant_card as "implant_card: Line", note as "note: Note", source as "source: Line",
            struck as "struck: bool", struck_reason as "struck_reason: Line",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from operation
        where person_id = ? and id = ?
            and id not in (select item from hidden where kind = 'operation' and member_id = ? and standing)"#,
        person,
        id,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Operation) -> Result<OperationId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into operation (person_id, name, done_when, done_where, implant, implant_card,
                note, source, struck, struck_reason, checked_at, checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.name,
            new.done_when,
            new.done_where,
            new.implant,
            new.implant_card,
            new.note,
            new.source,
            new.struck,
            new.struck_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Operation, new: &Operation) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update operation set name = ?, done_when = ?, done_where = ?, implant = ?,
                implant_card = ?, note = ?, source = ?, struck = ?, struck_reason = ?,
                checked_at = ?, checked_by = ?, checked_against = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.done_when,
            new.done_where,
            new.implant,
            new.implant_card,
            new.note,
            new.source,
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

/// The name of every one there ever was, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(OperationId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select id as "id: OperationId", name as title from operation
        where person_id = ?
            and id not in (select item from hidden where kind = 'operation' and member_id = ? and standing)"#,
        person,
        member
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.title)).collect())
}
