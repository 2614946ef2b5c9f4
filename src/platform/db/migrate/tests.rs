//! Databases of another version: newer ones, older ones, and migrations that break.

use super::*;
use sqlx::{
    SqlSafeStr,
    migrate::{Migration, MigrationType},
};
use std::borrow::Cow;
use tempfile::TempDir;

const FIRST: &str = "create table cup (id integer primary key, colour text) strict;
    insert into cup (colour) values ('blue'), ('white')";
const SECOND: &str = "alter table cup add column size text; update cup set size = 'small'";
const BROKEN: &str = "update cup set colour = 'gone'; insert into no_such_table values (1)";

fn migrator(steps: &[&'static str]) -> Migrator {
    let steps = steps.iter().copied().zip(1..).map(|(sql, version)| {
        Migration::new(version, "a step".into(), MigrationType::Simple, sql.into_sql_str(), false)
    });
    Migrator { migrations: Cow::Owned(steps.collect()), ..Migrator::DEFAULT }
}

struct Folder(TempDir);

impl Folder {
    fn new() -> Folder {
        Folder(TempDir::new().expect("a folder"))
    }

    fn file(&self) -> PathBuf {
        self.0.path().join("kinsheaf.db")
    }

    fn beside(&self, suffix: &str) -> PathBuf {
        beside(&self.file(), suffix)
    }

    /// What is in the folder, by name.
    fn names(&self) -> Vec<String> {
        let entries = fs::read_dir(self.0.path()).expect("a folder");
        let names = entries.map(|it| it.expect("an entry").file_name().into_string());
        let mut names: Vec<_> = names.map(|it| it.expect("a name")).collect();
        names.sort();
        names
    }
}

/// The cups of a database: their colours, with their sizes where it knows of sizes.
async fn cups(file: &Path) -> Vec<String> {
    let mut db = connect(file, false).await.expect("a database");
    let sized = version(file).await.expect("a version") > 1;
    let question =
        if sized { "select colour || ' ' || size from cup" } else { "select colour from cup" };
    sqlx::query_scalar(question).fetch_all(&mut db).await.expect("cups")
}

/// Another program writes into it.
async fn write(file: &Path, sql: &'static str) {
    let mut db = connect(file, false).await.expect("a database");
    sqlx::raw_sql(sql).execute(&mut db).await.expect("written");
    db.close().await.expect("closed");
}

#[tokio::test]
async fn a_fresh_folder_gets_a_database_of_this_version() {
    let folder = Folder::new();
    bring_up(&folder.file()).await.expect("made");
    assert_eq!(version(&folder.file()).await.expect("a version"), latest());
    demand_current(&folder.file()).await.expect("current");
    assert_eq!(folder.names(), ["kinsheaf.db"]);
}

#[tokio::test]
async fn a_newer_database_is_refused_untouched() {
    let folder = Folder::new();
    bring_up_by(&folder.file(), &migrator(&[FIRST, SECOND])).await.expect("made");
    let before = fs::read(folder.file()).expect("a file");
    let refused = bring_up_by(&folder.file(), &migrator(&[FIRST])).await.expect_err("refused");
    assert!(matches!(refused, OpenError::Newer { has: 2, knows: 1 }), "{refused}");
    assert_eq!(fs::read(folder.file()).expect("a file"), before);
    assert_eq!(folder.names(), ["kinsheaf.db"]);
}

#[tokio::test]
async fn a_newer_database_is_refused_beside_a_running_server_too() {
    let folder = Folder::new();
    bring_up(&folder.file()).await.expect("made");
    let newer = "insert into _sqlx_migrations values (9999, 'newer', '', true, x'00', 0)";
    write(&folder.file(), newer).await;
    let before = fs::read(folder.file()).expect("a file");
    for refused in [bring_up(&folder.file()).await, demand_current(&folder.file()).await] {
        let refused = refused.expect_err("refused");
        assert!(matches!(refused, OpenError::Newer { has: 9999, .. }), "{refused}");
        assert!(refused.to_string().contains("Nothing was touched."), "{refused}");
    }
    assert_eq!(fs::read(folder.file()).expect("a file"), before);
}

#[tokio::test]
async fn an_older_database_is_brought_up_and_kept_beside_the_new_one() {
    let folder = Folder::new();
    bring_up_by(&folder.file(), &migrator(&[FIRST])).await.expect("made");
    // As a server leaves it: with a write-ahead log.
    write(&folder.file(), "pragma journal_mode = wal; insert into cup (colour) values ('red')")
        .await;
    bring_up_by(&folder.file(), &migrator(&[FIRST, SECOND])).await.expect("brought up");
    assert_eq!(cups(&folder.file()).await, ["blue small", "white small", "red small"]);
    assert_eq!(cups(&folder.beside("before-2")).await, ["blue", "white", "red"]);
    assert_eq!(folder.names(), ["kinsheaf.db", "kinsheaf.db.before-2"]);

    let older = folder.beside("before-2");
    let refused = demand_current(&older).await.expect_err("refused");
    assert!(matches!(refused, OpenError::Older { has: 1, .. }), "{refused}");
}

#[tokio::test]
async fn a_migration_that_breaks_half_way_leaves_the_old_database_as_it_was() {
    let folder = Folder::new();
    bring_up_by(&folder.file(), &migrator(&[FIRST])).await.expect("made");
    let before = fs::read(folder.file()).expect("a file");
    for steps in [&[FIRST, BROKEN][..], &[FIRST, SECOND, BROKEN]] {
        let broken = bring_up_by(&folder.file(), &migrator(steps)).await.expect_err("broken");
        assert!(matches!(broken, OpenError::Migration(_)), "{broken}");
        assert!(broken.to_string().contains("stands as it was"), "{broken}");
        assert_eq!(fs::read(folder.file()).expect("a file"), before);
        assert!(!folder.beside("before-2").exists());
    }
    // What was half made is not taken for the database by a program that can do it.
    bring_up_by(&folder.file(), &migrator(&[FIRST, SECOND])).await.expect("brought up");
    assert_eq!(cups(&folder.file()).await, ["blue small", "white small"]);
    assert_eq!(folder.names(), ["kinsheaf.db", "kinsheaf.db.before-2"]);
}

#[tokio::test]
async fn a_first_migration_that_breaks_makes_no_database() {
    let folder = Folder::new();
    let broken = bring_up_by(&folder.file(), &migrator(&[FIRST, BROKEN])).await;
    assert!(matches!(broken, Err(OpenError::Migration(_))));
    assert!(!folder.file().exists());
    bring_up_by(&folder.file(), &migrator(&[FIRST])).await.expect("made");
    assert_eq!(cups(&folder.file()).await, ["blue", "white"]);
}

/// A machine that fails in the middle leaves a half-made copy and the journal that belongs to it.
#[tokio::test]
async fn the_journal_of_a_half_made_copy_does_not_reach_into_the_next_one() {
    let folder = Folder::new();
    bring_up_by(&folder.file(), &migrator(&[FIRST])).await.expect("made");
    copy(&folder.file(), &folder.beside("next")).await.expect("a copy");
    let mut half = connect(&folder.beside("next"), false).await.expect("a database");
    // More than the cache holds, so that the journal is written out.
    let change = "pragma cache_size = 1; begin; update cup set colour = 'half'; create table filler (it text);
        with recursive n(i) as (select 1 union all select i + 1 from n where i < 500)
        insert into filler select hex(randomblob(500)) from n";
    sqlx::raw_sql(change).execute(&mut half).await.expect("changed");
    let journal = fs::read(folder.beside("next-journal")).expect("a journal");
    half.close().await.expect("closed");
    write(&folder.file(), "update cup set colour = 'green' where colour = 'blue'").await;
    fs::write(folder.beside("next-journal"), journal).expect("left behind");

    bring_up_by(&folder.file(), &migrator(&[FIRST, SECOND])).await.expect("brought up");
    assert_eq!(cups(&folder.file()).await, ["green small", "white small"]);
    assert_eq!(folder.names(), ["kinsheaf.db", "kinsheaf.db.before-2"]);
}
