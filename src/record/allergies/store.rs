//! All the SQL of allergies. An allergy that is hidden from the reader is not there; the answer
//! that counts where nothing is listed is not hidden from anyone.

use super::{
    answer::{AllergyAnswer, Answer},
    model::{Allergy, Nature},
    state::State,
};
use crate::base::{change::Change, clock::Instant, ids::AllergyId, text::Line};
use crate::platform::{
    auth::area::Essentials,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// Every allergy that was not struck: allergies first, then intolerances.
pub async fn list(view: &View<Essentials>) -> Result<Vec<Allergy>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Allergy,
        r#"select id, person_id, substance as "substance: Line", nature as "nature: Nature",
            reaction as "reaction: Line", since as "since: Line", source as "source: Line",
            struck as "struck: bool", struck_reason as "struck_reason: Line",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from allergy
        where person_id = ? and not struck
            and id not in (select item from hidden where kind = 'allergy' and member_id = ? and standing)
        order by nature = 'intolerance', lower(substance), id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Essentials>, id: AllergyId) -> Result<Allergy> {
    let (person, member) = (view.person(), view.member());
    view.one(query_as!(
        Allergy,
        r#"select id, person_id, substance as "substance: Line", nature as "nature: Nature",
            reaction as "reaction: Line", since as "since: Line", source as "source: Line",
            struck as "struck: bool", struck_reason as "struck_reason: Line",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from allergy
        where person_id = ? and id = ?
            and id not in (select item from hidden where kind = 'allergy' and member_id = ? and standing)"#,
        person,
        id,
        member
    ))
    .await
}

/// Listed, none known, or not asked.
pub async fn state(view: &View<Essentials>) -> Result<State> {
    Ok(State::of(list(view).await?, answer(view).await?))
}

/// The answer as it was last written down.
pub async fn answer(view: &View<Essentials>) -> Result<AllergyAnswer> {
    let person = view.person();
    let found = view.maybe(query_as!(
        AllergyAnswer,
        r#"select id, person_id, answer as "answer: Answer", said_by as "said_by: Line",
            said_on as "said_on: Date", version
        from allergy_answer
        where person_id = ?"#,
        person
    ));
    Ok(found.await?.unwrap_or_else(|| AllergyAnswer::not_asked(person)))
}

/// Adds one, and takes a standing "none known" back.
pub async fn add(write: &mut Write<Essentials>, new: &Allergy) -> Result<AllergyId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into allergy (person_id, substance, nature, reaction, since, source, struck,
                struck_reason, checked_at, checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.substance,
            new.nature,
            new.reaction,
            new.since,
            new.source,
            new.struck,
            new.struck_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    let id = added.await?.into();
    retract(write).await?;
    Ok(id)
}

/// Saves one, and takes a standing "none known" back: it may have been written by a member from
/// whom this one is hidden, and must not come to count when this one is struck.
pub async fn save(write: &mut Write<Essentials>, old: &Allergy, new: &Allergy) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update allergy set substance = ?, nature = ?, reaction = ?, since = ?, source = ?,
                struck = ?, struck_reason = ?, checked_at = ?, checked_by = ?,
                checked_against = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.substance,
            new.nature,
            new.reaction,
            new.since,
            new.source,
            new.struck,
            new.struck_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against,
            person,
            old.id,
            old.version
        ),
    );
    saved.await?;
    retract(write).await
}

async fn retract(write: &mut Write<Essentials>) -> Result<()> {
    let before = answer(write).await?;
    let after = before.retracted();
    save_answer(write, &before, &after).await
}

/// Keeps an answer: the first one is added, every other is an edit of it.
pub async fn save_answer(
    write: &mut Write<Essentials>,
    old: &AllergyAnswer,
    new: &AllergyAnswer,
) -> Result<()> {
    if old.version == 0 {
        return if old == new { Ok(()) } else { add_answer(write, new).await };
    }
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update allergy_answer set answer = ?, said_by = ?, said_on = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.answer,
            new.said_by,
            new.said_on,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

async fn add_answer(write: &mut Write<Essentials>, new: &AllergyAnswer) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into allergy_answer (person_id, answer, said_by, said_on)
            values (?, ?, ?, ?)",
            person,
            new.answer,
            new.said_by,
            new.said_on
        ),
    );
    added.await.map(|_| ())
}

/// The name of every one there ever was, for the history.
pub async fn titles(view: &View<Essentials>) -> Result<Vec<(AllergyId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select id as "id: AllergyId", substance as title from allergy
        where person_id = ?
            and id not in (select item from hidden where kind = 'allergy' and member_id = ? and standing)"#,
        person,
        member
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.title)).collect())
}
