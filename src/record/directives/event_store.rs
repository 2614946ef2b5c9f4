//! All the SQL of what happened, and of what was put aside after it. An event that is about a contact
//! whom the reader does not see is not there, nor what is put aside of a hidden directive.

use super::events::{DirectiveAside, DirectiveEvent, Happened};
use crate::base::{
    change::Change,
    ids::{ContactId, DirectiveEventId},
    text::Line,
};
use crate::platform::{
    auth::area::Directives,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every event there ever was, the struck ones too, the newest first.
pub async fn list(view: &View<Directives>) -> Result<Vec<DirectiveEvent>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        DirectiveEvent,
        r#"select id, person_id, kind as "kind: Happened", contact_id as "contact_id: ContactId",
            happened_on as "happened_on: Date", words as "words: Line", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from directive_event
        where person_id = ?1 and (contact_id is null or contact_id not in
            (select item from hidden where kind = 'contact' and member_id = ?2 and standing))
        order by happened_on desc, id desc"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Directives>, id: DirectiveEventId) -> Result<DirectiveEvent> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Directives>, new: &DirectiveEvent) -> Result<DirectiveEventId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into directive_event (person_id, kind, contact_id, happened_on, words)
            values (?, ?, ?, ?, ?)",
            person,
            new.kind,
            new.contact_id,
            new.happened_on,
            new.words
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(
    write: &mut Write<Directives>,
    old: &DirectiveEvent,
    new: &DirectiveEvent,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update directive_event set struck = ?, struck_reason = ?, version = version + 1
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

/// What was ever put aside.
pub async fn asides(view: &View<Directives>) -> Result<Vec<DirectiveAside>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        DirectiveAside,
        r#"select id, person_id, event_id, directive_id, reason as "reason: Line",
            standing as "standing: bool", version
        from directive_aside
        where person_id = ?1
            and directive_id not in (select item from hidden where kind = 'directive' and member_id = ?2 and standing)
        order by id"#,
        person,
        member
    ))
    .await
}

pub async fn add_aside(write: &mut Write<Directives>, new: &DirectiveAside) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into directive_aside (person_id, event_id, directive_id, reason, standing)
            values (?, ?, ?, ?, ?)",
            person,
            new.event_id,
            new.directive_id,
            new.reason,
            new.standing
        ),
    );
    added.await.map(|_| ())
}

pub async fn save_aside(
    write: &mut Write<Directives>,
    old: &DirectiveAside,
    new: &DirectiveAside,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update directive_aside set reason = ?, standing = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.reason,
            new.standing,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
