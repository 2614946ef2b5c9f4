//! A copy of the database as it stands at one moment, made beside a running server; and a look
//! through a copy that no server uses.
//!
//! A snapshot carries the record, its history and the members, but nothing that was open at that
//! moment: no sign-ins, links, answered forms or mail. A restored house therefore signs everyone
//! out: a device that was signed out since, or a link that was used since, stays shut. And no
//! mail is sent a second time.

use super::{
    index,
    migrate::{self, OpenError},
};
use crate::base::ids::PersonId;
use crate::platform::{
    audit::{self, Report},
    error::Result,
};
use sqlx::{Connection, SqliteConnection, sqlite::SqliteConnectOptions};
use std::{
    fs::OpenOptions,
    io,
    os::unix::fs::OpenOptionsExt,
    path::{Path, PathBuf},
};

/// One file; it goes away when this is dropped.
pub struct Snapshot {
    file: PathBuf,
}

impl Snapshot {
    /// Takes a snapshot of the database of a data folder, into the same folder: nothing of it
    /// reaches a disk that the family has not chosen.
    pub async fn take(folder: &Path) -> std::result::Result<Snapshot, OpenError> {
        let live = folder.join("kinsheaf.db");
        migrate::demand_current(&live).await?;
        let snapshot = Snapshot { file: migrate::beside(&live, "backup") };
        // What an interrupted one left behind.
        snapshot.remove()?;
        // SQLite fills a file that is there and empty; so it has our rights and not the umask's.
        OpenOptions::new().write(true).create_new(true).mode(0o600).open(&snapshot.file)?;
        let path = snapshot.file.to_str().ok_or(io::Error::from(io::ErrorKind::InvalidFilename))?;
        // `vacuum into`, since sqlx does not offer SQLite's backup interface. It is one reading
        // transaction: the server goes on writing, and none of that is in the copy.
        let mut connection =
            SqliteConnection::connect_with(&SqliteConnectOptions::new().filename(&live)).await?;
        sqlx::query("vacuum into ?").bind(path).execute(&mut connection).await?;
        connection.close().await?;
        snapshot.forget_what_was_open().await?;
        Ok(snapshot)
    }

    pub fn file(&self) -> &Path {
        &self.file
    }

    async fn forget_what_was_open(&self) -> sqlx::Result<()> {
        let mut copy = migrate::connect(&self.file, false).await?;
        // Without it what is deleted stays readable in the file's unused pages.
        sqlx::query("pragma secure_delete = on").execute(&mut copy).await?;
        sqlx::query!("delete from session").execute(&mut copy).await?;
        sqlx::query!("delete from link").execute(&mut copy).await?;
        sqlx::query!("delete from form_key").execute(&mut copy).await?;
        sqlx::query!("update invitation set token = null").execute(&mut copy).await?;
        sqlx::query!("update feed set secret = null").execute(&mut copy).await?;
        // What waits is forgotten. That a reminder was mailed is not: else it would be again.
        sqlx::query!("delete from outbox where state = 'waiting' or kind = 'letter'")
            .execute(&mut copy)
            .await?;
        // Not open, but nobody's record, and large: brought in again from its own list.
        sqlx::query!("delete from drug_name").execute(&mut copy).await?;
        sqlx::query!("delete from drug_brand").execute(&mut copy).await?;
        index::leave_out(&mut copy).await?;
        copy.close().await
    }

    fn remove(&self) -> io::Result<()> {
        migrate::remove(&self.file)?;
        let mut journal = self.file.as_os_str().to_owned();
        journal.push("-journal");
        migrate::remove(Path::new(&journal))
    }
}

impl Drop for Snapshot {
    fn drop(&mut self) {
        let _ = self.remove();
    }
}

/// What a database that no server uses says of itself.
pub struct Look {
    pub version: i64,
    /// What SQLite finds wrong with the file.
    broken: Vec<String>,
    /// Each chain of the history, with what was found in it.
    pub chains: Vec<(PersonId, Report)>,
}

impl Look {
    /// Looks through a database of this version or an older one, and changes nothing in it.
    pub async fn at(file: &Path) -> Result<Look> {
        let version = migrate::version(file).await?;
        let options = SqliteConnectOptions::new().filename(file).read_only(true);
        let mut db = SqliteConnection::connect_with(&options).await?;
        let said: Vec<String> =
            sqlx::query_scalar("pragma integrity_check").fetch_all(&mut db).await?;
        let broken: Vec<String> = said.into_iter().filter(|it| it != "ok").collect();
        let mut chains = Vec::new();
        if broken.is_empty() {
            for chain in audit::chains(&mut db).await? {
                chains.push((chain, Report::read(&mut db, chain, None).await?));
            }
        }
        db.close().await?;
        Ok(Look { version, broken, chains })
    }

    /// Everything that is wrong, in words.
    pub fn faults(&self) -> Vec<String> {
        let told = self.chains.iter().flat_map(|(_, report)| &report.faults);
        self.broken.iter().cloned().chain(told.map(ToString::to_string)).collect()
    }
}
