//! All the SQL of members. Their places in a record are in `places`.

use super::model::Member;
pub use super::places::store::add as place;
use crate::base::{
    change::Change,
    clock::Instant,
    ids::MemberId,
    reach::{Email, Phone},
    text::Line,
    zone::Zone,
};
use crate::platform::{
    auth::area::Own,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as, query_scalar};

pub async fn find(view: &View<Own>, id: MemberId) -> Result<Member> {
    view.one(query_as!(
        Member,
        r#"select id, name as "name: Line", email as "email: Email", phone as "phone: Phone",
            zone as "zone: Zone", password, version
        from member where id = ?"#,
        id
    ))
    .await
}

pub async fn by_email(view: &View<Own>, email: &Email) -> Result<Option<Member>> {
    view.maybe(query_as!(
        Member,
        r#"select id, name as "name: Line", email as "email: Email", phone as "phone: Phone",
            zone as "zone: Zone", password, version
        from member where email = ?"#,
        email
    ))
    .await
}

/// Whether anyone signs in here yet.
pub async fn anyone(view: &View<Own>) -> Result<bool> {
    let count = view.values(query_scalar!("select count(*) from member")).await?;
    Ok(count.first().is_some_and(|it| *it > 0))
}

pub async fn add(write: &mut Write<Own>, new: &Member) -> Result<MemberId> {
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into member (name, email, phone, zone, password) values (?, ?, ?, ?, ?)",
            new.name,
            new.email,
            new.phone,
            new.zone,
            new.password
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Own>, old: &Member, new: &Member) -> Result<()> {
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update member set name = ?, email = ?, phone = ?, zone = ?, password = ?,
                version = version + 1
            where id = ? and version = ?",
            new.name,
            new.email,
            new.phone,
            new.zone,
            new.password,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// When links for a new password were made for this member since the last sign-in before `at`.
pub async fn resets_since_sign_in(view: &View<Own>, member: MemberId) -> Result<Vec<Instant>> {
    view.values(query_scalar!(
        r#"select at as "at: Instant" from history
        where chain = 0 and kind = 'member' and item = ? and action in ('reset link made', 'reset')
            and seq > coalesce((select max(seq) from history where chain = 0 and kind = 'member'
                and item = ? and action = 'signed in'), 0)
        order by seq"#,
        member,
        member
    ))
    .await
}
