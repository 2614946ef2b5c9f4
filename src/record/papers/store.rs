//! All the SQL of papers; of their pages it is in `page_store`.
//!
//! A paper that is hidden from the reader is not there; nor is one for stewards only, where she is none,
//! a directive where her place does not reach directives, or one from a contact that is hidden from her.

use super::{
    kind::{Kind, Original},
    model::{Paper, State, title},
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::PaperId,
    text::{Line, Note},
};
use crate::platform::{
    auth::area::{AreaName, Papers},
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as, query_scalar};
use time::Date;

/// Which papers are wanted. Empty: all there ever were.
#[derive(Clone, Debug, Default)]
struct Wanted {
    id: Option<PaperId>,
    /// Of those that were not struck.
    state: Option<State>,
    /// Whose last day is not after this one.
    until: Option<Date>,
}

/// Those in the tray, in the order in which they came.
pub async fn waiting(view: &View<Papers>) -> Result<Vec<Paper>> {
    read(view, &Wanted { state: Some(State::Waiting), ..Wanted::default() }).await
}

/// Those that are filed, replaced ones too, in the order in which they came.
pub async fn filed(view: &View<Papers>) -> Result<Vec<Paper>> {
    read(view, &Wanted { state: Some(State::Filed), ..Wanted::default() }).await
}

/// Those that are filed and whose last day is not after this one.
pub async fn lapsing(view: &View<Papers>, until: Date) -> Result<Vec<Paper>> {
    let wanted = Wanted { state: Some(State::Filed), until: Some(until), ..Wanted::default() };
    read(view, &wanted).await
}

/// One, a struck one as well.
pub async fn find(view: &View<Papers>, id: PaperId) -> Result<Paper> {
    let wanted = Wanted { id: Some(id), ..Wanted::default() };
    read(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

async fn read(view: &View<Papers>, wanted: &Wanted) -> Result<Vec<Paper>> {
    let (person, member) = (view.person(), view.member());
    let (decides, directives) = (view.decides(), view.sees_area(AreaName::Directives));
    let Wanted { id, state, until } = wanted;
    view.all(query_as!(
        Paper,
        r#"select id, person_id, state as "state: State", sent_as as "sent_as: Line", sent_by,
            sent_at as "sent_at: Instant", kind as "kind: Kind", title as "title: Line",
            dated_on as "dated_on: Date", contact_id as "contact_id: _",
            from_name as "from_name: Line", original as "original: Original",
            original_where as "original_where: Line", stewards_only as "stewards_only: bool",
            expires_on as "expires_on: Date", note as "note: Note", about, filed_by as "filed_by: _",
            filed_at as "filed_at: Instant", joined_to as "joined_to: _",
            replaced_by as "replaced_by: _", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from paper p
        where person_id = ?1 and (?2 is null or id = ?2)
            and (?3 is null or state = ?3 and not struck) and (?4 is null or expires_on <= ?4)
            and (not stewards_only or ?5) and (kind is null or kind <> 'directive' or ?6)
            and id not in (select item from hidden where kind = 'paper' and member_id = ?7 and standing)
            and not exists (select 1 from hidden x where x.kind = 'contact' and x.item = p.contact_id
                and x.member_id = ?7 and x.standing)
        order by id"#,
        person,
        id,
        state,
        until,
        decides,
        directives,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Papers>, new: &Paper) -> Result<PaperId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into paper (person_id, state, sent_as, sent_by, sent_at, kind, title, dated_on,
                contact_id, from_name, original, original_where, stewards_only, expires_on, note,
                about, filed_by, filed_at, joined_to, replaced_by, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.state,
            new.sent_as,
            new.sent_by,
            new.sent_at,
            new.kind,
            new.title,
            new.dated_on,
            new.contact_id,
            new.from_name,
            new.original,
            new.original_where,
            new.stewards_only,
            new.expires_on,
            new.note,
            new.about,
            new.filed_by,
            new.filed_at,
            new.joined_to,
            new.replaced_by,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Papers>, old: &Paper, new: &Paper) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update paper set state = ?, kind = ?, title = ?, dated_on = ?, contact_id = ?,
                from_name = ?, original = ?, original_where = ?, stewards_only = ?, expires_on = ?,
                note = ?, about = ?, filed_by = ?, filed_at = ?, joined_to = ?, replaced_by = ?, struck = ?,
                struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.state,
            new.kind,
            new.title,
            new.dated_on,
            new.contact_id,
            new.from_name,
            new.original,
            new.original_where,
            new.stewards_only,
            new.expires_on,
            new.note,
            new.about,
            new.filed_by,
            new.filed_at,
            new.joined_to,
            new.replaced_by,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Whether it is kept from anyone who may see papers: what becomes of its pages must not show them.
pub async fn is_close(view: &View<Papers>, paper: &Paper) -> Result<bool> {
    let person = view.person();
    let hidden = view.values(query_scalar!(
        "select count(*) from hidden where person_id = ?1 and standing
            and (kind = 'paper' and item = ?2 or kind = 'contact' and item = ?3)",
        person,
        paper.id,
        paper.contact_id
    ));
    let hidden = hidden.await?.first().is_some_and(|it| *it > 0);
    Ok(hidden || paper.stewards_only || paper.kind == Some(Kind::Directive))
}

/// What every paper there ever was is called, for the history.
pub async fn titles(view: &View<Papers>) -> Result<Vec<(PaperId, String)>> {
    let (person, member) = (view.person(), view.member());
    let (decides, directives) = (view.decides(), view.sees_area(AreaName::Directives));
    let all = view.all(query!(
        r#"select id as "id: PaperId", title as "title: Line", sent_as as "sent_as: Line"
        from paper p
        where person_id = ?1
            and (not stewards_only or ?2) and (kind is null or kind <> 'directive' or ?3)
            and id not in (select item from hidden where kind = 'paper' and member_id = ?4 and standing)
            and not exists (select 1 from hidden x where x.kind = 'contact' and x.item = p.contact_id
                and x.member_id = ?4 and x.standing)"#,
        person,
        decides,
        directives,
        member
    ));
    let all = all.await?.into_iter();
    Ok(all.map(|it| (it.id, title(it.title.as_ref(), it.sent_as.as_ref()))).collect())
}
