//! Entering and leaving: what sign-in does with cookies and devices.

use super::{
    area::{Area, AreaName, Role},
    doors::{Account, Visitor},
    lowered::Lowered,
    policy::{self, Level, Reach},
    session,
    throttle::Attempt,
};
use crate::base::{
    day,
    ids::{MemberId, PersonId},
    reach::Email,
};
use crate::platform::{
    audit::sha256,
    db::{Committed, Write},
    error::{Error, Result},
    random,
    web::{
        answer::Answer,
        asked::cookie,
        layout,
        urls::{self, Address},
    },
};
use time::Date;

/// The cookie that says: this device has signed in to an account before.
const DEVICE: &str = "kinsheaf-device";

impl Visitor {
    /// Refuses for a while after too many tries.
    pub async fn may_try(&self, email: &Email) -> Result<Attempt> {
        let known_device = self.knows(email).await?;
        let attempt =
            Attempt { account: email.to_string(), address: self.asked.client, known_device };
        let checked = self.house.throttle.check(&attempt, self.house.clock.now());
        checked.map(|()| attempt).map_err(|wait| Error::Wait(wait.0))
    }

    async fn knows(&self, email: &Email) -> Result<bool> {
        let token = self.asked.cookies.get(DEVICE).map(|it| sha256(it.value()));
        let found = sqlx::query_scalar!(
            "select count(*) from known_device d join member m on m.id = d.member_id
            where d.token = ? and m.email = ?",
            token,
            email
        );
        Ok(found.fetch_one(self.house.db.readers()).await? > 0)
    }

    /// Begins a session for a member whose sign-in was just kept in the history.
    pub async fn enter(
        &self,
        kept: Committed,
        member: MemberId,
        own_device: bool,
        to: Address,
    ) -> Result<Answer> {
        let (db, base) = (&self.house.db, self.house.config.base());
        let session = session::begin(db, base, member, own_device, &self.asked.agent).await?;
        let (token, now) = (random::hex(32), db.now());
        let hashed = sha256(&token);
        sqlx::query!(
            "insert into known_device (token, member_id, since) values (?, ?, ?)",
            hashed,
            member,
            now
        )
        .execute(db.writer())
        .await?;
        let mut device = cookie(base, DEVICE.into(), token);
        device.set_max_age(time::Duration::days(400));
        Ok(kept.then(to).with(session).with(device))
    }
}

impl Account {
    /// Slows guessing at the present password from a device that is signed in.
    pub fn may_try(&self, email: &Email) -> Result<()> {
        let attempt =
            Attempt { account: email.to_string(), address: self.asked.client, known_device: true };
        let checked = self.house.throttle.check(&attempt, self.house.clock.now());
        checked.map_err(|wait| Error::Wait(wait.0))
    }

    /// Ends this session.
    pub async fn leave(&self, kept: Committed) -> Result<Answer> {
        session::end(&self.house.db, self.member(), self.signed.session).await?;
        Ok(kept.then(urls::sign_in()).with(session::gone(self.house.config.base())))
    }

    /// The records this member shares in.
    pub async fn records(&self) -> Result<Vec<Record>> {
        let member = self.member();
        let found = sqlx::query!(
            r#"select p.id, p.name, p.born as "born: Date", p.died_on as "died: Date",
                m.role as "role: Role", m.lowered
            from membership m join person p on p.id = m.person_id
            where m.member_id = ? and m.state = 'standing' order by p.id"#,
            member
        );
        let found = found.fetch_all(self.house.db.readers()).await?;
        Ok((found.into_iter())
            .map(|it| Record {
                person: it.id.into(),
                name: it.name,
                born: day::words(it.born),
                died: it.died.map(day::words),
                reach: Reach { role: it.role, lowered: Lowered::from(it.lowered) },
            })
            .collect())
    }
}

impl<A: Area> Write<A> {
    /// Ends every session of a member, in the transaction that is the reason for it.
    pub async fn end_sessions(&mut self, member: MemberId) -> Result<()> {
        let ended = sqlx::query!("delete from session where member_id = ?", member);
        self.machinery(ended).await.map(|_| ())
    }
}

/// One record in the list of those shared.
pub struct Record {
    pub person: PersonId,
    pub name: String,
    pub born: String,
    pub died: Option<String>,
    pub reach: Reach,
}

impl Record {
    /// The first page of it that the member may open; none where everything was lowered.
    pub fn front(&self) -> Option<Address> {
        let first = layout::areas(self.reach).into_iter().next()?;
        Some(Address::House(first.address.path("", self.person)))
    }

    pub fn has_sheet(&self) -> bool {
        policy::level(self.reach, AreaName::Essentials) >= Level::See
    }
}
