//! All the SQL of prints.

use super::print::Print;
use crate::base::{change::Change, clock::Instant, ids::PrintId};
use crate::platform::{
    auth::area::{Essentials, Notes},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};

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

/// The name of every print there ever was, for the history.
pub async fn titles(view: &View<Essentials>) -> Result<Vec<(PrintId, String)>> {
    let person = view.person();
    let all = view.all(query!(
        r#"select id as "id: PrintId", sheet || ' ' || code as "title!: String" from print
        where person_id = ?"#,
        person
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.title)).collect())
}
