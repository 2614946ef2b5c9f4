//! All the SQL of cards. One that is hidden from the reader is not there; nor is the card of a
//! cover that is.

use super::model::{Card, Sort};
use crate::base::{
    change::Change,
    ids::{CardId, CoverId, MemberId},
    text::Line,
};
use crate::platform::{
    auth::area::Papers,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every card there ever was: those of insurance in front.
pub async fn list(view: &View<Papers>) -> Result<Vec<Card>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Card,
        r#"select id, person_id, title as "title: Line", kind as "kind: Sort",
            cover_id as "cover_id: CoverId", front, back,
            photographed_on as "photographed_on: Date",
            photographed_by as "photographed_by: MemberId", same_for,
            expires_on as "expires_on: Date", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from card
        where person_id = ?1
            and id not in (select item from hidden where kind = 'card' and member_id = ?2 and standing)
            and (cover_id is null or cover_id not in
                (select item from hidden where kind = 'cover' and member_id = ?2 and standing))
        order by kind desc, id"#,
        person,
        member
    ))
    .await
}

/// Those that are shown at a desk.
pub async fn standing(view: &View<Papers>) -> Result<Vec<Card>> {
    Ok(list(view).await?.into_iter().filter(|it| !it.struck).collect())
}

pub async fn find(view: &View<Papers>, id: CardId) -> Result<Card> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Papers>, new: &Card) -> Result<CardId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into card (person_id, title, kind, cover_id, front, back, photographed_on,
                photographed_by, same_for, expires_on, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.title,
            new.kind,
            new.cover_id,
            new.front,
            new.back,
            new.photographed_on,
            new.photographed_by,
            new.same_for,
            new.expires_on,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Papers>, old: &Card, new: &Card) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update card set title = ?, kind = ?, cover_id = ?, front = ?, back = ?,
                photographed_on = ?, photographed_by = ?, same_for = ?, expires_on = ?,
                struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.title,
            new.kind,
            new.cover_id,
            new.front,
            new.back,
            new.photographed_on,
            new.photographed_by,
            new.same_for,
            new.expires_on,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// What each is called, for the history.
pub async fn titles(view: &View<Papers>) -> Result<Vec<(CardId, String)>> {
    Ok(list(view).await?.into_iter().map(|it| (it.id, it.title.to_string())).collect())
}
