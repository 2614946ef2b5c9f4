//! All the SQL of prints.

use super::print::Print;
use crate::base::{change::Change, clock::Instant, ids::PrintId};
use crate::platform::{
    auth::area::{Essentials, Notes},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as, query_scalar};

/// The latest prints of this record.
pub async fn list(view: &View<Essentials>) -> Result<Vec<Print>> {
    let person = view.person();
    view.all(query_as!(
        Print,
        r#"select id, member_id, sheet, code, printed_at as "printed_at: Instant", facts, head
        from print where person_id = ? order by id desc limit 30"#,
        person
    ))
    .await
}

pub async fn add(write: &mut Write<Notes>, new: &Print) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into print (person_id, member_id, sheet, code, printed_at, facts, head)
            values (?, ?, ?, ?, ?, ?, ?)",
            person,
            new.member_id,
            new.sheet,
            new.code,
            new.printed_at,
            new.facts,
            new.head
        ),
    );
    added.await.map(|_| ())
}

/// The names of these prints, for the history.
pub async fn titles(view: &View<Essentials>, these: &[i64]) -> Result<Vec<(PrintId, String)>> {
    let (person, these) = (view.person(), serde_json::json!(these).to_string());
    let all = view.all(query!(
        r#"select id as "id: PrintId", sheet || ' ' || code as "title!: String" from print
        where person_id = ? and id in (select value from json_each(?))"#,
        person,
        these
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.title)).collect())
}

/// How many prints there ever were.
pub async fn count(view: &View<Essentials>) -> Result<i64> {
    let person = view.person();
    let count =
        view.values(query_scalar!("select count(*) from print where person_id = ?", person));
    Ok(count.await?.pop().unwrap_or(0))
}
