//! Mail: written into the outbox in the transaction of what it tells of, and carried afterwards
//! by SMTP or, in the demo, into files.
//!
//! A message that cannot be sent is tried again after 1, 2, 4 … minutes (6 hours at most) for 3
//! days. It carries no clinical content: the one who writes it sees to that.

use crate::base::reach::Email;
use crate::platform::{
    auth::area::Area,
    config::Config,
    db::{Db, Write},
    error::Result,
    random,
};
use lettre::{
    AsyncSmtpTransport, AsyncTransport, Message, Tokio1Executor, message::header::ContentType,
};
use std::{error::Error as StdError, path::PathBuf};
use time::Duration;

/// How mail leaves.
pub enum Carrier {
    Smtp { server: AsyncSmtpTransport<Tokio1Executor>, from: String },
    Folder(PathBuf),
}

type Trouble = Box<dyn StdError + Send + Sync>;

impl<A: Area> Write<A> {
    /// Puts a message into the outbox.
    pub async fn mail(&mut self, to: &Email, subject: &str, body: &str) -> Result<()> {
        let (id, now) = (random::hex(16), self.at());
        let put = sqlx::query!(
            "insert into outbox (message_id, recipient, subject, body, made_at, due_at)
            values (?, ?, ?, ?, ?, ?)",
            id,
            to,
            subject,
            body,
            now,
            now
        );
        self.machinery(put).await.map(|_| ())
    }
}

impl Carrier {
    /// By SMTP where it is set. None: no mail leaves this house.
    pub fn of(config: &Config) -> std::result::Result<Option<Carrier>, Trouble> {
        let (Some(url), Some(from)) = (config.smtp(), config.mail_from()) else { return Ok(None) };
        let server = AsyncSmtpTransport::<Tokio1Executor>::from_url(url)?.build();
        Ok(Some(Carrier::Smtp { server, from: from.to_owned() }))
    }

    /// Carries what is due, until the program ends.
    pub async fn carry(self, db: Db) {
        let mut tick = tokio::time::interval(std::time::Duration::from_secs(5));
        loop {
            tick.tick().await;
            if let Err(e) = self.carry_due(&db).await {
                tracing::error!(error = ?e, "mail could not be carried");
            }
        }
    }

    async fn carry_due(&self, db: &Db) -> Result<()> {
        let (now, since) = (db.now(), db.now().minus(Duration::days(3)));
        let due = sqlx::query!(
            "select id, message_id, recipient, subject, body, tries from outbox
            where sent_at is null and due_at <= ? and made_at > ? order by id limit 20",
            now,
            since
        );
        for it in due.fetch_all(db.readers()).await? {
            let sent = self.send(&it.message_id, &it.recipient, &it.subject, &it.body).await;
            let trouble = sent.as_ref().err().map(ToString::to_string);
            let wait = Duration::minutes(1 << it.tries.min(9)).min(Duration::hours(6));
            let (sent_at, due_at) = (sent.is_ok().then_some(now), now.plus(wait));
            sqlx::query!(
                "update outbox set sent_at = ?, due_at = ?, tries = tries + 1, trouble = ? where id = ?",
                sent_at,
                due_at,
                trouble,
                it.id
            )
            .execute(db.writer())
            .await?;
            if let Some(trouble) = trouble {
                tracing::warn!(trouble, "a message could not be sent; it is tried again");
            }
        }
        Ok(())
    }

    async fn send(
        &self,
        id: &str,
        to: &str,
        subject: &str,
        body: &str,
    ) -> std::result::Result<(), Trouble> {
        let from = match self {
            Carrier::Smtp { from, .. } => from.as_str(),
            Carrier::Folder(_) => "Kinsheaf <kinsheaf@example.org>",
        };
        let message = Message::builder()
            .from(from.parse()?)
            .to(to.parse()?)
            .subject(subject)
            .message_id(Some(format!("<{id}@kinsheaf>")))
            .header(ContentType::TEXT_PLAIN)
            .body(body.to_owned())?;
        match self {
            Carrier::Smtp { server, .. } => server.send(message).await.map(|_| ())?,
            Carrier::Folder(folder) => {
                tokio::fs::create_dir_all(folder).await?;
                tokio::fs::write(folder.join(format!("{id}.eml")), message.formatted()).await?;
            }
        }
        Ok(())
    }
}
