//! All the SQL of places in a record.

use super::super::model::{Membership, State};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{MemberId, MembershipId},
    reach::Phone,
    zone::Zone,
};
use crate::platform::{
    auth::{
        area::{Members, Role},
        lowered::Lowered,
    },
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};

/// Every place there is or was in this record.
pub async fn list(view: &View<Members>) -> Result<Vec<Membership>> {
    let person = view.person();
    view.all(query_as!(
        Membership,
        r#"select id, person_id, member_id, role as "role: Role", state as "state: State",
            turned_at as "turned_at: Instant", lowered, on_behalf, version
        from membership where person_id = ? order by id"#,
        person
    ))
    .await
}

/// The place a member has, or once had, in this record.
pub async fn of_member(view: &View<Members>, member: MemberId) -> Result<Option<Membership>> {
    Ok(list(view).await?.into_iter().find(|it| it.member_id == member))
}

/// Gives a member a place in the record at hand.
pub async fn add(write: &mut Write<Members>, new: &Membership) -> Result<MembershipId> {
    let person = write.person();
    let lowered = new.lowered.to_string();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into membership (person_id, member_id, role, state, turned_at, lowered, on_behalf)
            values (?, ?, ?, ?, ?, ?, ?)",
            person,
            new.member_id,
            new.role,
            new.state,
            new.turned_at,
            lowered,
            new.on_behalf
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Members>, old: &Membership, new: &Membership) -> Result<()> {
    let person = write.person();
    let lowered = new.lowered.to_string();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update membership set role = ?, state = ?, turned_at = ?, lowered = ?,
                on_behalf = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.role,
            new.state,
            new.turned_at,
            lowered,
            new.on_behalf,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// A member with her place, as the family list shows her.
pub struct Relative {
    pub place: MembershipId,
    pub id: MemberId,
    pub name: String,
    pub email: String,
    pub phone: Option<Phone>,
    pub zone: Zone,
    pub role: Role,
    pub state: State,
    pub turned_at: Option<Instant>,
    pub lowered: Lowered,
}

/// Everyone who has, or once had, a place in this record.
pub async fn family(view: &View<Members>) -> Result<Vec<Relative>> {
    let person = view.person();
    view.all(query_as!(
        Relative,
        r#"select s.id as place, m.id, m.name, m.email, m.phone as "phone: Phone",
            m.zone as "zone: Zone", s.role as "role: Role", s.state as "state: State",
            s.turned_at as "turned_at: Instant", s.lowered
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? order by s.id"#,
        person
    ))
    .await
}

/// One member with a place that has not ended.
pub async fn relative(view: &View<Members>, place: MembershipId) -> Result<Relative> {
    let found = family(view).await?.into_iter().find(|it| it.place == place);
    found.filter(|it| it.state != State::Ended).ok_or(Error::NotFound)
}

/// The names of all places there ever were, for the history.
pub async fn titles(view: &View<Members>) -> Result<Vec<(MembershipId, String)>> {
    let all = family(view).await?.into_iter();
    Ok(all.map(|it| (it.place, it.name)).collect())
}
