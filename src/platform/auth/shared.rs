//! The records that a member shares, each with how far her place reaches: for what looks into several at once, such as her
//! calendar. A place that is paused or has ended is not among them.

use super::{
    area::{Area, Role},
    doors::Visitor,
    grant::{Grant, Leave},
    lowered::Lowered,
    policy::{self, Level, Reach},
};
use crate::base::{
    ids::{MemberId, PersonId},
    zone::Zone,
};
use crate::platform::{
    db::{Db, Scope, View},
    error::Result,
    house::House,
};
use time::Date;

pub struct Shared {
    pub person: PersonId,
    pub name: String,
    pub zone: Zone,
    pub died: Option<Date>,
    member: MemberId,
    reach: Reach,
}

impl Shared {
    async fn of(db: &Db, member: MemberId) -> Result<Vec<Shared>> {
        let found = sqlx::query!(
            r#"select p.id as "id: PersonId", p.name, p.zone as "zone: Zone",
                p.died_on as "died: Date", m.role as "role: Role", m.lowered
            from membership m join person p on p.id = m.person_id
            where m.member_id = ? and m.state = 'standing' order by p.id"#,
            member
        );
        let found = found.fetch_all(db.readers()).await?;
        Ok((found.into_iter())
            .map(|it| Shared {
                person: it.id,
                name: it.name,
                zone: it.zone,
                died: it.died,
                member,
                reach: Reach { role: it.role, lowered: Lowered::from(it.lowered) },
            })
            .collect())
    }

    /// A look into it, as far as the member's place reaches; none where it does not.
    pub async fn view<A: Area>(&self, house: &House) -> Result<Option<View<A>>> {
        if !policy::allows(Some(self.reach), A::NAME, Level::See) {
            return Ok(None);
        }
        let Shared { person, member, reach, .. } = *self;
        house.db.view(Scope { person, member, reach: Some(reach) }).await.map(Some)
    }
}

impl<L: Leave> Grant<L> {
    /// The reader's other records.
    pub async fn others(&self) -> Result<Vec<Shared>> {
        let mut all = Shared::of(&self.house().db, self.member()).await?;
        all.retain(|it| it.person != self.person());
        Ok(all)
    }
}

impl Visitor {
    /// Those of a member who has just been known by a secret of hers.
    pub async fn records_of(&self, member: MemberId) -> Result<Vec<Shared>> {
        Shared::of(&self.house.db, member).await
    }
}
