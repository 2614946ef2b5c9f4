//! Bringing a database up to this program's version without risking the old one.
//!
//! The new state is made in a copy beside the database; only when all of it has worked does the
//! copy take the database's place, and the old one is kept as `kinsheaf.db.before-N`. A database
//! newer than the program is refused.

#[cfg(test)]
mod tests;

use sqlx::{
    Connection, SqliteConnection,
    migrate::{MigrateError, Migrator},
    sqlite::{SqliteConnectOptions, SqliteJournalMode},
};
use std::{
    fmt, fs, io,
    path::{Path, PathBuf},
};

static MIGRATOR: Migrator = sqlx::migrate!();

#[derive(Debug)]
pub enum OpenError {
    Missing(PathBuf),
    Newer { has: i64, knows: i64 },
    Older { has: i64, knows: i64 },
    Migration(MigrateError),
    Database(sqlx::Error),
    File(io::Error),
}

impl fmt::Display for OpenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            OpenError::Missing(file) => write!(f, "There is no database at {}.", file.display()),
            OpenError::Newer { has, knows } => write!(
                f,
                "The database is at version {has}, newer than this program, which knows versions up to {knows}. Nothing was touched. Start the newer program instead."
            ),
            OpenError::Older { has, knows } => write!(
                f,
                "The database is at version {has}, older than this program's {knows}. Start the server once: it brings the database up and keeps a copy."
            ),
            OpenError::Migration(e) => write!(
                f,
                "The database could not be brought up to this version, and stands as it was: {e}"
            ),
            OpenError::Database(e) => write!(f, "The database cannot be opened: {e}"),
            OpenError::File(e) => write!(f, "The data folder cannot be used: {e}"),
        }
    }
}

impl std::error::Error for OpenError {}

impl From<sqlx::Error> for OpenError {
    fn from(e: sqlx::Error) -> Self {
        OpenError::Database(e)
    }
}

impl From<io::Error> for OpenError {
    fn from(e: io::Error) -> Self {
        OpenError::File(e)
    }
}

/// The newest version this program knows.
pub fn latest() -> i64 {
    MIGRATOR.iter().map(|it| it.version).max().unwrap_or(0)
}

pub(super) async fn demand_current(file: &Path) -> Result<(), OpenError> {
    if !file.exists() {
        return Err(OpenError::Missing(file.to_owned()));
    }
    let (has, knows) = (version(file).await?, latest());
    match has.cmp(&knows) {
        std::cmp::Ordering::Greater => Err(OpenError::Newer { has, knows }),
        std::cmp::Ordering::Less => Err(OpenError::Older { has, knows }),
        std::cmp::Ordering::Equal => Ok(()),
    }
}

pub(super) async fn bring_up(file: &Path) -> Result<(), OpenError> {
    bring_up_by(file, &MIGRATOR).await
}

async fn bring_up_by(file: &Path, migrator: &Migrator) -> Result<(), OpenError> {
    let knows = migrator.iter().map(|it| it.version).max().unwrap_or(0);
    let has = if file.exists() { version(file).await? } else { 0 };
    if has > knows {
        return Err(OpenError::Newer { has, knows });
    }
    if has == knows {
        return Ok(());
    }
    let next = beside(file, "next");
    // The journal of a copy that was left half made would be played back into this one.
    remove(&next)?;
    remove(&beside(file, "next-journal"))?;
    if has > 0 {
        copy(file, &next).await?;
    }
    let mut connection = connect(&next, true).await?;
    let ran = migrator.run_direct(None, &mut connection, false).await;
    // Closed in any case: a connection that is dropped goes on with its journal for a while.
    connection.close().await?;
    ran.map_err(OpenError::Migration)?;
    fs::File::open(&next)?.sync_all()?;
    if has > 0 {
        let before = beside(file, &format!("before-{knows}"));
        remove(&before)?;
        fs::hard_link(file, &before).or_else(|_| fs::copy(file, &before).map(|_| ()))?;
    }
    fs::rename(&next, file)?;
    Ok(())
}

/// A whole copy, after the write-ahead log has been folded in and put away.
async fn copy(file: &Path, next: &Path) -> Result<(), OpenError> {
    connect(file, false).await?.close().await?;
    fs::copy(file, next)?;
    Ok(())
}

/// Connects without a write-ahead log, so that one file is the whole database.
pub(super) async fn connect(file: &Path, create: bool) -> sqlx::Result<SqliteConnection> {
    let options = SqliteConnectOptions::new()
        .filename(file)
        .create_if_missing(create)
        .journal_mode(SqliteJournalMode::Delete);
    SqliteConnection::connect_with(&options).await
}

pub(super) async fn version(file: &Path) -> sqlx::Result<i64> {
    let options = SqliteConnectOptions::new().filename(file);
    let mut connection = SqliteConnection::connect_with(&options).await?;
    let known: i64 =
        sqlx::query_scalar("select count(*) from sqlite_master where name = '_sqlx_migrations'")
            .fetch_one(&mut connection)
            .await?;
    let version = match known {
        0 => 0,
        _ => {
            sqlx::query_scalar("select coalesce(max(version), 0) from _sqlx_migrations")
                .fetch_one(&mut connection)
                .await?
        }
    };
    connection.close().await?;
    Ok(version)
}

pub(super) fn beside(file: &Path, suffix: &str) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    name.push(".");
    name.push(suffix);
    name.into()
}

pub(super) fn remove(file: &Path) -> io::Result<()> {
    match fs::remove_file(file) {
        Err(e) if e.kind() != io::ErrorKind::NotFound => Err(e),
        _ => Ok(()),
    }
}
