//! All the SQL of statements. A statement is not hidden from anyone: it says what was answered,
//! for whoever must know at once.

use super::model::{Answer, Question, Statement};
use crate::base::{change::Change, ids::StatementId, text::Line};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// The answer to each question, in the order of the questions.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Statement>> {
    let mut all = Vec::new();
    for question in Question::ALL {
        all.push(find(view, question).await?);
    }
    Ok(all)
}

/// The answer as it was last written down, or "not asked".
pub async fn find(view: &View<Clinical>, question: Question) -> Result<Statement> {
    let person = view.person();
    let found = view.maybe(query_as!(
        Statement,
        r#"select id, person_id, question as "question: Question", answer as "answer: Answer",
            which as "which: Line", said_by as "said_by: Line", said_on as "said_on: Date", version
        from statement
        where person_id = ? and question = ?"#,
        person,
        question
    ));
    Ok(found.await?.unwrap_or_else(|| Statement::not_asked(person, question)))
}

/// Keeps an answer: the first one is added, every other is an edit of it.
pub async fn save(write: &mut Write<Clinical>, old: &Statement, new: &Statement) -> Result<()> {
    if old.version == 0 {
        return if old == new { Ok(()) } else { add(write, new).await };
    }
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update statement set answer = ?, which = ?, said_by = ?, said_on = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.answer,
            new.which,
            new.said_by,
            new.said_on,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

async fn add(write: &mut Write<Clinical>, new: &Statement) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into statement (person_id, question, answer, which, said_by, said_on)
            values (?, ?, ?, ?, ?, ?)",
            person,
            new.question,
            new.answer,
            new.which,
            new.said_by,
            new.said_on
        ),
    );
    added.await.map(|_| ())
}

/// The question each answers, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(StatementId, String)>> {
    let all = list(view).await?.into_iter();
    Ok(all.map(|it| (it.id, format!("“{}”", it.question.words()))).collect())
}
