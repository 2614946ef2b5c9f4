//! All the SQL of what is hidden, and from whom.

use super::model::Hidden;
use crate::base::{change::Change, ids::MemberId};
use crate::platform::{
    auth::area::{Members, Role},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};

/// A member of this record, as the page lists her.
pub struct Member {
    pub id: MemberId,
    pub name: String,
    pub role: Role,
}

pub async fn members(view: &View<Members>) -> Result<Vec<Member>> {
    let person = view.person();
    view.all(query_as!(
        Member,
        r#"select m.id, m.name, s.role as "role: Role"
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? and s.state <> 'ended' order by s.id"#,
        person
    ))
    .await
}

/// All that is, or once was, hidden in this record from someone else than the reader.
pub async fn all(view: &View<Members>) -> Result<Vec<Hidden>> {
    let (person, reader) = (view.person(), view.member());
    view.all(query_as!(
        Hidden,
        r#"select id, person_id, member_id, kind, item, on_behalf as "on_behalf: bool",
            standing as "standing: bool", version
        from hidden where person_id = ? and member_id <> ? order by kind, item, id"#,
        person,
        reader
    ))
    .await
}

/// Everyone from whom this item is, or once was, hidden.
pub async fn list(view: &View<Members>, kind: &str, item: i64) -> Result<Vec<Hidden>> {
    let person = view.person();
    view.all(query_as!(
        Hidden,
        r#"select id, person_id, member_id, kind, item, on_behalf as "on_behalf: bool",
            standing as "standing: bool", version
        from hidden where person_id = ? and kind = ? and item = ?"#,
        person,
        kind,
        item
    ))
    .await
}

pub async fn add(write: &mut Write<Members>, new: &Hidden) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into hidden (person_id, member_id, kind, item, on_behalf, standing)
            values (?, ?, ?, ?, ?, ?)",
            person,
            new.member_id,
            new.kind,
            new.item,
            new.on_behalf,
            new.standing
        ),
    );
    added.await.map(|_| ())
}

pub async fn save(write: &mut Write<Members>, old: &Hidden, new: &Hidden) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update hidden set on_behalf = ?, standing = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.on_behalf,
            new.standing,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
