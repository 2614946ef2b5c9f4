//! The SQL of the outbox beside what is written into it: what is due, whether it is still wanted,
//! what became of it, and what was given up.

use super::{LETTER, writing::Key};
use crate::base::{
    clock::Instant,
    ids::{MemberId, PersonId},
};
use crate::platform::{
    auth::{
        area::{AreaName, Role},
        lowered::Lowered,
        policy::{self, Level, Reach},
    },
    db::{Db, View},
    error::Result,
};
use time::Duration;

/// A message that is to be handed over.
#[derive(Clone, Debug)]
pub struct Waiting {
    pub id: i64,
    pub message_id: String,
    pub recipient: String,
    pub subject: String,
    pub body: String,
    pub html: Option<String>,
    pub stop_link: Option<String>,
    pub tries: i64,
    pub made_at: Instant,
}

/// How many are read in one go.
const BATCH: i64 = 100;
/// How long a row is kept once nothing more will become of it: so long its key mails nothing twice.
const KEPT: Duration = Duration::days(400);

/// What is due now. What was made later than now, or waits for longer than the longest pause (and,
/// untried, than the longest quiet hours), was put off by a clock that has been set back since: it
/// is due too.
pub(super) async fn due(db: &Db, now: Instant) -> Result<Vec<Waiting>> {
    let (beyond, quiet) = (now.plus(super::retry::LONGEST), now.plus(Duration::hours(25)));
    let found = sqlx::query_as!(
        Waiting,
        r#"select id, message_id, recipient, subject, body, html, stop_link, tries,
            made_at as "made_at: Instant"
        from outbox where state = 'waiting' and (due_at <= ?1 or made_at > ?1
            or due_at > case when tries > 0 then ?2 else ?3 end)
        order by due_at, id limit ?4"#,
        now,
        beyond,
        quiet,
        BATCH
    );
    Ok(found.fetch_all(db.readers()).await?)
}

/// Withdraws what is of no more use, and what is for a place that does not stand or about someone
/// who has died. Letters stay: someone pressed a button for them.
pub(super) async fn withdraw_unwanted(db: &Db, now: Instant) -> Result<()> {
    let unwanted = sqlx::query_scalar!(
        "select count(*) from outbox o where state = 'waiting' and kind <> ?1 and (until_at <= ?2
            or not exists (select 1 from membership s join person p on p.id = s.person_id
                where s.person_id = o.person_id and s.member_id = o.member_id
                    and s.state = 'standing' and p.died_on is null))",
        LETTER,
        now
    );
    if unwanted.fetch_one(db.readers()).await? == 0 {
        return Ok(());
    }
    sqlx::query!(
        "update outbox set state = 'withdrawn', settled_at = ?2, body = '', html = null,
            stop_link = null, trouble = case when until_at <= ?2 then 'over before it could be sent'
                else 'the place does not stand, or the person has died' end
        where state = 'waiting' and kind <> ?1 and (until_at <= ?2
            or not exists (select 1 from membership s join person p on p.id = s.person_id
                where s.person_id = outbox.person_id and s.member_id = outbox.member_id
                    and s.state = 'standing' and p.died_on is null))",
        LETTER,
        now
    )
    .execute(db.writer())
    .await?;
    Ok(())
}

/// Whether a message may go at this moment: it still waits, and its reader may still know of it.
/// Else it is withdrawn here.
pub(super) async fn is_wanted(db: &Db, id: i64, now: Instant) -> Result<bool> {
    let found = sqlx::query!(
        r#"select o.kind, o.state as outbox_state, o.area, m.role as "role?: Role", m.lowered as "lowered?",
            m.state as "state?", p.died_on as "died?",
            exists (select 1 from hidden x where x.person_id = o.person_id and x.member_id = o.member_id
                and x.standing and x.kind = o.item_kind and x.item = o.item) as "hidden!: bool"
        from outbox o
        left join membership m on m.person_id = o.person_id and m.member_id = o.member_id
        left join person p on p.id = o.person_id
        where o.id = ?"#,
        id
    );
    let Some(it) = found.fetch_optional(db.readers()).await? else { return Ok(false) };
    if it.outbox_state != "waiting" {
        return Ok(false);
    }
    let reaches = it.role.is_some_and(|role| {
        let reach = Reach { role, lowered: Lowered::from(it.lowered.unwrap_or_default()) };
        let area = AreaName::ALL.into_iter().find(|area| area.name() == it.area);
        area.is_none_or(|area| policy::level(reach, area) >= Level::See)
    });
    let stands = it.state.as_deref() == Some("standing") && it.died.is_none();
    if it.kind == LETTER || (stands && reaches && !it.hidden) {
        return Ok(true);
    }
    settle(db, id, ("withdrawn", "not for this member any more"), now).await?;
    Ok(false)
}

