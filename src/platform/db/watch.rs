//! The writer watches itself: a row that was touched without a history entry rolls the whole
//! write back.
//!
//! When the writer's connection opens, temporary triggers are put on every table that is not
//! machinery; they note each touched row. A new table is watched without anyone remembering to.
//! This and `audit::fold` are the only places with SQL that is put together: from table and
//! column names that the database itself gives.

use super::Entry;
use crate::platform::error::{Error, Result};
use sqlx::{AssertSqlSafe, Row, SqliteConnection};

/// Tables that no history tells of.
const MACHINERY: [&str; 17] = [
    "history",
    "history_value",
    "session",
    "known_device",
    "link",
    "form_key",
    "outbox",
    "reminder_mark",
    "drug_name",
    "drug_brand",
    // What a member is typing is nobody's record until she saves it.
    "visit_draft",
    // What became of the files of a pile: what was kept of it has its own history.
    "tray_arrival",
    // Read off the files of papers, which are kept.
    "page_text",
    "page_mark",
    // What a program made out on them: read again it would be the same.
    "paper_text",
    // What they look like: looked at again it would be the same.
    "paper_look",
    "_sqlx_migrations",
];

/// The tables that keep someone's record.
pub async fn recorded(connection: &mut SqliteConnection) -> sqlx::Result<Vec<String>> {
    let rows = sqlx::query(
        "select name from pragma_table_list
        where schema = 'main' and type = 'table' and name not like 'sqlite_%'",
    )
    .fetch_all(connection)
    .await?;
    let names = rows.iter().map(|row| row.get::<String, _>(0));
    Ok(names.filter(|name| !MACHINERY.contains(&name.as_str())).collect())
}

pub(super) async fn begin(connection: &mut SqliteConnection) -> sqlx::Result<()> {
    sqlx::query("create temporary table touched (kind text not null, item integer not null)")
        .execute(&mut *connection)
        .await?;
    for table in recorded(connection).await? {
        for (event, row) in [("insert", "new"), ("update", "new"), ("delete", "old")] {
            let trigger = format!(
                r#"create temporary trigger "watch_{table}_{event}" after {event} on main."{table}"
                begin insert into touched values ('{table}', {row}.id); end"#
            );
            sqlx::query(AssertSqlSafe(trigger)).execute(&mut *connection).await?;
        }
    }
    Ok(())
}

/// Refuses the write when a touched row has no entry.
pub(super) async fn account_for(
    connection: &mut SqliteConnection,
    entries: &[Entry],
) -> Result<()> {
    let touched =
        sqlx::query("delete from touched returning kind, item").fetch_all(connection).await?;
    for row in touched {
        let (kind, item): (String, i64) = (row.get(0), row.get(1));
        let told = entries.iter().any(|it| it.change && it.kind == kind && it.item == item);
        if !told {
            return Err(Error::Internal(format!("changed without history: {kind} {item}").into()));
        }
    }
    Ok(())
}
