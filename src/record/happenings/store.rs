//! All the SQL of happenings.
//!
//! A happening that is hidden from the reader is not there; nor is another's that is about an
//! item hidden from her, or about one in an area that her place does not reach.

use super::model::{Happening, Place, title};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::HappeningId,
    text::{Line, Note},
};
use crate::platform::{
    auth::area::{Clinical, Essentials, Log},
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};

/// Which happenings are wanted, the newest first. Empty: all that were not struck.
#[derive(Clone, Debug, Default)]
pub struct Wanted {
    pub id: Option<HappeningId>,
    pub place: Option<Place>,
    /// Kind and id of the item they are about.
    pub about: Option<(String, i64)>,
    pub before: Option<HappeningId>,
    pub most: i64,
}

/// How many happenings one page shows.
pub const PAGE: i64 = 50;

pub async fn list(view: &View<Log>, wanted: &Wanted) -> Result<Vec<Happening>> {
    let (person, member) = (view.person(), view.member());
    let clinical = view.area::<Clinical>().is_some();
    let essentials = view.area::<Essentials>().is_some();
    let Wanted { id, place, about, before, most } = wanted;
    let (kind, item) = about.clone().unzip();
    view.all(query_as!(
        Happening,
        r#"select id, person_id, words as "words: Note", photo, happened as "happened: Line",
            noted_by, noted_at as "noted_at: Instant", place as "place: Place",
            about_kind, about_item, struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from happening h
        where person_id = ?1 and (not struck or ?3 is not null) and (?3 is null or id = ?3)
            and (?4 is null or place = ?4) and (?5 is null or about_kind = ?5 and about_item = ?6)
            and (?7 is null or id < ?7)
            and id not in (select item from hidden where kind = 'happening' and member_id = ?2 and standing)
            and (noted_by = ?2 or about_kind is null
                or (case when about_kind in ('medicine', 'condition', 'operation') then ?8 else ?9 end)
                and not exists (select 1 from hidden x where x.kind = h.about_kind
                    and x.item = h.about_item and x.member_id = ?2 and x.standing))
        order by id desc limit ?10"#,
        person,
        member,
        id,
        place,
        kind,
        item,
        before,
        clinical,
        essentials,
        most
    ))
    .await
}

pub async fn find(view: &View<Log>, id: HappeningId) -> Result<Happening> {
    let wanted = Wanted { id: Some(id), most: 1, ..Wanted::default() };
    list(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Log>, new: &Happening) -> Result<HappeningId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into happening (person_id, words, photo, happened, noted_by, noted_at, place,
                about_kind, about_item, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.words,
            new.photo,
            new.happened,
            new.noted_by,
            new.noted_at,
            new.place,
            new.about_kind,
            new.about_item,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Log>, old: &Happening, new: &Happening) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update happening set words = ?, happened = ?, place = ?, about_kind = ?,
                about_item = ?, struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.words,
            new.happened,
            new.place,
            new.about_kind,
            new.about_item,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// The first words of every one there ever was, for the history.
pub async fn titles(view: &View<Log>) -> Result<Vec<(HappeningId, String)>> {
    let (person, member) = (view.person(), view.member());
    let clinical = view.area::<Clinical>().is_some();
    let essentials = view.area::<Essentials>().is_some();
    let all = view.all(query!(
        r#"select id as "id: HappeningId", substr(words, 1, 200) as "words: String"
        from happening h
        where person_id = ?1
            and id not in (select item from hidden where kind = 'happening' and member_id = ?2 and standing)
            and (noted_by = ?2 or about_kind is null
                or (case when about_kind in ('medicine', 'condition', 'operation') then ?3 else ?4 end)
                and not exists (select 1 from hidden x where x.kind = h.about_kind
                    and x.item = h.about_item and x.member_id = ?2 and x.standing))"#,
        person,
        member,
        clinical,
        essentials
    ));
    let all = all.await?.into_iter();
    Ok(all.map(|it| (it.id, title(it.words.as_deref()))).collect())
}
