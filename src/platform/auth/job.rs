//! The door of the house's own work: nobody is at a page, and what is done is done for members, as
//! far as the place of each reaches.
//!
//! Who gets anything is asked anew each time: a place that is paused or has ended is not among
//! them from that instant, and about someone who has died nobody is.

use super::{
    area::{Own, Role},
    lowered::Lowered,
    policy::Reach,
};
use crate::base::{
    ids::{MemberId, PersonId},
    reach::Email,
    zone::Zone,
};
use crate::platform::{
    db::{Db, Door, Scope, View, Write},
    error::Result,
};

pub struct Job(Db);

/// A member whose place stands, in the record of someone who lives.
#[derive(Clone, Debug)]
pub struct Recipient {
    pub member: MemberId,
    pub name: String,
    pub email: Email,
    pub zone: Zone,
    pub reach: Reach,
    pub person: PersonId,
    /// The name of the person the record is about, and where she lives.
    pub whose: String,
    pub whose_zone: Zone,
    /// Whether mail may name things: the record's own setting.
    pub names: bool,
}

impl Recipient {
    /// What mail calls the person.
    pub fn first_name(&self) -> &str {
        self.whose.split_whitespace().next().unwrap_or(&self.whose)
    }
}

impl Job {
    pub fn new(db: Db) -> Job {
        Job(db)
    }

    /// Everyone who may be reminded of anything.
    pub async fn recipients(&self) -> Result<Vec<Recipient>> {
        let found = sqlx::query!(
            r#"select m.id, m.name, m.email as "email: Email", m.zone as "zone: Zone",
                s.role as "role: Role", s.lowered, p.id as person, p.name as whose,
                p.zone as "whose_zone: Zone", p.mail_says
            from membership s join member m on m.id = s.member_id
            join person p on p.id = s.person_id
            where s.state = 'standing' and p.died_on is null order by p.id, m.id"#
        );
        let found = found.fetch_all(self.0.readers()).await?.into_iter();
        Ok(found
            .map(|it| Recipient {
                member: it.id.into(),
                name: it.name,
                email: it.email,
                zone: it.zone,
                reach: Reach { role: it.role, lowered: Lowered::from(it.lowered) },
                person: it.person.into(),
                whose: it.whose,
                whose_zone: it.whose_zone,
                names: it.mail_says == "names",
            })
            .collect())
    }

    /// The record as this member sees it: `area` gives what her place reaches.
    pub async fn view(&self, of: &Recipient) -> Result<View<Own>> {
        let Recipient { person, member, reach, .. } = *of;
        self.0.view(Scope { person, member, reach: Some(reach) }).await
    }

    /// The house itself.
    pub async fn house(&self) -> Result<View<Own>> {
        self.0.view(house()).await
    }

    /// A write of the house's own, which keeps nobody's record: only machinery.
    pub async fn write(&self) -> Result<Write<Own>> {
        self.0.write(house(), Door::System, None).await
    }
}

fn house() -> Scope {
    Scope { person: PersonId::default(), member: MemberId::default(), reach: None }
}
