//! Links that do one thing until they expire: set up the house, choose a new password, enter the
//! demo. The token is in the link only; the database keeps its SHA-256.

use super::area::Area;
use crate::base::{clock::Instant, ids::MemberId};
use crate::platform::{
    audit::sha256,
    db::{Db, Write},
    error::{Error, Result},
    random,
};
use time::Duration;

#[derive(Clone, Copy, Debug, PartialEq, Eq, sqlx::Type)]
#[sqlx(rename_all = "lowercase")]
pub enum Purpose {
    Setup,
    Reset,
    Demo,
}

/// A link that still works.
pub struct Link {
    token: String,
    pub member: Option<MemberId>,
}

/// Makes a link and gives its token.
pub async fn make(
    db: &Db,
    purpose: Purpose,
    member: Option<MemberId>,
    lasts: Duration,
) -> Result<String> {
    let token = random::hex(32);
    let (hashed, expires) = (sha256(&token), db.now().plus(lasts));
    sqlx::query!(
        "insert into link (token, purpose, member_id, expires_at) values (?, ?, ?, ?)",
        hashed,
        purpose,
        member,
        expires
    )
    .execute(db.writer())
    .await?;
    Ok(token)
}

/// Makes a link in the transaction of what tells of it, and gives its token.
pub async fn prepare<A: Area>(
    write: &Write<A>,
    purpose: Purpose,
    member: MemberId,
    lasts: Duration,
) -> Result<String> {
    let token = random::hex(32);
    let (hashed, expires) = (sha256(&token), write.at().plus(lasts));
    let made = sqlx::query!(
        "insert into link (token, purpose, member_id, expires_at) values (?, ?, ?, ?)",
        hashed,
        purpose,
        member,
        expires
    );
    write.machinery(made).await?;
    Ok(token)
}

/// The link, unless it was used, has expired, or never was.
pub async fn find(db: &Db, purpose: Purpose, token: &str) -> Result<Link> {
    let token = sha256(token);
    let found = sqlx::query!(
        r#"select member_id as "member: MemberId", expires_at as "expires: Instant" from link
        where token = ? and purpose = ? and used_at is null"#,
        token,
        purpose
    )
    .fetch_optional(db.readers())
    .await?;
    let lasts = found.filter(|it| db.now() < it.expires).ok_or(Error::Spent)?;
    Ok(Link { token, member: lasts.member })
}

impl Link {
    /// Uses the link up, in the transaction of what it does: of two at once, one is too late.
    pub async fn use_up<A: Area>(self, write: &Write<A>) -> Result<()> {
        let now = write.at();
        let used = sqlx::query!(
            "update link set used_at = ? where token = ? and used_at is null",
            now,
            self.token
        );
        if write.machinery(used).await? == 1 { Ok(()) } else { Err(Error::Spent) }
    }
}

/// Forgets the unused links of a purpose: a newer one replaces them.
pub async fn forget(db: &Db, purpose: Purpose) -> Result<()> {
    sqlx::query!("delete from link where purpose = ? and used_at is null", purpose)
        .execute(db.writer())
        .await?;
    Ok(())
}
