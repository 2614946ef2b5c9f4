//! A grant: proof that the one who asks has a role in this record, and that the role reaches
//! what the handler needs. Its fields are private and its one maker is the extractor, so no row
//! of a record is reached without it.
//!
//! No place in the record, one that is paused or has ended, or an area that the place does not
//! reach: "not found". Seen but not changeable: "forbidden". A refusal to someone with a place is
//! told in the record's history.

use super::{
    area::{Area, AreaName, Notes, Role},
    lowered::Lowered,
    policy::{self, Level, Reach},
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
use axum::{
    extract::FromRequestParts,
    http::{StatusCode, request::Parts},
};
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
    pub version: i64,
    pub reach: Reach,
    pub name: String,
    pub born: Date,
    pub died: Option<Date>,
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
        let place = place(house, person, signed.member).await?;
        let grant = Grant { house: house.clone(), asked, signed, place, leave: PhantomData };
        let level = policy::level(grant.place.reach, L::Area::NAME);
        if level < L::NEEDS {
            grant.refused().await;
            return Err(if level == Level::None { Error::NotFound } else { Error::Forbidden });
        }
        Ok(grant)
    }
}

async fn place(house: &House, person: PersonId, member: MemberId) -> Result<Place> {
    let found = sqlx::query!(
        r#"select m.id, m.role as "role: Role", m.state, m.lowered, m.version, p.name,
            p.born as "born: Date", p.died_on as "died: Date", p.zone as "zone: Zone"
        from membership m join person p on p.id = m.person_id
        where m.person_id = ? and m.member_id = ?"#,
        person,
        member
    )
    .fetch_optional(house.db.readers())
    .await?;
    let it = found.ok_or(Error::NotFound)?;
    match it.state.as_str() {
        "standing" => {}
        "paused" => return Err(PAUSED),
        _ => return Err(ENDED),
    }
    Ok(Place {
        person,
        membership: it.id,
        version: it.version,
        reach: Reach { role: it.role, lowered: Lowered::from(it.lowered) },
        name: it.name,
        born: it.born,
        died: it.died,
        zone: it.zone,
    })
}

/// Whether a member may change an area of a record: asked before something large is read.
pub(in crate::platform) async fn may_change(
    house: &House,
    person: PersonId,
    member: MemberId,
    area: AreaName,
) -> Result<bool> {
    match place(house, person, member).await {
        Ok(place) => Ok(policy::level(place.reach, area) == Level::Change),
        Err(Error::NotFound | Error::Told { .. }) => Ok(false),
        Err(e) => Err(e),
    }
}

/// What a member is told whose place was taken while she was in it: she may have been typing.
const PAUSED: Error = Error::Told {
    status: StatusCode::NOT_FOUND,
    head: "Your place in this record is paused",
    says: "So there is nothing to see here, and nothing was kept. If you were typing: your browser's back button shows the page with your words, and you can copy them. Ask the person or a steward of the record.",
};
const ENDED: Error = Error::Told {
    status: StatusCode::NOT_FOUND,
    head: "Your place in this record has ended",
    says: "So there is nothing to see here, and nothing was kept. If you were typing: your browser's back button shows the page with your words, and you can copy them. The person or a steward of the record can invite you again.",
};

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
        self.place.reach.role
    }

    /// How far her place reaches.
    pub fn reach(&self) -> Reach {
        self.place.reach
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

    /// Whether her place also reaches another area: for a button that would lead there.
    pub fn may<M: Leave>(&self) -> bool {
        policy::allows(Some(self.place.reach), M::Area::NAME, M::NEEDS)
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

    /// Tells the history that this was opened, once an hour for each item. What may be read is read
    /// all the same where that cannot be written.
    pub async fn opened(&self, kind: &'static str, item: impl Into<i64>) {
        let (chain, actor, item) = (self.place.person, self.signed.member, item.into());
        let since = self.now().minus(time::Duration::hours(1));
        let told = sqlx::query_scalar!(
            "select count(*) from history where chain = ? and actor = ? and kind = ? and item = ?
                and action = 'opened' and at > ?",
            chain,
            actor,
            kind,
            item,
            since
        );
        if matches!(told.fetch_one(self.house.db.readers()).await, Ok(1..)) {
            return;
        }
        let told = async {
            let mut write = self.note().await?;
            write.did("opened", kind, item).await?;
            write.commit().await
        };
        if let Err(e) = told.await {
            tracing::warn!(error = ?e, "an opening was not recorded");
        }
    }

    fn scope(&self) -> Scope {
        let Place { person, reach, .. } = self.place;
        Scope { person, member: self.signed.member, reach: Some(reach) }
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
    /// Begins a write. Her place is looked at again inside it: if it was changed since, the page
    /// is asked again, and answers as her place is now.
    pub async fn write(&self) -> Result<Write<A>> {
        let write = self.house.db.write(self.scope(), Door::Member, self.asked.key.clone()).await?;
        let Place { person, membership, version, .. } = self.place;
        let same = write.values(sqlx::query_scalar!(
            "select count(*) from membership where person_id = ? and id = ? and version = ?",
            person,
            membership,
            version
        ));
        if same.await? == [1] { Ok(write) } else { Err(Error::Stale) }
    }
}
