//! Putting messages into the outbox, in the transaction of what they tell of, and taking those out
//! again that nobody wants any more.
//!
//! The Message-ID of a reminder is made from its key and that of a letter from chance: either is
//! kept with the row, so that it is the same on every try.

use super::LETTER;
use crate::base::{
    clock::Instant,
    ids::{MemberId, PersonId},
    reach::Email,
};
use crate::platform::{
    audit::sha256,
    auth::area::{Area, AreaName},
    config::Base,
    db::Write,
    error::Result,
    random,
};

/// What a reminder is about and for whom: for each there is one message, ever.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Key {
    pub kind: &'static str,
    pub item_kind: &'static str,
    pub item: i64,
    /// Which time of the item, and which reminder of that time.
    pub occurrence: String,
    pub member: MemberId,
    pub person: PersonId,
}

impl Key {
    /// The left side of its Message-ID (RFC 5322 (2008), section 3.6.4).
    fn id(&self) -> String {
        let Key { kind, item_kind, item, occurrence, member, person } = self;
        sha256(format!("{kind}\n{item_kind}\n{item}\n{occurrence}\n{member}\n{person}"))[..40]
            .into()
    }
}

/// What stands in a message.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    pub subject: String,
    pub body: String,
    pub html: String,
}

/// The link that stops such mail, and the token in it: the database keeps the token's SHA-256,
/// and forgets the link when the message is settled.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    pub token: String,
    pub link: String,
}

impl Stop {
    pub fn new(base: &Base) -> Stop {
        let token = random::hex(32);
        Stop { link: base.absolute(&format!("/mail/stop/{token}")), token }
    }
}

pub struct Reminder {
    pub key: Key,
    /// What its reader must reach at the moment of sending.
    pub area: AreaName,
    pub to: Email,
    pub text: Text,
    pub stop: Stop,
    /// When it is to leave.
    pub due: Instant,
    /// When it is of no more use.
    pub until: Option<Instant>,
}

impl<A: Area> Write<A> {
    /// A letter. In a record it is about that record.
    pub async fn mail(&mut self, base: &Base, to: &Email, text: (&str, &str)) -> Result<()> {
        let id = format!("{}@{}", random::hex(16), base.mail_domain());
        let (now, (subject, body)) = (self.at(), text);
        let person = Some(self.person()).filter(|it| *it != PersonId::default());
        let put = sqlx::query!(
            "insert into outbox (message_id, kind, person_id, recipient, subject, body, made_at, due_at)
            values (?, ?, ?, ?, ?, ?, ?, ?)",
            id,
            LETTER,
            person,
            to,
            subject,
            body,
            now,
            now
        );
        self.machinery(put).await.map(|_| ())
    }

    /// A reminder. False: its message was written before, and nothing is done.
    pub async fn remind(&self, base: &Base, it: &Reminder) -> Result<bool> {
        let id = format!("{}@{}", it.key.id(), base.mail_domain());
        let (now, area, token) = (self.at(), it.area.name(), sha256(&it.stop.token));
        let Key { kind, item_kind, item, occurrence, member, person } = &it.key;
        let put = sqlx::query!(
            "insert into outbox (message_id, kind, item_kind, item, occurrence, member_id, person_id,
                area, recipient, subject, body, html, stop_link, stop_token, made_at, due_at, until_at)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            on conflict do nothing",
            id,
            kind,
            item_kind,
            item,
            occurrence,
            member,
            person,
            area,
            it.to,
            it.text.subject,
            it.text.body,
            it.text.html,
            it.stop.link,
            token,
            now,
            it.due,
            it.until
        );
        Ok(self.machinery(put).await? == 1)
    }

    /// Takes back what waits of one kind for a member about a record: she does not want it.
    pub async fn withdraw(&self, kind: &str, member: MemberId, person: PersonId) -> Result<u64> {
        let now = self.at();
        let taken = sqlx::query!(
            "update outbox set state = 'withdrawn', settled_at = ?, body = '', html = null,
                stop_link = null, trouble = 'not wanted any more'
            where state = 'waiting' and kind = ? and member_id = ? and person_id = ?",
            now,
            kind,
            member,
            person
        );
        self.machinery(taken).await
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    fn key(item: i64, occurrence: &str, member: i64) -> Key {
        let (member, person) = (member.into(), 1.into());
        let occurrence = occurrence.to_owned();
        Key { kind: "task", item_kind: "task", item, occurrence, member, person }
    }

    #[test]
    fn five_thousand_keys_have_as_many_ids_and_each_the_same_one_again() {
        let all = |n: i64| (0..n).flat_map(|item| (1..=5).map(move |m| key(item, "due", m).id()));
        let ids: HashSet<String> = all(1000).collect();
        assert_eq!((ids.len(), all(1000).count()), (5000, 5000));
        assert!(all(1000).all(|it| ids.contains(&it)));
        assert_ne!(key(1, "2 due", 1).id(), key(12, " due", 1).id());
        assert_ne!(key(1, "1", 11).id(), key(1, "11", 1).id());
    }
}
