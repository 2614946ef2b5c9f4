//! All the SQL of invitations.

use super::model::{Fate, Invitation};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{InvitationId, MemberId, PersonId},
    reach::Email,
    text::Line,
    zone::Zone,
};
use crate::platform::{
    audit::sha256,
    auth::area::{Members, Own, Role},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};

/// Every invitation into this record there ever was, the newest first.
pub async fn list(view: &View<Members>) -> Result<Vec<Invitation>> {
    let person = view.person();
    view.all(query_as!(
        Invitation,
        r#"select id, person_id, name as "name: Line", email as "email: Email",
            role as "role: Role", invited_by, expires_at as "expires_at: Instant",
            state as "state: Fate", accepted_by as "accepted_by: MemberId",
            token is not null as "has_link!: bool", on_behalf, version
        from invitation where person_id = ? order by id desc"#,
        person
    ))
    .await
}

pub async fn find(view: &View<Members>, id: InvitationId) -> Result<Invitation> {
    let person = view.person();
    view.one(query_as!(
        Invitation,
        r#"select id, person_id, name as "name: Line", email as "email: Email",
            role as "role: Role", invited_by, expires_at as "expires_at: Instant",
            state as "state: Fate", accepted_by as "accepted_by: MemberId",
            token is not null as "has_link!: bool", on_behalf, version
        from invitation where person_id = ? and id = ?"#,
        person,
        id
    ))
    .await
}

/// Into which record a link leads, and by which invitation.
pub async fn by_token(view: &View<Own>, token: &str) -> Result<Option<(PersonId, InvitationId)>> {
    let hashed = sha256(token);
    let found = view.maybe(query!("select person_id, id from invitation where token = ?", hashed));
    Ok(found.await?.map(|it| (it.person_id.into(), it.id.into())))
}

pub async fn add(write: &mut Write<Members>, new: &Invitation, token: &str) -> Result<()> {
    let person = write.person();
    let hashed = sha256(token);
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into invitation (person_id, name, email, role, invited_by, expires_at, token,
                state, accepted_by, on_behalf)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.name,
            new.email,
            new.role,
            new.invited_by,
            new.expires_at,
            hashed,
            new.state,
            new.accepted_by,
            new.on_behalf
        ),
    );
    added.await.map(|_| ())
}

pub async fn save(write: &mut Write<Members>, old: &Invitation, new: &Invitation) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update invitation set state = ?, accepted_by = ?, on_behalf = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.state,
            new.accepted_by,
            new.on_behalf,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// For whom each invitation was, for the history.
pub async fn titles(view: &View<Members>) -> Result<Vec<(InvitationId, String)>> {
    let all = list(view).await?.into_iter();
    Ok(all.map(|it| (it.id, it.name.to_string())).collect())
}

/// The names that stand on the page of a link: of the person, and of the one who invites.
pub struct Names {
    pub person: String,
    pub zone: Zone,
    pub inviter: String,
}

pub async fn names(view: &View<Members>, invitation: &Invitation) -> Result<Names> {
    let person = view.person();
    view.one(query_as!(
        Names,
        r#"select p.name as person, p.zone as "zone: Zone", m.name as inviter
        from person p join member m on m.id = ? where p.id = ?"#,
        invitation.invited_by,
        person
    ))
    .await
}
