//! A number that the history has told of is never given to another row: two rows of one number
//! cannot be told apart, and the history of both reads as false.

use crate::support::TestHouse;
use kinsheaf::platform::auth::{area::Clinical, area::Role};
use sqlx::{AssertSqlSafe, SqliteConnection};
use std::{fs, path::Path};

/// The tables that no history tells of, as the watch lists them.
fn machinery() -> Vec<String> {
    let watch = fs::read_to_string("src/platform/db/watch.rs").expect("the watch");
    let list = watch.split("const MACHINERY").nth(1).expect("a list");
    let list = list.split("];").next().expect("its end");
    list.lines().filter_map(|it| it.split('"').nth(1)).map(str::to_owned).collect()
}

/// The tables that any statement of the sources or the migrations deletes rows from.
fn deleted_from() -> Vec<String> {
    let mut found = Vec::new();
    for (path, text) in texts(Path::new("src")).into_iter().chain(texts(Path::new("migrations"))) {
        let text = text.to_lowercase();
        for phrase in ["delete from ", "replace into ", "insert or replace into ", "on delete "] {
            for (at, _) in text.match_indices(phrase) {
                let rest = text[at + phrase.len()..].trim_start_matches(['"', '\\']);
                let name = rest.split(|it: char| !it.is_alphanumeric() && it != '_').next();
                found.push((path.clone(), name.unwrap_or_default().to_owned()));
            }
        }
    }
    found.sort();
    found.dedup();
    assert!(found.iter().any(|(_, table)| table == "session"), "the search finds nothing");
    found.into_iter().map(|(_, table)| table).collect()
}

fn texts(folder: &Path) -> Vec<(String, String)> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            all.extend(texts(&path));
        } else if path.extension().is_some_and(|it| it == "rs" || it == "sql") {
            all.push((path.display().to_string(), fs::read_to_string(&path).expect("a text")));
        }
    }
    all
}

async fn schemas(db: &mut SqliteConnection) -> Vec<(String, String)> {
    let all =
        "select name, sql from sqlite_master where type = 'table' and name not like 'sqlite_%'";
    sqlx::query_as(all).fetch_all(db).await.expect("tables")
}

#[tokio::test]
async fn a_recorded_number_is_never_given_again() {
    let house = TestHouse::new().await;
    let (machinery, tables) = (machinery(), schemas(&mut house.outside().await).await);
    assert!(machinery.len() > 10 && tables.len() > 50, "{machinery:?}");
    for table in deleted_from() {
        let recorded = tables.iter().find(|(name, _)| *name == table && !machinery.contains(name));
        let again = recorded.filter(|(_, sql)| !sql.to_lowercase().contains("autoincrement"));
        assert_eq!(again, None, "its rows are deleted, so their numbers are given again");
    }
}

/// And whatever a statement says: a write that deletes a row that the history tells of is not kept.
#[tokio::test]
async fn no_write_deletes_a_recorded_row() {
    let (house, _) = TestHouse::told(0, crate::support::house::NOW).await;
    let (machinery, mut db) = (machinery(), house.outside().await);
    let mut tried = 0;
    let recorded = |it: &String| !machinery.contains(it) && !it.starts_with("page_");
    for table in schemas(&mut db).await.into_iter().map(|it| it.0).filter(recorded) {
        let last = AssertSqlSafe(format!(r#"select max(id) from "{table}""#));
        let last: Option<i64> = sqlx::query_scalar(last).fetch_one(&mut db).await.expect("a row");
        let Some(last) = last else { continue };
        let operator = house.operator();
        let write = operator.write_for::<Clinical>(1.into(), 2.into(), Role::Steward);
        let write = write.await.expect("a write");
        let sql = format!(r#"delete from "{table}" where id = {last} returning id"#);
        // What others lean on is refused by the database already.
        let deleted = write.values(sqlx::query_scalar::<_, i64>(AssertSqlSafe(sql))).await;
        let kept = write.commit().await;
        assert!(deleted.is_err() || kept.is_err(), "{table} {last} was deleted");
        tried += usize::from(deleted.is_ok());
    }
    assert!(tried > 20, "only {tried} tables have a row to delete");
    house.is_sound().await;
}
