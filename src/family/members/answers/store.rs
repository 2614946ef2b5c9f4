//! All the SQL of answers. One about an item that is hidden from the reader is not there.

use super::model::{Answer, How, Said, State};
use crate::base::{
    change::Change,
    ids::{AnswerId, MemberId},
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Members,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every answer there ever was, the newest first.
pub async fn list(view: &View<Members>) -> Result<Vec<Answer>> {
    let (person, reader) = (view.person(), view.member());
    view.all(query_as!(
        Answer,
        r#"select id, person_id, question as "question: Line", said as "said: Said",
            hide_what as "hide_what: Line", hide_from as "hide_from: Line",
            own_words as "own_words: Note", asked_by as "asked_by: MemberId",
            how as "how: How", asked_on as "asked_on: Date", about_kind, about_item,
            state as "state: State", struck_reason as "struck_reason: Line", version
        from answer a
        where person_id = ?1 and not exists (select 1 from hidden x where x.person_id = ?1
            and x.member_id = ?2 and x.standing and x.kind = about_kind and x.item = about_item)
        order by asked_on desc, id desc"#,
        person,
        reader
    ))
    .await
}

pub async fn find(view: &View<Members>, id: AnswerId) -> Result<Answer> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

/// What stands about one item or place.
pub async fn about(view: &View<Members>, kind: &str, item: i64) -> Result<Vec<Answer>> {
    let mut all = list(view).await?;
    all.retain(|it| it.is_standing() && it.is_about(kind, item));
    Ok(all)
}

pub async fn add(write: &mut Write<Members>, new: &Answer) -> Result<AnswerId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into answer (person_id, question, said, hide_what, hide_from, own_words,
                asked_by, how, asked_on, about_kind, about_item, state, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.question,
            new.said,
            new.hide_what,
            new.hide_from,
            new.own_words,
            new.asked_by,
            new.how,
            new.asked_on,
            new.about_kind,
            new.about_item,
            new.state,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

/// Only what became of it changes: what she answered stays as it was.
pub async fn save(write: &mut Write<Members>, old: &Answer, new: &Answer) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update answer set state = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.state,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The questions, for the history.
pub async fn titles(view: &View<Members>) -> Result<Vec<(AnswerId, String)>> {
    let all = list(view).await?.into_iter();
    Ok(all.map(|it| (it.id, it.question.to_string())).collect())
}