/// Notes that a message is settled, and forgets what was written in it.
pub(super) async fn settle(
    db: &Db,
    id: i64,
    (state, trouble): (&str, &str),
    now: Instant,
) -> Result<()> {
    sqlx::query!(
        "update outbox set state = ?, settled_at = ?, trouble = ?, body = '', html = null,
            stop_link = null, tries = tries + (? <> 'withdrawn')
        where id = ? and state = 'waiting'",
        state,
        now,
        trouble,
        state,
        id
    )
    .execute(db.writer())
    .await?;
    Ok(())
}

pub(super) async fn put_off(db: &Db, id: i64, due: Instant, trouble: &str) -> Result<()> {
    sqlx::query!(
        "update outbox set due_at = ?, trouble = ?, tries = tries + 1 where id = ? and state = 'waiting'",
        due,
        trouble,
        id
    )
    .execute(db.writer())
    .await?;
    Ok(())
}

/// Forgets rows that were settled long ago.
pub(super) async fn forget(db: &Db, now: Instant) -> Result<()> {
    let before = now.minus(KEPT);
    sqlx::query!("delete from outbox where state <> 'waiting' and settled_at < ?", before)
        .execute(db.writer())
        .await?;
    Ok(())
}

/// A message that was given up.
#[derive(Clone, Debug)]
pub struct GivenUp {
    pub id: i64,
    pub kind: String,
    pub member: Option<MemberId>,
    pub person: Option<PersonId>,
    pub recipient: String,
    pub at: Instant,
    pub trouble: String,
    /// Whether mail to the same address was taken since.
    pub reached_since: bool,
}

impl<A> View<A> {
    /// What was given up since a moment, the newest first: about the record at hand, or in no record
    /// what was for the member herself.
    pub async fn given_up(&self, since: Instant) -> Result<Vec<GivenUp>> {
        let (person, member) = (self.person(), self.member());
        self.all(sqlx::query_as!(
            GivenUp,
            r#"select id, kind, member_id as "member: MemberId", person_id as "person: PersonId",
                recipient, settled_at as "at!: Instant", coalesce(trouble, '') as "trouble!: String",
                exists (select 1 from outbox s where s.recipient = o.recipient and s.state = 'sent'
                    and s.settled_at > o.settled_at) as "reached_since!: bool"
            from outbox o
            where state = 'given up' and settled_at > ?1
                and (?2 <> 0 and person_id = ?2 or ?2 = 0 and recipient = (select email from member where id = ?3))
            order by settled_at desc, id desc limit 100"#,
            since,
            person,
            member
        ))
        .await
    }

    /// Whether the message of a reminder was written before.
    pub async fn is_written(&self, key: &Key) -> Result<bool> {
        let Key { kind, item_kind, item, occurrence, member, person } = key;
        let count = self.values(sqlx::query_scalar!(
            "select count(*) from outbox where kind = ? and item_kind = ? and item = ?
                and occurrence = ? and member_id = ? and person_id = ? and kind <> 'letter'",
            kind,
            item_kind,
            item,
            occurrence,
            member,
            person
        ));
        Ok(count.await?.first().is_some_and(|it| *it > 0))
    }

    /// How much waits in the record at hand.
    pub async fn mail_waiting(&self) -> Result<i64> {
        let person = self.person();
        let count = self.values(sqlx::query_scalar!(
            "select count(*) from outbox where state = 'waiting' and person_id = ?",
            person
        ));
        Ok(count.await?.pop().unwrap_or(0))
    }

    /// Whose mail a link stops: which member, which record, which kind.
    pub async fn stopped_by(&self, token: &str) -> Result<Option<(MemberId, PersonId, String)>> {
        let token = crate::platform::audit::sha256(token);
        let found = self.maybe(sqlx::query!(
            r#"select member_id as "member!: MemberId", person_id as "person!: PersonId", kind
            from outbox where stop_token = ? and member_id is not null and person_id is not null"#,
            token
        ));
        Ok(found.await?.map(|it| (it.member, it.person, it.kind)))
    }
}
