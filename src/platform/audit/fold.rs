//! Folding the history of each row gives the row as it stands, or someone changed the row
//! behind the history's back.
//!
//! Sealed and erased values are passed over: what they were is not in the history. The one other
//! place (beside the writer's watch) with SQL put together from the database's own names.
//!
//! Until version 63 a row could be removed, and its number given again to another, in this record or
//! in the next. So an entry "added" after "removed" begins a new row, and a row counts only in the
//! record that it belongs to.

#[cfg(test)]
mod tests;

use super::verify::{Fault, PIECE};
use crate::base::{change::SEALED, ids::PersonId};
use crate::platform::{db::watch, error::Result};
use serde_json::Value;
use sqlx::{AssertSqlSafe, Row, SqliteConnection};
use std::collections::BTreeMap;

/// What the history says of one row: field by field; `None` once it was removed.
type Told = BTreeMap<(String, i64), Option<BTreeMap<String, Value>>>;

pub(super) async fn compare(tx: &mut SqliteConnection, chain: PersonId) -> Result<Vec<Fault>> {
    let told = told(tx, chain).await?;
    let mut faults = untold(tx, chain, &told).await?;
    for ((kind, item), fields) in told {
        let row = row(tx, &kind, item, chain).await?;
        let fault = |field: &str| Fault::Row { kind: kind.clone(), item, field: field.into() };
        match (fields, row) {
            (None, Found::Nowhere | Found::Elsewhere) => {}
            (None, Found::Here(_)) | (Some(_), Found::Nowhere) => faults.push(fault("")),
            (Some(_), Found::Elsewhere) => faults.push(Fault::Moved { kind, item }),
            (Some(fields), Found::Here(row)) => {
                let differs = fields.iter().filter(|(name, value)| !same(value, row.get(*name)));
                faults.extend(differs.map(|(name, _)| fault(name)));
            }
        }
    }
    Ok(faults)
}

/// Rows that no history tells of: someone put them there from outside.
async fn untold(tx: &mut SqliteConnection, chain: PersonId, told: &Told) -> Result<Vec<Fault>> {
    let mut faults = Vec::new();
    for table in watch::recorded(&mut *tx).await? {
        let owner = owner(&table, &columns(tx, &table).await?);
        let question = format!(r#"select id from "{table}" where {owner} = ?"#);
        let items = sqlx::query_scalar::<_, i64>(AssertSqlSafe(question)).bind(chain);
        for item in items.fetch_all(&mut *tx).await? {
            if !told.contains_key(&(table.clone(), item)) {
                faults.push(Fault::Row { kind: table.clone(), item, field: String::new() });
            }
        }
    }
    Ok(faults)
}

/// The column that says whose record a row belongs to; the house's own chain tells of the tables
/// that belong to no one person.
fn owner(table: &str, columns: &[String]) -> &'static str {
    match (table, columns.iter().any(|it| it == "person_id")) {
        ("person", _) => "id",
        (_, true) => "person_id",
        (_, false) => "0",
    }
}

async fn columns(tx: &mut SqliteConnection, table: &str) -> Result<Vec<String>> {
    let columns = sqlx::query("select name from pragma_table_info(?)").bind(table.to_owned());
    Ok(columns.fetch_all(tx).await?.iter().map(|row| row.get(0)).collect())
}

/// Piece by piece: what is kept is one value for each field that stands.
async fn told(tx: &mut SqliteConnection, chain: PersonId) -> Result<Told> {
    let (mut told, mut last) = (Told::new(), i64::MIN);
    while let Some(end) = end_of_piece(tx, chain, last).await? {
        let rows = sqlx::query!(
            r#"select h.kind, h.item, h.action, v.field as "field?", v.new, v.salt
            from history h left join history_value v on v.history_id = h.id
            where h.chain = ? and h.id > ? and h.id <= ?
                and h.action in ('added', 'edited', 'removed')
            order by h.id, v.id"#,
            chain,
            last,
            end
        )
        .fetch_all(&mut *tx)
        .await?;
        for it in rows {
            let fields = told.entry((it.kind, it.item)).or_insert_with(|| Some(BTreeMap::new()));
            if it.action == "added" && fields.is_none() {
                *fields = Some(BTreeMap::new());
            }
            if it.action == "removed" {
                *fields = None;
            } else if let (Some(fields), Some(name)) = (fields, it.field) {
                let erased = it.salt.is_none();
                match it.new.filter(|_| !erased).and_then(|new| serde_json::from_str(&new).ok()) {
                    Some(value) => fields.insert(name, value),
                    None => fields.remove(&name),
                };
            }
        }
        last = end;
    }
    Ok(told)
}

/// The last entry of the piece that begins after this one.
async fn end_of_piece(
    tx: &mut SqliteConnection,
    chain: PersonId,
    after: i64,
) -> Result<Option<i64>> {
    let end = sqlx::query_scalar!(
        r#"select max(id) as "end: i64" from
            (select id from history where chain = ? and id > ? order by id limit ?)"#,
        chain,
        after,
        PIECE
    );
    Ok(end.fetch_one(tx).await?)
}

/// Where a row is, and what it holds.
enum Found {
    Here(serde_json::Map<String, Value>),
    Elsewhere,
    Nowhere,
}

/// The row as the database has it, as JSON.
async fn row(tx: &mut SqliteConnection, kind: &str, item: i64, chain: PersonId) -> Result<Found> {
    let columns = columns(tx, kind).await?;
    let pairs: Vec<String> = columns.iter().map(|name| format!(r#"'{name}', "{name}""#)).collect();
    if pairs.is_empty() {
        return Ok(Found::Nowhere);
    }
    let (owner, pairs) = (owner(kind, &columns), pairs.join(", "));
    let question =
        format!(r#"select json_object({pairs}), {owner} is ? from "{kind}" where id = ?"#);
    let row = sqlx::query_as::<_, (String, bool)>(AssertSqlSafe(question)).bind(chain).bind(item);
    Ok(match row.fetch_optional(tx).await? {
        None => Found::Nowhere,
        Some((_, false)) => Found::Elsewhere,
        Some((text, true)) => serde_json::from_str(&text).map_or(Found::Nowhere, Found::Here),
    })
}

/// SQLite keeps yes and no as 1 and 0.
fn same(told: &Value, stands: Option<&Value>) -> bool {
    match (told, stands) {
        (Value::String(text), _) if text == SEALED => true,
        (Value::Bool(told), Some(stands)) => stands.as_i64() == Some(i64::from(*told)),
        (told, Some(stands)) => told == stands,
        (_, None) => false,
    }
}
