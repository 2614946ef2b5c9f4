//! All the SQL of what was said of two papers. Who does not see both is told nothing of it: what is read
//! here is only shown beside papers that she was shown.

use super::{
    super::store::titles as papers,
    pair::{Answer, PaperPair},
};
use crate::base::{
    change::Change,
    ids::{PaperId, PaperPairId},
};
use crate::platform::{
    auth::area::Papers,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use std::collections::HashMap;

pub async fn list(view: &View<Papers>) -> Result<Vec<PaperPair>> {
    let person = view.person();
    view.all(query_as!(
        PaperPair,
        r#"select id, person_id, first_id, second_id, answer as "answer: Answer", said_by,
            said_at as "said_at: _", version
        from paper_pair where person_id = ? order by id"#,
        person
    ))
    .await
}

/// Keeps what is said of two: the first time it is added, every other time an edit.
pub async fn say(
    write: &mut Write<Papers>,
    (a, b): (PaperId, PaperId),
    answer: Answer,
) -> Result<()> {
    let by = (write.member(), write.at());
    let kept = list(write).await?.into_iter().find(|it| it.other(a) == Some(b));
    match kept {
        Some(old) if old.answer == answer => Ok(()),
        Some(old) => save(write, &old, &old.again(answer, by)).await,
        None => {
            let new = PaperPair::said(write.person(), (a, b), answer, by);
            add(write, &new).await
        }
    }
}

async fn add(write: &mut Write<Papers>, new: &PaperPair) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into paper_pair (person_id, first_id, second_id, answer, said_by, said_at)
            values (?, ?, ?, ?, ?, ?)",
            person,
            new.first_id,
            new.second_id,
            new.answer,
            new.said_by,
            new.said_at
        ),
    );
    added.await.map(|_| ())
}

async fn save(write: &mut Write<Papers>, old: &PaperPair, new: &PaperPair) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update paper_pair set answer = ?, said_by = ?, said_at = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.answer,
            new.said_by,
            new.said_at,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Both by their names, for the history: of a pair of which the reader does not see both there is none.
pub async fn titles(view: &View<Papers>) -> Result<Vec<(PaperPairId, String)>> {
    let papers: HashMap<PaperId, String> = papers(view).await?.into_iter().collect();
    let named = |it: PaperPair| {
        let (first, second) = (papers.get(&it.first_id)?, papers.get(&it.second_id)?);
        Some((it.id, format!("{first} and {second}")))
    };
    Ok(list(view).await?.into_iter().filter_map(named).collect())
}
