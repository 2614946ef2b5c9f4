//! Devices that are signed in: a random 256-bit token in a cookie, its SHA-256 in the database.
//!
//! On a device the member calls her own a session ends after 30 days without use and after 90
//! days at most; on any other device after 12 hours without use and after 24 hours at most.

use crate::base::{
    clock::Instant,
    ids::{MemberId, SessionId},
    zone::Zone,
};
use crate::platform::{
    audit::sha256,
    config::Base,
    db::Db,
    error::Result,
    random,
    web::asked::{Asked, cookie},
};
use axum_extra::extract::cookie::Cookie;
use time::Duration;

/// How long a session lasts: without use, and at most.
fn limits(own_device: bool) -> (Duration, Duration) {
    match own_device {
        true => (Duration::days(30), Duration::days(90)),
        false => (Duration::hours(12), Duration::hours(24)),
    }
}

/// A member who is signed in, and the session that says so.
#[derive(Clone, Debug)]
pub struct SignedIn {
    pub session: SessionId,
    pub member: MemberId,
    pub name: String,
    pub zone: Zone,
}

/// The cookie's name. `__Host-` binds it to this very host, and is only taken over https.
fn name(base: &Base) -> String {
    if base.is_https() { "__Host-kinsheaf".into() } else { "kinsheaf".into() }
}

/// Who is asking, if the session still lasts.
pub async fn find(db: &Db, base: &Base, asked: &Asked) -> Result<Option<SignedIn>> {
    let Some(token) = asked.cookies.get(&name(base)).map(|it| sha256(it.value())) else {
        return Ok(None);
    };
    let found = sqlx::query!(
        r#"select s.id, s.member_id, s.own_device as "own_device: bool",
            s.began_at as "began_at: Instant", s.seen_at as "seen_at: Instant",
            m.name, m.zone as "zone: Zone"
        from session s join member m on m.id = s.member_id
        where s.token = ?"#,
        token
    )
    .fetch_optional(db.readers())
    .await?;
    let Some(it) = found else { return Ok(None) };
    let now = db.now();
    let (idle, most) = limits(it.own_device);
    if now.since(it.seen_at) > idle || now.since(it.began_at) > most {
        return Ok(None);
    }
    if now.since(it.seen_at) > Duration::minutes(10) {
        seen(db, it.id, now).await;
    }
    Ok(Some(SignedIn {
        session: it.id.into(),
        member: it.member_id.into(),
        name: it.name,
        zone: it.zone,
    }))
}

/// Notes that the device was used. Reading goes on when it cannot be noted (a full disk).
async fn seen(db: &Db, id: i64, now: Instant) {
    let noted = sqlx::query!("update session set seen_at = ? where id = ?", now, id);
    if let Err(e) = noted.execute(db.writer()).await {
        tracing::warn!(error = %e, "the use of a session was not noted");
    }
}

/// Begins a session and gives its cookie.
pub async fn begin(
    db: &Db,
    base: &Base,
    member: MemberId,
    own_device: bool,
    device: &str,
) -> Result<Cookie<'static>> {
    let (token, now) = (random::hex(32), db.now());
    let hashed = sha256(&token);
    sqlx::query!(
        "insert into session (token, member_id, own_device, device, began_at, seen_at)
        values (?, ?, ?, ?, ?, ?)",
        hashed,
        member,
        own_device,
        device,
        now,
        now
    )
    .execute(db.writer())
    .await?;
    let oldest = now.minus(Duration::days(90));
    sqlx::query!("delete from session where began_at < ?", oldest).execute(db.writer()).await?;
    let mut cookie = cookie(base, name(base), token);
    if own_device {
        cookie.set_max_age(limits(true).1);
    }
    Ok(cookie)
}

/// A session as its member sees it in the list of devices.
#[derive(Debug)]
pub struct Device {
    pub id: SessionId,
    pub device: String,
    pub own_device: bool,
    pub began_at: Instant,
    pub seen_at: Instant,
}

pub async fn list(db: &Db, member: MemberId) -> Result<Vec<Device>> {
    let found = sqlx::query_as!(
        Device,
        r#"select id, device, own_device as "own_device: bool",
            began_at as "began_at: Instant", seen_at as "seen_at: Instant"
        from session where member_id = ? order by seen_at desc, id desc"#,
        member
    )
    .fetch_all(db.readers())
    .await?;
    let now = db.now();
    let lasts = |it: &Device| {
        let (idle, most) = limits(it.own_device);
        now.since(it.seen_at) <= idle && now.since(it.began_at) <= most
    };
    Ok(found.into_iter().filter(lasts).collect())
}

/// Ends one of the member's own sessions. Whether there was one.
pub async fn end(db: &Db, member: MemberId, id: SessionId) -> Result<bool> {
    let ended = sqlx::query!("delete from session where id = ? and member_id = ?", id, member);
    Ok(ended.execute(db.writer()).await?.rows_affected() == 1)
}

/// Ends all sessions of a member but the one named.
pub async fn end_others(db: &Db, member: MemberId, but: SessionId) -> Result<()> {
    sqlx::query!("delete from session where member_id = ? and id <> ?", member, but)
        .execute(db.writer())
        .await?;
    Ok(())
}

/// The cookie that takes the session's cookie away.
pub fn gone(base: &Base) -> Cookie<'static> {
    crate::platform::web::asked::gone(base, name(base))
}
