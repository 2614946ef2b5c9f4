//! All the SQL of what was carried, and of the wishes about it.
//!
//! Only who may change tasks sees any of it, and an aide her own alone. What a member wishes not to
//! be shown is there for herself; where the person wishes that none is, each sees her own. So every
//! reader is asked for in every query, the titles for the history too.

use super::{
    model::{Carried, Kind},
    wish::Wish,
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{CarriedId, MemberId, WishId},
    text::Line,
};
use crate::platform::{
    auth::area::Tasks,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Which entries are wanted. Empty: all that were not struck.
#[derive(Clone, Debug, Default)]
pub struct Wanted {
    /// This one, also where it was struck.
    pub id: Option<CarriedId>,
    pub from: Option<Date>,
    pub to: Option<Date>,
    /// Struck ones too.
    pub all: bool,
}

/// The newest day first.
pub async fn list(view: &View<Tasks>, wanted: &Wanted) -> Result<Vec<Carried>> {
    let (person, member) = (view.person(), view.member());
    let (changes, own) = (view.may_change(), view.own_only());
    view.all(query_as!(
        Carried,
        r#"select id, person_id, member_id as "member_id: MemberId", name as "name: Line",
            kind as "kind: Kind", day_on as "day_on: Date", minutes, miles,
            words as "words: Line", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from carried c
        where person_id = ?1 and ?3 and (?5 is null and (not struck or ?8) or id = ?5)
            and (?6 is null or day_on >= ?6) and (?7 is null or day_on <= ?7)
            and (member_id = ?2 or name is not null and entered_by = ?2
                or not ?4 and not exists (select 1 from carried_wish w
                    where w.person_id = c.person_id and w.hides
                        and (w.member_id is null or w.member_id = c.member_id)))
        order by day_on desc, id desc"#,
        person,
        member,
        changes,
        own,
        wanted.id,
        wanted.from,
        wanted.to,
        wanted.all
    ))
    .await
}

pub async fn find(view: &View<Tasks>, id: CarriedId) -> Result<Carried> {
    let wanted = Wanted { id: Some(id), ..Wanted::default() };
    list(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Tasks>, new: &Carried) -> Result<CarriedId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into carried (person_id, member_id, name, kind, day_on, minutes, miles, words,
                entered_by, entered_at, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.member_id,
            new.name,
            new.kind,
            new.day_on,
            new.minutes,
            new.miles,
            new.words,
            new.entered_by,
            new.entered_at,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Tasks>, old: &Carried, new: &Carried) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update carried set name = ?, kind = ?, day_on = ?, minutes = ?, miles = ?, words = ?,
                struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.kind,
            new.day_on,
            new.minutes,
            new.miles,
            new.words,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// What every entry there ever was says, for the history.
pub async fn titles(view: &View<Tasks>) -> Result<Vec<(CarriedId, String)>> {
    let all = list(view, &Wanted { all: true, ..Wanted::default() }).await?.into_iter();
    Ok(all.map(|it| (it.id, it.title())).collect())
}

/// The person's wish, the reader's own, and whether anyone at all is not shown.
pub struct Wishes {
    pub of_all: Wish,
    pub own: Wish,
    pub someone: bool,
}

pub async fn wishes(view: &View<Tasks>, today: Date) -> Result<Wishes> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query_as!(
        Wish,
        r#"select id, person_id, member_id as "member_id: MemberId", hides as "hides: bool",
            said_by as "said_by: Line", said_on as "said_on: Date", entered_by, version
        from carried_wish where person_id = ?"#,
        person
    ));
    let all = all.await?;
    let of = |whose: Option<MemberId>| {
        let found = all.iter().find(|it| it.member_id == whose).cloned();
        found.unwrap_or_else(|| Wish::unsaid(person, whose, member, today))
    };
    let someone = all.iter().any(|it| it.hides && it.member_id.is_some());
    Ok(Wishes { of_all: of(None), own: of(Some(member)), someone })
}

pub async fn keep_wish(write: &mut Write<Tasks>, old: &Wish, new: &Wish) -> Result<WishId> {
    let person = write.person();
    let kept = if old.is_said() {
        let saved = query!(
            "update carried_wish set hides = ?, said_by = ?, said_on = ?, entered_by = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.hides,
            new.said_by,
            new.said_on,
            new.entered_by,
            person,
            old.id,
            old.version
        );
        write.apply(Change::Edited(old, new), saved).await?
    } else {
        let added = query!(
            "insert into carried_wish (person_id, member_id, hides, said_by, said_on, entered_by)
            values (?, ?, ?, ?, ?, ?)",
            person,
            new.member_id,
            new.hides,
            new.said_by,
            new.said_on,
            new.entered_by
        );
        write.apply(Change::Added(new), added).await?
    };
    Ok(kept.into())
}

/// The wishes that the reader may know of: the person's, and her own.
pub async fn wish_titles(view: &View<Tasks>) -> Result<Vec<(WishId, String)>> {
    let (person, member, changes) = (view.person(), view.member(), view.may_change());
    let all = view.all(query!(
        r#"select id as "id: WishId"
        from carried_wish
        where person_id = ?1 and ?3 and (member_id is null or member_id = ?2)"#,
        person,
        member,
        changes
    ));
    let all = all.await?.into_iter();
    Ok(all.map(|it| (it.id, "what each carries".to_owned())).collect())
}
