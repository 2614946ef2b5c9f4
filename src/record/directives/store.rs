//! All the SQL of directives and of the answer that counts where none is listed. A directive that is
//! hidden from the reader is not there.

use super::{
    answer::{Answer, DirectiveAnswer},
    kind::{Kind, Starts, State},
    model::Directive,
};
use crate::base::{
    change::Change,
    ids::{ContactId, DirectiveId},
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Directives,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every directive there ever was, the struck ones too.
pub async fn list(view: &View<Directives>) -> Result<Vec<Directive>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Directive,
        r#"select id, person_id, kind as "kind: Kind", form_of as "form_of: Line",
            signed_on as "signed_on: Date", witnesses as "witnesses: Line", notary as "notary: Line",
            agent_id as "agent_id: ContactId", alternate_id as "alternate_id: ContactId",
            second_alternate_id as "second_alternate_id: ContactId", starts as "starts: Starts",
            starts_words as "starts_words: Line", kept_where as "kept_where: Line",
            holder_id as "holder_id: ContactId", note as "note: Note", source as "source: Line",
            state as "state: State", superseded_by as "superseded_by: DirectiveId",
            voided_on as "voided_on: Date", voided_by as "voided_by: Line",
            voided_how as "voided_how: Line", reviewed_on as "reviewed_on: Date",
            reviewed_by as "reviewed_by: Line", reviewed_why as "reviewed_why: Line",
            differs_from as "differs_from: DirectiveId", differs_in as "differs_in: Line",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from directive
        where person_id = ?1
            and id not in (select item from hidden where kind = 'directive' and member_id = ?2 and standing)
        order by id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Directives>, id: DirectiveId) -> Result<Directive> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

/// Adds one, and takes a standing "no directives" back.
pub async fn add(write: &mut Write<Directives>, new: &Directive) -> Result<DirectiveId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into directive (person_id, kind, form_of, signed_on, witnesses, notary, agent_id,
                alternate_id, second_alternate_id, starts, starts_words, kept_where, holder_id, note,
                source, state)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.kind,
            new.form_of,
            new.signed_on,
            new.witnesses,
            new.notary,
            new.agent_id,
            new.alternate_id,
            new.second_alternate_id,
            new.starts,
            new.starts_words,
            new.kept_where,
            new.holder_id,
            new.note,
            new.source,
            new.state
        ),
    );
    let id = added.await?.into();
    retract(write).await?;
    Ok(id)
}

/// Saves one, and takes a standing "no directives" back: it may have been said by a member from whom
/// this one is hidden, and must not come to count when this one is struck.
pub async fn save(write: &mut Write<Directives>, old: &Directive, new: &Directive) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update directive set kind = ?, form_of = ?, signed_on = ?, witnesses = ?, notary = ?,
                agent_id = ?, alternate_id = ?, second_alternate_id = ?, starts = ?, starts_words = ?,
                kept_where = ?, holder_id = ?, note = ?, source = ?, state = ?, superseded_by = ?,
                voided_on = ?, voided_by = ?, voided_how = ?, reviewed_on = ?, reviewed_by = ?,
                reviewed_why = ?, differs_from = ?, differs_in = ?, struck = ?, struck_reason = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.kind,
            new.form_of,
            new.signed_on,
            new.witnesses,
            new.notary,
            new.agent_id,
            new.alternate_id,
            new.second_alternate_id,
            new.starts,
            new.starts_words,
            new.kept_where,
            new.holder_id,
            new.note,
            new.source,
            new.state,
            new.superseded_by,
            new.voided_on,
            new.voided_by,
            new.voided_how,
            new.reviewed_on,
            new.reviewed_by,
            new.reviewed_why,
            new.differs_from,
            new.differs_in,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await?;
    retract(write).await
}

async fn retract(write: &mut Write<Directives>) -> Result<()> {
    let before = answer(write).await?;
    let after = before.retracted();
    save_answer(write, &before, &after).await
}

/// The answer as it was last written down. It is not hidden from anyone who sees directives.
pub async fn answer(view: &View<Directives>) -> Result<DirectiveAnswer> {
    let person = view.person();
    let found = view.maybe(query_as!(
        DirectiveAnswer,
        r#"select id, person_id, answer as "answer: Answer", said_by as "said_by: Line",
            said_on as "said_on: Date", version
        from directive_answer
        where person_id = ?"#,
        person
    ));
    Ok(found.await?.unwrap_or_else(|| DirectiveAnswer::not_asked(person)))
}

/// Keeps an answer: the first one is added, every other is an edit of it.
pub async fn save_answer(
    write: &mut Write<Directives>,
    old: &DirectiveAnswer,
    new: &DirectiveAnswer,
) -> Result<()> {
    let person = write.person();
    if old.version == 0 && old == new {
        return Ok(());
    }
    if old.version == 0 {
        let added = query!(
            "insert into directive_answer (person_id, answer, said_by, said_on)
            values (?, ?, ?, ?)",
            person,
            new.answer,
            new.said_by,
            new.said_on
        );
        return write.apply(Change::Added(new), added).await.map(|_| ());
    }
    let saved = query!(
        "update directive_answer set answer = ?, said_by = ?, said_on = ?, version = version + 1
        where person_id = ? and id = ? and version = ?",
        new.answer,
        new.said_by,
        new.said_on,
        person,
        old.id,
        old.version
    );
    write.apply(Change::Edited(old, new), saved).await.map(|_| ())
}

/// The name of every one there ever was, for the history.
pub async fn titles(view: &View<Directives>) -> Result<Vec<(DirectiveId, String)>> {
    Ok(list(view).await?.into_iter().map(|it| (it.id, it.title())).collect())
}
