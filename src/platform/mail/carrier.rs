//! How mail leaves: by SMTP where a server is set, else into files of the data folder.
//!
//! A `Lane` hands over one message after another, by a connection of its own that it keeps open. A
//! refusal says whether it is for good, for now, or whether the mail server itself is the trouble.

use super::{
    hand_over::{self, Server},
    message,
    outbox::Waiting,
};
use crate::base::{clock::Instant, reach::Email};
use crate::platform::{
    config::{Base, Config},
    random,
};
use lettre::{Message, message::Mailbox, transport::smtp::client::AsyncSmtpConnection};
use std::{
    path::{Path, PathBuf},
    sync::Arc,
};

pub type Trouble = Box<dyn std::error::Error + Send + Sync>;

/// Where mail lies when no server is set: a folder of the data folder.
pub const FOLDER: &str = "mail";

#[derive(Clone)]
pub struct Carrier(Arc<Way>);

struct Way {
    from: Mailbox,
    to: Whither,
}

enum Whither {
    Smtp(Server),
    Folder(PathBuf),
}

/// Why a message was not taken, in the server's own words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// This message, or its recipient, for good.
    ForGood(String),
    /// This message, for now.
    ForNow(String),
    /// The mail server is not reached, or does not let this house in: it is so for every message.
    Server(String),
}

impl Refused {
    pub fn words(&self) -> &str {
        match self {
            Refused::ForGood(it) | Refused::ForNow(it) | Refused::Server(it) => it,
        }
    }
}

impl Carrier {
    /// By SMTP where it is set, else into the folder.
    pub fn of(config: &Config) -> Result<Carrier, Trouble> {
        match (config.smtp(), config.mail_from()) {
            (Some(url), Some(from)) => {
                let to = Whither::Smtp(Server::of(url, config.smtp_ca())?);
                Ok(Carrier(Arc::new(Way { from: from.parse()?, to })))
            }
            _ => Ok(Carrier::into_files(config.data())),
        }
    }

    /// Into files of a data folder.
    pub fn into_files(data: &Path) -> Carrier {
        let from = Mailbox::new(
            Some("Kinsheaf".into()),
            lettre::Address::new("kinsheaf", "example.org").expect("an address"),
        );
        Carrier(Arc::new(Way { from, to: Whither::Folder(data.join(FOLDER)) }))
    }

    /// Whether mail leaves this machine.
    pub fn leaves(&self) -> bool {
        matches!(self.0.to, Whither::Smtp(_))
    }

    /// A test mail, handed over at once. Gives what the server said.
    pub async fn test(&self, to: &Email, base: &Base, now: Instant) -> Result<String, Refused> {
        let from = base.absolute("/");
        let body = format!(
            "This is a test mail of Kinsheaf at {from}\n\nIf you read it, mail arrives. Nothing else is to be done.\n"
        );
        let it = Waiting {
            id: 0,
            message_id: format!("{}@{}", random::hex(16), base.mail_domain()),
            recipient: to.to_string(),
            subject: "A test mail of Kinsheaf".into(),
            body,
            html: None,
            stop_link: None,
            tries: 0,
            made_at: now,
        };
        let mut lane = self.lane();
        let answer = lane.hand_over(&it, now).await;
        lane.close().await;
        answer
    }

    pub fn lane(&self) -> Lane {
        Lane { carrier: self.clone(), open: None }
    }
}

/// One way out, with its connection.
pub struct Lane {
    carrier: Carrier,
    open: Option<AsyncSmtpConnection>,
}

impl Lane {
    /// Hands a message over. Gives what the server said when it took it.
    pub async fn hand_over(&mut self, it: &Waiting, now: Instant) -> Result<String, Refused> {
        let way = self.carrier.0.clone();
        let message = message::build(&way.from, it, now);
        let message = message.map_err(|e| Refused::ForGood(format!("cannot be written: {e}")))?;
        match &way.to {
            Whither::Smtp(server) => hand_over::hand_over(server, &mut self.open, &message).await,
            Whither::Folder(folder) => into_file(folder, &it.message_id, &message).await,
        }
    }

    /// Says goodbye to the server.
    pub async fn close(&mut self) {
        if let Some(open) = self.open.take() {
            hand_over::close(open).await;
        }
    }
}

/// Readable by the owner only, as all of the data folder. The same message again is the same file.
async fn into_file(folder: &Path, id: &str, message: &Message) -> Result<String, Refused> {
    let plain = |it: char| if it.is_ascii_alphanumeric() { it } else { '-' };
    let name: String = id.split('@').next().unwrap_or(id).chars().map(plain).collect();
    let (file, part) = (folder.join(format!("{name}.eml")), folder.join(format!("{name}.part")));
    let bytes = message.formatted();
    let written = async {
        tokio::fs::create_dir_all(folder).await?;
        tokio::fs::write(&part, bytes).await?;
        tokio::fs::rename(&part, &file).await
    };
    match written.await {
        Ok(()) => Ok(format!("laid into the folder {FOLDER} as {name}.eml")),
        Err(e) => Err(Refused::Server(format!("the folder {FOLDER} cannot be written: {e}"))),
    }
}
