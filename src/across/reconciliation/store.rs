//! All the SQL of second lists and their lines.
//!
//! A line that names a medicine hidden from the reader is not there for her, unless she entered
//! the list herself: then she knows the paper.

use super::{
    matching::Pairs,
    model::{ListLine, ListState, Paper, SecondList},
    settled_store,
};
use crate::{
    base::{
        change::Change,
        clock::Instant,
        ids::{ListLineId, SecondListId},
        text::Line,
    },
    platform::{
        auth::area::Clinical,
        db::{View, Write},
        error::{Error, Result},
    },
    record::medicines::store as medicines,
};
use sqlx::{query, query_as};
use time::Date;

/// Every list, the newest first; those struck at the end.
pub async fn list(view: &View<Clinical>) -> Result<Vec<SecondList>> {
    let person = view.person();
    view.all(query_as!(
        SecondList,
        r#"select id, person_id, paper as "paper: Paper", dated_on as "dated_on: Date",
            source as "source: Line", born as "born: Date", entered_by, entered_at as "entered_at: Instant",
            state as "state: ListState", finished_on as "finished_on: Date",
            struck_reason as "struck_reason: Line", version
        from second_list where person_id = ?
        order by state = 'struck', state = 'finished', id desc"#,
        person
    ))
    .await
}

pub async fn find(view: &View<Clinical>, id: SecondListId) -> Result<SecondList> {
    let all = list(view).await?.into_iter();
    all.into_iter().find(|it| it.id == id).ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Clinical>, new: &SecondList) -> Result<SecondListId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into second_list (person_id, paper, dated_on, source, born, entered_by,
                entered_at, state, finished_on, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.paper,
            new.dated_on,
            new.source,
            new.born,
            new.entered_by,
            new.entered_at,
            new.state,
            new.finished_on,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &SecondList, new: &SecondList) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update second_list set state = ?, finished_on = ?, struck_reason = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.state,
            new.finished_on,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The lines of a list as the reader may see them, in their order.
pub async fn lines(view: &View<Clinical>, list: &SecondList) -> Result<Vec<ListLine>> {
    let mut lines = all_lines(view, Some(list.id)).await?;
    if list.entered_by != view.member() {
        let (hidden, pairs) = (medicines::hidden_names(view).await?, confirmed(view).await?);
        lines.retain(|it| !hidden.iter().any(|name| pairs.same(name, it.name.as_str())));
    }
    Ok(lines)
}

async fn confirmed(view: &View<Clinical>) -> Result<Pairs> {
    let pairs = settled_store::all_pairs(view).await?;
    let standing = pairs.iter().filter(|it| it.standing);
    Ok(Pairs::of(standing.map(|it| (it.name.as_str(), it.other_name.as_str()))))
}

async fn all_lines(view: &View<Clinical>, list: Option<SecondListId>) -> Result<Vec<ListLine>> {
    let person = view.person();
    view.all(query_as!(
        ListLine,
        r#"select id, person_id, list_id, words as "words: Line", name as "name: Line",
            strength as "strength: Line", form as "form: Line",
            directions as "directions: Line", stopped as "stopped: bool",
            left_out as "left_out: bool", unclear as "unclear: Line", version
        from second_list_line where person_id = ?1 and (?2 is null or list_id = ?2) order by id"#,
        person,
        list
    ))
    .await
}

pub async fn add_line(write: &mut Write<Clinical>, new: &ListLine) -> Result<ListLineId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into second_list_line (person_id, list_id, words, name, strength, form,
                directions, stopped, left_out, unclear)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.list_id,
            new.words,
            new.name,
            new.strength,
            new.form,
            new.directions,
            new.stopped,
            new.left_out,
            new.unclear
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_line(write: &mut Write<Clinical>, old: &ListLine, new: &ListLine) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update second_list_line set name = ?, strength = ?, form = ?, directions = ?,
                stopped = ?, left_out = ?, unclear = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.strength,
            new.form,
            new.directions,
            new.stopped,
            new.left_out,
            new.unclear,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The title of every list there ever was, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(SecondListId, String)>> {
    Ok(list(view).await?.into_iter().map(|it| (it.id, it.title())).collect())
}

/// The words of every line that the reader may see, for the history.
pub async fn line_titles(view: &View<Clinical>) -> Result<Vec<(ListLineId, String)>> {
    let (lists, lines) = (list(view).await?, all_lines(view, None).await?);
    let (hidden, pairs) = (medicines::hidden_names(view).await?, confirmed(view).await?);
    let hers = |it: &ListLine| {
        lists.iter().any(|list| list.id == it.list_id && list.entered_by == view.member())
    };
    let shown = lines
        .into_iter()
        .filter(|it| hers(it) || !hidden.iter().any(|name| pairs.same(name, it.name.as_str())));
    Ok(shown.map(|it| (it.id, it.words.to_string())).collect())
}
