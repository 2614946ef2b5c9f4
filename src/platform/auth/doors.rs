//! The doors beside a record's own: signed in but in no record, not signed in, and at the
//! command line. Each gives views and writes of the house itself.

pub use super::entering::Record;
use super::{
    area::{Area, AreaName, Notes, Own, Role},
    policy::Reach,
    session::{self, SignedIn},
};
use crate::base::ids::{MemberId, PersonId};
use crate::platform::{
    audit::{self, Report},
    db::{Db, Door, Scope, View, Write},
    error::{Error, Result},
    house::House,
    web::{asked::Asked, page::Page},
};
use axum::{extract::FromRequestParts, http::request::Parts};

fn house_scope(member: MemberId) -> Scope {
    Scope { person: PersonId::default(), member, reach: None }
}

/// Signed in, in no record: own settings, and the list of records shared.
pub struct Account {
    pub house: House,
    pub asked: Asked,
    pub signed: SignedIn,
}

impl FromRequestParts<House> for Account {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, house: &House) -> Result<Self> {
        let Ok(asked) = Asked::from_request_parts(parts, house).await;
        let signed = session::find(&house.db, house.config.base(), &asked).await?;
        let signed = signed.ok_or(Error::SignedOut)?;
        Ok(Account { house: house.clone(), asked, signed })
    }
}

impl Account {
    pub fn member(&self) -> MemberId {
        self.signed.member
    }

    pub async fn view(&self) -> Result<View<Own>> {
        self.house.db.view(house_scope(self.member())).await
    }

    pub async fn write(&self) -> Result<Write<Own>> {
        let scope = house_scope(self.member());
        self.house.db.write(scope, Door::Member, self.asked.key.clone()).await
    }

    pub fn page(&self, title: impl Into<String>) -> Page {
        Page::of_account(&self.house, &self.asked, &self.signed, title.into())
    }
}

/// Not signed in: sign-in, set-up, a new password.
pub struct Visitor {
    pub house: House,
    pub asked: Asked,
}

impl FromRequestParts<House> for Visitor {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, house: &House) -> Result<Self> {
        let Ok(asked) = Asked::from_request_parts(parts, house).await;
        Ok(Visitor { house: house.clone(), asked })
    }
}

impl Visitor {
    pub async fn view(&self) -> Result<View<Own>> {
        self.house.db.view(house_scope(MemberId::default())).await
    }

    /// A write by someone who has just proved to be this member (zero: no member yet).
    pub async fn write_as(&self, member: MemberId) -> Result<Write<Own>> {
        self.house.db.write(house_scope(member), Door::Visitor, self.asked.key.clone()).await
    }

    pub fn page(&self, title: impl Into<String>) -> Page {
        Page::of_visitor(&self.house, &self.asked, title.into())
    }
}

/// At the command line, on the machine that holds the data.
pub struct Operator(Db);

impl Operator {
    pub fn new(db: Db) -> Operator {
        Operator(db)
    }

    pub async fn view(&self) -> Result<View<Own>> {
        self.0.view(house_scope(MemberId::default())).await
    }

    pub async fn write(&self) -> Result<Write<Own>> {
        self.0.write(house_scope(MemberId::default()), Door::Operator, None).await
    }

    /// A write as a member would make it: for the demo's invented family and for tests, so that
    /// their histories are true ones.
    pub async fn write_for<A: Area>(
        &self,
        person: PersonId,
        member: MemberId,
        role: Role,
    ) -> Result<Write<A>> {
        let scope = Scope { person, member, reach: Some(Reach::of(role)) };
        self.0.write(scope, Door::Member, None).await
    }

    /// A write in the house itself as this member would make it: signing in, own settings.
    pub async fn write_as(&self, member: MemberId, door: Door) -> Result<Write<Own>> {
        self.0.write(house_scope(member), door, None).await
    }

    /// A note of what a member looked at or printed, in the area of the essentials.
    pub async fn note_for(
        &self,
        person: PersonId,
        member: MemberId,
        role: Role,
    ) -> Result<Write<Notes>> {
        let write = self.write_for::<Notes>(person, member, role).await?;
        Ok(write.about(AreaName::Essentials))
    }

    /// How many entries the history of one person (zero: the house) has.
    pub async fn entries(&self, chain: PersonId) -> Result<i64> {
        audit::length(&mut *self.0.readers().acquire().await?, chain).await
    }

    /// Every chain there must be.
    pub async fn chains(&self) -> Result<Vec<PersonId>> {
        audit::chains(&mut *self.0.readers().acquire().await?).await
    }

    pub async fn verify(&self, chain: PersonId, head: Option<&str>) -> Result<Report> {
        let mut tx = self.0.readers().begin().await?;
        Report::read(&mut tx, chain, head).await
    }
}

impl View<Own> {
    /// The same snapshot in one person's record: for a link that leads into it.
    pub fn in_record<A: Area>(&self, person: PersonId, member: MemberId) -> Result<View<A>> {
        self.moved(person, member)
    }
}

impl Write<Own> {
    /// The same write, going on in one person's record as this member: set-up makes the first.
    pub fn in_record<A: Area>(&self, person: PersonId, member: MemberId) -> Result<Write<A>> {
        self.moved(person, member)
    }
}
