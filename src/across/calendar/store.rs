//! The SQL of the addresses of calendars. They are the house's: the address leads to a member, and what it shows is what she
//! may see at that moment.

use super::model::Feed;
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{FeedId, PersonId},
};
use crate::platform::{
    audit::sha256,
    auth::area::Own,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};

/// Those of the member that stand.
pub async fn list(view: &View<Own>) -> Result<Vec<Feed>> {
    let member = view.member();
    view.all(query_as!(
        Feed,
        r#"select id, member_id, record_id as "record_id: PersonId", made_at as "made_at: Instant",
            ended_at as "ended_at: Instant", secret is not null as "has_secret!: bool", version
        from feed where member_id = ? and ended_at is null order by id"#,
        member
    ))
    .await
}

/// One of the member's own that stands.
pub async fn find(view: &View<Own>, id: FeedId) -> Result<Feed> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(crate::platform::error::Error::NotFound)
}

/// The one that a secret opens.
pub async fn by_secret(view: &View<Own>, secret: &str) -> Result<Option<Feed>> {
    let hashed = sha256(secret);
    view.maybe(query_as!(
        Feed,
        r#"select id, member_id, record_id as "record_id: PersonId", made_at as "made_at: Instant",
            ended_at as "ended_at: Instant", secret is not null as "has_secret!: bool", version
        from feed where secret = ? and ended_at is null"#,
        hashed
    ))
    .await
}

pub async fn add(write: &mut Write<Own>, new: &Feed, secret: &str) -> Result<()> {
    let hashed = sha256(secret);
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into feed (member_id, record_id, secret, made_at, ended_at)
            values (?, ?, ?, ?, ?)",
            new.member_id,
            new.record_id,
            hashed,
            new.made_at,
            new.ended_at
        ),
    );
    added.await.map(|_| ())
}

/// Ended: its secret is forgotten as well.
pub async fn end(write: &mut Write<Own>, old: &Feed) -> Result<()> {
    let new = old.ended(write.at());
    let saved = write.apply(
        Change::Edited(old, &new),
        query!(
            "update feed set ended_at = ?, secret = null, version = version + 1
            where id = ? and member_id = ? and version = ?",
            new.ended_at,
            old.id,
            old.member_id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
