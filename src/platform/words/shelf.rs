//! One reader's shelf: the texts she may see, and the index of their words.
//!
//! What was typed is taken apart by the index's own reader of words, so that no quote or operator
//! of it is ever part of a question: questions are put together from whole words alone.

use super::{Known, Leaf, Sheets};
use crate::platform::error::{Error, Result};
use sqlx::{Connection, SqliteConnection};
use std::{collections::HashSet, sync::Arc};
use tokio::sync::Mutex;

const TABLES: [&str; 4] = [
    "create virtual table leaf using fts5(title, text, also,
        tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3')",
    "create virtual table vocabulary using fts5vocab('leaf', 'row')",
    "create virtual table typed using fts5(words, content = '',
        tokenize = 'unicode61 remove_diacritics 2')",
    "create virtual table typed_word using fts5vocab('typed', 'instance')",
];

pub struct Shelf {
    pub leaves: Vec<Leaf>,
    /// The pages she may see. The index of their words is on the disk.
    pub pages: Sheets,
    /// The words on anyone's pages.
    pub known_on_pages: Arc<Known>,
    known: Known,
    index: Mutex<SqliteConnection>,
}

/// A leaf's title, and a part of its text, with what was asked for between two marks.
pub struct Excerpt {
    pub id: i64,
    pub title: String,
    pub text: String,
}

impl Shelf {
    /// What stands before and after a word that was asked for.
    pub const MARKS: [&'static str; 2] = ["\u{2}", "\u{3}"];
    /// How many words of a text are shown.
    pub const WORDS: i64 = 28;

    pub async fn laid(
        leaves: Vec<Leaf>,
        pages: Sheets,
        known_on_pages: Arc<Known>,
    ) -> Result<Shelf> {
        let mut index = SqliteConnection::connect("sqlite::memory:").await?;
        for table in TABLES {
            sqlx::query(table).execute(&mut index).await?;
        }
        let rows = leaves.iter().enumerate();
        let rows: Vec<_> = rows.map(|(id, it)| (id, &it.title, &it.text, &it.also)).collect();
        let rows = serde_json::to_string(&rows).map_err(|e| Error::Internal(e.into()))?;
        sqlx::query(
            "insert into leaf (rowid, title, text, also)
            select value ->> 0, value ->> 1, value ->> 2, value ->> 3 from json_each(?)",
        )
        .bind(rows)
        .execute(&mut index)
        .await?;
        let (known, index) = (Known::default(), Mutex::new(index));
        Ok(Shelf { leaves, pages, known_on_pages, known, index })
    }

    /// The words of a typed text, in their order, as the index spells them: small, without accents.
    pub async fn words_of(&self, typed: &str) -> Result<Vec<String>> {
        let mut index = self.index.lock().await;
        sqlx::query("insert into typed (typed) values ('delete-all')").execute(&mut *index).await?;
        sqlx::query("insert into typed (rowid, words) values (1, ?)")
            .bind(typed)
            .execute(&mut *index)
            .await?;
        let words = sqlx::query_scalar("select term from typed_word order by offset");
        Ok(words.fetch_all(&mut *index).await?)
    }

    /// The leaves that answer a question, by their place on the shelf.
    pub async fn matching(&self, question: &str) -> Result<Vec<i64>> {
        let mut index = self.index.lock().await;
        let found =
            sqlx::query_scalar("select json_group_array(rowid) from leaf where leaf match ?")
                .bind(question)
                .fetch_one(&mut *index)
                .await?;
        ids(found)
    }

    /// All words that stand on some leaf.
    pub async fn known(&self) -> Result<&HashSet<String>> {
        let read = || async {
            let mut index = self.index.lock().await;
            let known = sqlx::query_scalar("select term from vocabulary");
            Ok(known.fetch_all(&mut *index).await?.into_iter().collect())
        };
        self.known.get_or_try_init(read).await
    }

    pub async fn excerpts(&self, question: &str, leaves: &[i64]) -> Result<Vec<Excerpt>> {
        let mut index = self.index.lock().await;
        let rows: Vec<(i64, String, String)> = sqlx::query_as(
            "select rowid, highlight(leaf, 0, ?1, ?2), snippet(leaf, 1, ?1, ?2, '…', ?3) from leaf
            where leaf match ?4 and +rowid in (select value from json_each(?5))",
        )
        .bind(Self::MARKS[0])
        .bind(Self::MARKS[1])
        .bind(Self::WORDS)
        .bind(question)
        .bind(json(leaves))
        .fetch_all(&mut *index)
        .await?;
        Ok(rows.into_iter().map(|(id, title, text)| Excerpt { id, title, text }).collect())
    }
}

/// A list of ids, as one text: read row by row, many would take long.
pub fn ids(listed: String) -> Result<Vec<i64>> {
    let mut ids: Vec<i64> = serde_json::from_str(&listed).map_err(|e| Error::Internal(e.into()))?;
    ids.sort_unstable();
    Ok(ids)
}

pub fn json(ids: &[i64]) -> String {
    serde_json::to_string(ids).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    async fn shelf() -> Shelf {
        let leaf = |title: &str, text: &str, also: &str| Leaf {
            kind: "medicine",
            title: title.into(),
            text: text.into(),
            also: also.into(),
            ..Leaf::default()
        };
        let leaves = vec![
            leaf("Warfarin", "for the heart · Dr. Żółkiewski", ""),
            leaf("Métoprolol", "thins nothing; taken with warfarin", "2185550101"),
        ];
        Shelf::laid(leaves, Sheets::default(), Arc::default()).await.expect("a shelf")
    }

    #[tokio::test]
    async fn words_are_taken_apart_and_never_become_syntax() {
        let shelf = shelf().await;
        let typed = "NEAR(\"Métoprolol\" 50-mg) OR title : -x* ^ ' ; { } \0 \u{1f600}";
        let words = shelf.words_of(typed).await.expect("words");
        assert_eq!(words, ["near", "metoprolol", "50", "mg", "or", "title", "x"]);
        assert_eq!(shelf.words_of("  \"\" *").await.expect("words"), [""; 0]);
        assert_eq!(shelf.words_of("Warfarin").await.expect("words"), ["warfarin"]);
    }

    #[tokio::test]
    async fn a_beginning_an_accent_and_a_column_are_found() {
        let shelf = shelf().await;
        for (question, found) in [
            ("\"warfarin\"", vec![0, 1]),
            ("title : \"warfarin\"", vec![0]),
            ("\"metop\"*", vec![1]),
            ("\"zol\"*", vec![]),
            ("\"218555\"*", vec![1]),
        ] {
            assert_eq!(shelf.matching(question).await.expect("found"), found, "{question}");
        }
        let shown = shelf.excerpts("\"warfarin\"*", &[1]).await.expect("shown");
        assert_eq!(shown[0].text, "thins nothing; taken with \u{2}warfarin\u{3}");
        let known = shelf.known().await.expect("known");
        assert!(known.contains("zołkiewski") && !known.contains("warfarim"), "{known:?}");
    }
}
