//! All the SQL of copies. One of a directive that is hidden from the reader is not there.

use super::copies::DirectiveCopy;
use crate::base::{
    change::Change,
    ids::{ContactId, DirectiveCopyId},
    text::Line,
};
use crate::platform::{
    auth::area::Directives,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every copy there ever was, the struck ones too.
pub async fn list(view: &View<Directives>) -> Result<Vec<DirectiveCopy>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        DirectiveCopy,
        r#"select id, person_id, directive_id, contact_id as "contact_id: ContactId",
            given_to as "given_to: Line", given_on as "given_on: Date", told_on as "told_on: Date",
            told_how as "told_how: Line", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from directive_copy
        where person_id = ?1
            and directive_id not in (select item from hidden where kind = 'directive' and member_id = ?2 and standing)
        order by given_on, id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Directives>, id: DirectiveCopyId) -> Result<DirectiveCopy> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Directives>, new: &DirectiveCopy) -> Result<DirectiveCopyId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into directive_copy (person_id, directive_id, contact_id, given_to, given_on)
            values (?, ?, ?, ?, ?)",
            person,
            new.directive_id,
            new.contact_id,
            new.given_to,
            new.given_on
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(
    write: &mut Write<Directives>,
    old: &DirectiveCopy,
    new: &DirectiveCopy,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update directive_copy set told_on = ?, told_how = ?, struck = ?, struck_reason = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.told_on,
            new.told_how,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
