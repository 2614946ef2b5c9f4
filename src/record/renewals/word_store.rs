//! All the SQL of what was said of papers. A word is hidden from nobody who sees papers: it says what
//! was answered, so that nobody asks twice.

use super::{
    expected::{self, Fact},
    word::{Answer, PaperWord},
};
use crate::base::{change::Change, ids::PaperWordId, text::Line};
use crate::platform::{
    auth::area::Papers,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

pub async fn list(view: &View<Papers>) -> Result<Vec<PaperWord>> {
    let person = view.person();
    view.all(query_as!(
        PaperWord,
        r#"select id, person_id, about, answer as "answer: Answer", detail as "detail: Line",
            said_by as "said_by: Line", said_on as "said_on: Date", version
        from paper_word where person_id = ? order by id"#,
        person
    ))
    .await
}

/// What was last said about this, or "not asked".
pub async fn find(view: &View<Papers>, about: &str) -> Result<PaperWord> {
    let found = list(view).await?.into_iter().find(|it| it.about == about);
    Ok(found.unwrap_or_else(|| PaperWord::not_asked(view.person(), about)))
}

/// Keeps a word: the first one is added, every other is an edit of it.
pub async fn save(write: &mut Write<Papers>, old: &PaperWord, new: &PaperWord) -> Result<()> {
    if old.version == 0 {
        return if old == new { Ok(()) } else { add(write, new).await };
    }
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update paper_word set answer = ?, detail = ?, said_by = ?, said_on = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.answer,
            new.detail,
            new.said_by,
            new.said_on,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

async fn add(write: &mut Write<Papers>, new: &PaperWord) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into paper_word (person_id, about, answer, detail, said_by, said_on)
            values (?, ?, ?, ?, ?, ?)",
            person,
            new.about,
            new.answer,
            new.detail,
            new.said_by,
            new.said_on
        ),
    );
    added.await.map(|_| ())
}

/// What each is about, for the history.
pub async fn titles(view: &View<Papers>) -> Result<Vec<(PaperWordId, String)>> {
    let all = list(view).await?.into_iter();
    let title = |about: &str| match Fact::named(about) {
        Some(fact) => fact.subject().to_owned(),
        None => expected::find(about).map_or_else(|| about.to_owned(), |it| it.title),
    };
    Ok(all.map(|it| (it.id, format!("“{}”", title(&it.about)))).collect())
}
