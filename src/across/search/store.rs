//! The SQL of the pages of papers, and of the index of their words.
//!
//! A paper that is hidden from the reader has no page for her. The index itself knows no reader:
//! what it finds counts only where it is among her pages.

use crate::platform::{
    auth::area::Papers,
    db::View,
    error::{Error, Result},
    words::ids,
};
use sqlx::{Sqlite, query, query::QueryScalar, query_scalar, sqlite::SqliteArguments};
use std::collections::HashSet;

/// A page of a paper, by the id of its text.
pub struct Page {
    pub id: i64,
    pub paper: i64,
    pub place: i64,
}

/// The pages that the reader sees, paper by paper.
pub async fn pages(view: &View<Papers>) -> Result<Vec<Page>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select id as "id!: i64", paper, place from page_text
        where person_id = ?
            and paper not in (select item from hidden where kind = 'paper' and member_id = ? and standing)
        order by paper, place"#,
        person,
        member
    ));
    let all = all.await?.into_iter();
    Ok(all.map(|it| Page { id: it.id, paper: it.paper, place: it.place }).collect())
}

/// Another number once any page has changed.
pub async fn mark<A>(view: &View<A>) -> Result<i64> {
    let mark = view.values(query_scalar!("select changes from page_mark"));
    Ok(mark.await?.pop().unwrap_or_default())
}

/// The pages that answer a question, whoever may see them.
pub async fn matching<A>(view: &View<A>, question: &str) -> Result<Vec<i64>> {
    let found = unchecked("select json_group_array(rowid) from page_word where page_word match ?");
    ids(view.values(found.bind(question)).await?.pop().unwrap_or_default())
}

/// All words that stand on some page. As one text: read row by row, many would take long.
pub async fn known<A>(view: &View<A>) -> Result<HashSet<String>> {
    let known = unchecked("select json_group_array(term) from page_vocabulary");
    let known = view.values(known).await?.pop().unwrap_or_default();
    serde_json::from_str(&known).map_err(|e| Error::Internal(e.into()))
}

/// A part of each of these pages, with what was asked for between two marks. The plus keeps FTS5 from being
/// asked once for each page: of a common beginning it would lay all that match together anew every time.
pub async fn excerpts<A>(
    view: &View<A>,
    question: &str,
    ([before, after], words): ([&str; 2], i64),
    pages: &str,
) -> Result<Vec<(i64, String)>> {
    let all = unchecked(
        "select json_array(rowid, snippet(page_word, 0, ?1, ?2, '…', ?3)) from page_word
        where page_word match ?4 and +rowid in (select value from json_each(?5))",
    );
    let all = all.bind(before).bind(after).bind(words).bind(question).bind(pages);
    let read = |row: String| {
        serde_json::from_str::<(i64, String)>(&row).map_err(|e| Error::Internal(e.into()))
    };
    view.values(all).await?.into_iter().map(read).collect()
}

/// sqlx cannot look into a virtual table when it compiles (its reader of query plans overflows).
fn unchecked<'q>(sql: &'static str) -> QueryScalar<'q, Sqlite, String, SqliteArguments> {
    query_scalar(sql)
}
