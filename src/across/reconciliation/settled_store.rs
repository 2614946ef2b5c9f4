//! All the SQL of what was decided on rows, and of names confirmed to be of one ingredient.
//!
//! A row about a medicine that is hidden from the reader is not there for her, nor is a pair with
//! the name of one.

use super::{
    matching::Pairs,
    settled::{Class, Decision, SameIngredient, SettledRow, Wrote},
};
use crate::{
    base::{
        change::Change,
        clock::Instant,
        ids::{ListLineId, MedicineId, SameIngredientId, SecondListId, SettledRowId},
        text::Line,
    },
    platform::{
        auth::area::Clinical,
        db::{View, Write},
        error::Result,
    },
    record::medicines::store as medicines,
};
use sqlx::{query, query_as};

/// What was decided on the rows of a list, in the order of the decisions; of one list or of all.
pub async fn rows(view: &View<Clinical>, list: Option<SecondListId>) -> Result<Vec<SettledRow>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        SettledRow,
        r#"select id, person_id, list_id, line_id as "line_id: ListLineId",
            medicine_id as "medicine_id: MedicineId", class as "class: Class",
            decision as "decision: Decision", wrote as "wrote: Wrote", ours as "ours: Line",
            differs as "differs: Line", question_id as "question_id: _",
            turn_id as "turn_id: _", before, after_version,
            taken_back as "taken_back: bool", version
        from settled_row where person_id = ?1 and (?2 is null or list_id = ?2)
            and (medicine_id is null or medicine_id not in
                (select item from hidden where kind = 'medicine' and member_id = ?3 and standing))
        order by id"#,
        person,
        list,
        member
    ))
    .await
}

pub async fn add_row(write: &mut Write<Clinical>, new: &SettledRow) -> Result<SettledRowId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into settled_row (person_id, list_id, line_id, medicine_id, class, decision,
                wrote, ours, differs, question_id, turn_id, before, after_version, taken_back)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.list_id,
            new.line_id,
            new.medicine_id,
            new.class,
            new.decision,
            new.wrote,
            new.ours,
            new.differs,
            new.question_id,
            new.turn_id,
            new.before,
            new.after_version,
            new.taken_back
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_row(
    write: &mut Write<Clinical>,
    old: &SettledRow,
    new: &SettledRow,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update settled_row set taken_back = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.taken_back,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Every pair there ever was.
pub(super) async fn all_pairs(view: &View<Clinical>) -> Result<Vec<SameIngredient>> {
    let person = view.person();
    view.all(query_as!(
        SameIngredient,
        r#"select id, person_id, name as "name: Line", other_name as "other_name: Line",
            confirmed_by, confirmed_at as "confirmed_at: Instant",
            standing as "standing: bool", version
        from same_ingredient where person_id = ? order by lower(name), id"#,
        person
    ))
    .await
}

/// The standing pairs that the reader may see, to compare names by.
pub async fn confirmed(view: &View<Clinical>) -> Result<Pairs> {
    let pairs = pairs(view).await?;
    let standing = pairs.iter().filter(|it| it.standing);
    Ok(Pairs::of(standing.map(|it| (it.name.as_str(), it.other_name.as_str()))))
}

/// The pairs that the reader may see, those taken back too.
pub async fn pairs(view: &View<Clinical>) -> Result<Vec<SameIngredient>> {
    let (mut pairs, hidden) = (all_pairs(view).await?, medicines::hidden_names(view).await?);
    let names = |one: &Line| hidden.iter().any(|it| it.eq_ignore_ascii_case(one.as_str()));
    pairs.retain(|it| !names(&it.name) && !names(&it.other_name));
    Ok(pairs)
}

pub async fn add_pair(
    write: &mut Write<Clinical>,
    new: &SameIngredient,
) -> Result<SameIngredientId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into same_ingredient (person_id, name, other_name, confirmed_by, confirmed_at,
                standing)
            values (?, ?, ?, ?, ?, ?)",
            person,
            new.name,
            new.other_name,
            new.confirmed_by,
            new.confirmed_at,
            new.standing
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_pair(
    write: &mut Write<Clinical>,
    old: &SameIngredient,
    new: &SameIngredient,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update same_ingredient set standing = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.standing,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// What every row that the reader may see was about, for the history.
pub async fn row_titles(view: &View<Clinical>) -> Result<Vec<(SettledRowId, String)>> {
    let lines = super::store::line_titles(view).await?;
    let line =
        |it: ListLineId| lines.iter().find(|(id, _)| *id == it).map(|(_, words)| words.clone());
    let title = |it: SettledRow| {
        let title = match it.line_id {
            Some(of) => line(of)?,
            None => it.ours?.to_string(),
        };
        Some((it.id, title))
    };
    Ok(rows(view, None).await?.into_iter().filter_map(title).collect())
}

pub async fn pair_titles(view: &View<Clinical>) -> Result<Vec<(SameIngredientId, String)>> {
    Ok(pairs(view).await?.into_iter().map(|it| (it.id, it.title())).collect())
}
