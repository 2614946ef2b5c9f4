//! A grant: proof that the one who asks has a role in this record, and that the role reaches
//! what the handler needs. Its fields are private and its one maker is the extractor, so no row
//! of a record is reached without it.
//!
//! No place in the record, or an area that the role does not see: "not found". Seen but not
//! changeable: "forbidden". Both are told in the record's history.

use super::{
    area::{Area, AreaName, Notes, Role},
    policy::{self, Level},
    session::{self, SignedIn},
};
use crate::base::{
    clock::Instant,
    ids::{MemberId, PathId, PersonId},
    zone::Zone,
};
use crate::platform::{
    audit::Report,
    db::{Door, Scope, View, Write},
    error::{Error, Result},
    house::House,
    web::{asked::Asked, page::Page, path},
};
use axum::{extract::FromRequestParts, http::request::Parts};
use std::marker::PhantomData;
use time::Date;

/// Leave to see an area.
pub struct See<A>(PhantomData<A>);
/// Leave to see and change it.
pub struct Change<A>(PhantomData<A>);

pub trait Leave: Send + Sync + 'static {
    type Area: Area;
    const NEEDS: Level;
}

impl<A: Area> Leave for See<A> {
    type Area = A;
    const NEEDS: Level = Level::See;
}

impl<A: Area> Leave for Change<A> {
    type Area = A;
    const NEEDS: Level = Level::Change;
}

pub struct Grant<L> {
    house: House,
    asked: Asked,
    signed: SignedIn,
    place: Place,
    leave: PhantomData<fn() -> L>,
}

/// A member's place in one record, with what every page says of the person.
pub(in crate::platform) struct Place {
    pub person: PersonId,
    pub membership: i64,
    pub role: Role,
    pub name: String,
    pub born: Date,
    pub zone: Zone,
}

impl<L: Leave> FromRequestParts<House> for Grant<L> {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, house: &House) -> Result<Self> {
        let Ok(asked) = Asked::from_request_parts(parts, house).await;
        let signed = session::find(&house.db, house.config.base(), &asked).await?;
        let signed = signed.ok_or(Error::SignedOut)?;
        let person = path::text(parts, house, PersonId::PARAM).await?;
        let person: PersonId = person.parse().map_err(|_| Error::NotFound)?;
        let place = place(house, person, signed.member).await?.ok_or(Error::NotFound)?;
        let grant = Grant { house: house.clone(), asked, signed, place, leave: PhantomData };
        let level = policy::level(grant.place.role, L::Area::NAME);
        if level < L::NEEDS {
            grant.refused().await;
            return Err(if level == Level::None { Error::NotFound } else { Error::Forbidden });
        }
        Ok(grant)
    }
}

async fn place(house: &House, person: PersonId, member: MemberId) -> Result<Option<Place>> {
    let found = sqlx::query!(
        r#"select m.id, m.role as "role: Role", p.name, p.born as "born: Date", p.zone as "zone: Zone"
        from membership m join person p on p.id = m.person_id
        where m.person_id = ? and m.member_id = ?"#,
        person,
        member
    )
    .fetch_optional(house.db.readers())
    .await?;
    Ok(found.map(|it| Place {
        person,
        membership: it.id,
        role: it.role,
        name: it.name,
        born: it.born,
        zone: it.zone,
    }))
}

impl<L: Leave> Grant<L> {
    pub async fn view(&self) -> Result<View<L::Area>> {
        self.house.db.view(self.scope()).await
    }

    /// The page every answer is shown on.
    pub fn page(&self, title: impl Into<String>) -> Page {
        Page::of_record(&self.house, &self.asked, &self.signed, &self.place, title.into())
    }

    pub fn person(&self) -> PersonId {
        self.place.person
    }

    pub fn member(&self) -> MemberId {
        self.signed.member
    }

    pub fn role(&self) -> Role {
        self.place.role
    }

    pub fn house(&self) -> &House {
        &self.house
    }

    /// The moment of the request.
    pub fn now(&self) -> Instant {
        self.house.clock.now()
    }

    /// The zone of the person cared for.
    pub fn zone(&self) -> &Zone {
        &self.place.zone
    }

    /// Today, where the person is.
    pub fn today(&self) -> Date {
        self.place.zone.day(self.now())
    }

    /// Whether the role also reaches another area: for a button that would lead there.
    pub fn may<M: Leave>(&self) -> bool {
        policy::allows(Some(self.place.role), M::Area::NAME, M::NEEDS)
    }

    /// Looks through the history of this record.
    pub async fn verify(&self) -> Result<Report> {
        let mut tx = self.house.db.readers().begin().await?;
        Report::read(&mut tx, self.place.person, None).await
    }

    /// A write that notes what was looked at or printed, in any role that may see it. Its area
    /// is `Notes`, so no other capability's store takes it.
    pub async fn note(&self) -> Result<Write<Notes>> {
        let write: Write<Notes> = self.house.db.write(self.scope(), Door::Member, None).await?;
        Ok(write.about(L::Area::NAME))
    }

    fn scope(&self) -> Scope {
        let Place { person, role, .. } = self.place;
        Scope { person, member: self.signed.member, role: Some(role) }
    }

    /// Tells the history that this was asked for and refused, once an hour for each area.
    async fn refused(&self) {
        let (chain, actor, area) = (self.place.person, self.signed.member, L::Area::NAME.name());
        let since = self.now().minus(time::Duration::hours(1));
        let told = sqlx::query_scalar!(
            "select count(*) from history
            where chain = ? and actor = ? and area = ? and action = 'refused' and at > ?",
            chain,
            actor,
            area,
            since
        );
        let told = told.fetch_one(self.house.db.readers()).await;
        if !matches!(told, Ok(0)) || L::Area::NAME == AreaName::House {
            return;
        }
        let told = async {
            let mut write = self.note().await?;
            write.did("refused", "membership", self.place.membership).await?;
            write.commit().await
        };
        if let Err(e) = told.await {
            tracing::warn!(error = ?e, "a refusal was not recorded");
        }
    }
}

impl<A: Area> Grant<Change<A>> {
    pub async fn write(&self) -> Result<Write<A>> {
        self.house.db.write(self.scope(), Door::Member, self.asked.key.clone()).await
    }
}
