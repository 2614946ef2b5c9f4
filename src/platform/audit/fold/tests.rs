//! Histories as a program before version 63 wrote them, with rows removed and numbers given again.

use super::compare;
use crate::base::{change::Difference, clock::Clock, clock::Instant, ids::PersonId};
use crate::platform::{
    audit::{append, verify::Fault},
    auth::area::AreaName,
    db::{Db, Door, Entry},
};
use sqlx::{Connection, SqliteConnection, sqlite::SqliteConnectOptions};

/// The one table that rows were ever deleted from. (A macro: texts are joined when it is compiled.)
macro_rules! READER {
    () => {
        "visit_reader"
    };
}

/// A database without keys between tables, so that a row needs no others.
async fn database(folder: &tempfile::TempDir) -> SqliteConnection {
    let clock = Clock::new(|| Instant::from_unix(0));
    Db::open(folder.path(), clock).await.expect("a database").close().await;
    let options = SqliteConnectOptions::new().filename(folder.path().join("kinsheaf.db"));
    SqliteConnection::connect_with(&options.foreign_keys(false)).await.expect("a connection")
}

/// An entry of a reader of a note: its number and the member, or that it was removed.
async fn told(db: &mut SqliteConnection, chain: i64, (item, member): (i64, Option<i64>)) {
    let difference = |field, new: i64| Difference { field, old: None, new: Some(new.into()) };
    let added = |it| vec![difference("visit_id", 1), difference("member_id", it)];
    let entry = Entry {
        chain: PersonId::from(chain),
        actor: 2.into(),
        area: AreaName::Clinical,
        action: if member.is_some() { "added" } else { "removed" },
        kind: READER!(),
        item,
        differences: member.map(added).unwrap_or_default(),
        change: true,
    };
    append(db, &entry, Door::Member, Instant::from_unix(0)).await.expect("an entry");
}

async fn row(db: &mut SqliteConnection, (person, item, member): (i64, i64, i64)) {
    let put = concat!(
        "insert into ",
        READER!(),
        " (id, person_id, visit_id, member_id) values (?, ?, 1, ?)"
    );
    let put = sqlx::query(put).bind(item).bind(person).bind(member);
    put.execute(db).await.expect("a row");
}

async fn faults(db: &mut SqliteConnection, chain: i64) -> Vec<String> {
    let faults = compare(db, PersonId::from(chain)).await.expect("a comparison");
    faults.iter().map(Fault::to_string).collect()
}

#[tokio::test]
async fn a_number_that_was_given_again_is_a_new_row() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let mut db = database(&folder).await;
    for member in [Some(3), None, Some(4)] {
        told(&mut db, 1, (7, member)).await;
    }
    assert_eq!(faults(&mut db, 1).await, ["visit_reader 7 came or went without an entry"]);
    row(&mut db, (1, 7, 4)).await;
    assert_eq!(faults(&mut db, 1).await, [""; 0]);
    // The new row is compared with what was told of it, and not with the one before.
    let change = concat!("update ", READER!(), " set member_id = 3");
    sqlx::query(change).execute(&mut db).await.expect("changed");
    let changed = ["visit_reader 7 was changed without an entry: member_id"];
    assert_eq!(faults(&mut db, 1).await, changed);
}

#[tokio::test]
async fn a_number_that_came_back_in_another_record_is_no_fault_of_the_first() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let mut db = database(&folder).await;
    told(&mut db, 1, (7, Some(3))).await;
    told(&mut db, 1, (7, None)).await;
    told(&mut db, 2, (7, Some(3))).await;
    row(&mut db, (2, 7, 3)).await;
    assert_eq!(faults(&mut db, 1).await, [""; 0]);
    assert_eq!(faults(&mut db, 2).await, [""; 0]);
}

#[tokio::test]
async fn a_row_that_was_moved_to_another_record_or_to_none_is_found() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let mut db = database(&folder).await;
    told(&mut db, 1, (7, Some(3))).await;
    row(&mut db, (999, 7, 3)).await;
    let moved = ["visit_reader 7 was moved to another record without an entry"];
    assert_eq!(faults(&mut db, 1).await, moved);
}
