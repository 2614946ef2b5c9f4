//! The one door to the database: many readers, one writer, both private.
//!
//! Reading goes through a [`View`], changing through a [`Write`]; a door (`platform::auth`)
//! makes them. No connection is ever handed out, so a capability cannot run a statement that
//! the history does not know of.

mod index;
mod migrate;
mod snapshot;
mod view;
pub(in crate::platform) mod watch;
mod write;

use crate::base::{clock::Clock, ids::MemberId, ids::PersonId};
use crate::platform::{auth::policy::Reach, error::Result};
pub use migrate::{OpenError, latest};
pub use snapshot::{Look, Snapshot};
use sqlx::{
    Connection, SqliteConnection,
    sqlite::{
        SqliteArguments, SqliteConnectOptions, SqliteJournalMode, SqlitePool, SqlitePoolOptions,
        SqliteSynchronous,
    },
};
use std::{path::Path, time::Duration};
pub use view::View;
pub(in crate::platform) use write::Entry;
pub use write::{Committed, Done, Door, Write};

/// A statement without result columns (`query!`): only [`Write::apply`] takes one.
pub type Statement<'q> = sqlx::query::Query<'q, sqlx::Sqlite, SqliteArguments>;
/// A question with typed rows (`query_as!`).
pub type Question<'q, F> = sqlx::query::Map<'q, sqlx::Sqlite, F, SqliteArguments>;

/// Whose record a view or write reaches, for whom, how far. No reach: one of the house's
/// own doors (set-up, jobs, the operator at the command line).
#[derive(Clone, Copy, Debug)]
pub(in crate::platform) struct Scope {
    pub person: PersonId,
    pub member: MemberId,
    pub reach: Option<Reach>,
}

#[derive(Clone)]
pub struct Db {
    readers: SqlitePool,
    writer: SqlitePool,
    clock: Clock,
}

impl Db {
    /// Opens the database of a data folder, bringing it up to this program's version first.
    pub async fn open(folder: &Path, clock: Clock) -> std::result::Result<Db, OpenError> {
        let file = folder.join("kinsheaf.db");
        migrate::bring_up(&file).await?;
        let db = Db::pools(&file, clock).await?;
        index::demand_whole(&mut *db.writer.acquire().await?).await?;
        Ok(db)
    }

    /// Opens it as it stands: for commands beside a running server.
    pub async fn open_as_is(folder: &Path, clock: Clock) -> std::result::Result<Db, OpenError> {
        let file = folder.join("kinsheaf.db");
        migrate::demand_current(&file).await?;
        Ok(Db::pools(&file, clock).await?)
    }

    async fn pools(file: &Path, clock: Clock) -> sqlx::Result<Db> {
        let options = SqliteConnectOptions::new()
            .filename(file)
            .journal_mode(SqliteJournalMode::Wal)
            .synchronous(SqliteSynchronous::Full)
            .busy_timeout(Duration::from_secs(5))
            .pragma("recursive_triggers", "on")
            .foreign_keys(true);
        let writer = SqlitePoolOptions::new()
            .max_connections(1)
            .test_before_acquire(false)
            .acquire_timeout(Duration::from_secs(5))
            .idle_timeout(None)
            .max_lifetime(None)
            .before_acquire(|connection, _| Box::pin(async move { Ok(is_at_rest(connection)) }))
            .after_connect(|connection, _| Box::pin(watch::begin(connection)))
            .connect_with(options.clone())
            .await?;
        let readers = SqlitePoolOptions::new()
            .max_connections(8)
            .test_before_acquire(false)
            .connect_with(options.read_only(true).pragma("query_only", "on"))
            .await?;
        Ok(Db { readers, writer, clock })
    }

    pub(in crate::platform) fn now(&self) -> crate::base::clock::Instant {
        self.clock.now()
    }

    /// The one direct way in, for the look-up of sessions and memberships.
    pub(in crate::platform) fn readers(&self) -> &SqlitePool {
        &self.readers
    }

    /// The writer itself, for machinery (sessions, links, form keys) that no history tells of.
    pub(in crate::platform) fn writer(&self) -> &SqlitePool {
        &self.writer
    }

    pub(in crate::platform) async fn view<A>(&self, scope: Scope) -> Result<View<A>> {
        View::begin(self.readers.begin().await?, scope).await
    }

    /// Whether the database answers.
    pub async fn answers(&self) -> Result<()> {
        sqlx::query!("select 1 as one from history limit 1").fetch_optional(&self.readers).await?;
        Ok(())
    }

    pub async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
    }
}

/// Whether no transaction is open. On a full disk SQLite rolls back by itself, and sqlx goes on
/// counting the transaction as open: such a connection would refuse every write that follows, so
/// it is closed and another takes its place.
fn is_at_rest(connection: &SqliteConnection) -> bool {
    !connection.is_in_transaction()
}
