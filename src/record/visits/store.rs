//! All the SQL of the notes of visits, of what came of them and of who should read them.
//!
//! A note that is hidden from the reader is not there; nor is one of a contact or an appointment that
//! is hidden from her, nor what came of it with a medicine that is.

use super::model::{Item, Reader, Visit, What, title};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{AppointmentId, ContactId, MemberId, QuestionId, VisitId},
    text::{Line, Note},
};
use crate::platform::{
    auth::{
        area::{AreaName, Clinical, Notes, Role},
        lowered::Lowered,
        policy::{self, Level, Reach},
    },
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use std::collections::HashMap;
use time::Date;

/// Those that were not struck, the newest day first.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Visit>> {
    let mut all = visits(view, None).await?;
    all.retain(|it| !it.struck);
    Ok(all)
}

/// One, struck or not.
pub async fn find(view: &View<Clinical>, id: VisitId) -> Result<Visit> {
    visits(view, Some(id)).await?.pop().ok_or(Error::NotFound)
}

/// The last visit with this clinician, as far as it is noted.
pub async fn last_with(view: &View<Clinical>, contact: ContactId) -> Result<Option<Visit>> {
    let all = list(view).await?.into_iter();
    Ok(all.filter(|it| it.contact_id == Some(contact)).max_by_key(|it| (it.held_on, it.id)))
}

/// The notes of one time of an appointment.
pub async fn of_meeting(
    view: &View<Clinical>,
    (id, on): (AppointmentId, Date),
) -> Result<Vec<Visit>> {
    let mut all = list(view).await?;
    all.retain(|it| (it.appointment_id, it.occurrence_on) == (Some(id), Some(on)));
    Ok(all)
}

async fn visits(view: &View<Clinical>, id: Option<VisitId>) -> Result<Vec<Visit>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Visit,
        r#"select id, person_id, appointment_id as "appointment_id: _",
            occurrence_on as "occurrence_on: Date", held_on as "held_on: Date",
            contact_id as "contact_id: _", with_whom as "with_whom: Line", present,
            others as "others: Line", said as "said: Note", decisions as "decisions: Note",
            next_id as "next_id: _", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from visit
        where person_id = ?1 and (?3 is null or id = ?3)
            and id not in (select item from hidden where kind = 'visit' and member_id = ?2 and standing)
            and (contact_id is null or contact_id not in
                (select item from hidden where kind = 'contact' and member_id = ?2 and standing))
            and (appointment_id is null or appointment_id not in
                (select item from hidden where kind = 'appointment' and member_id = ?2 and standing))
        order by held_on desc, id desc"#,
        person,
        member,
        id
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Visit) -> Result<VisitId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into visit (person_id, appointment_id, occurrence_on, held_on, contact_id,
                with_whom, present, others, said, decisions, next_id, entered_by, entered_at,
                struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.appointment_id,
            new.occurrence_on,
            new.held_on,
            new.contact_id,
            new.with_whom,
            new.present,
            new.others,
            new.said,
            new.decisions,
            new.next_id,
            new.entered_by,
            new.entered_at,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Visit, new: &Visit) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update visit set held_on = ?, contact_id = ?, with_whom = ?, present = ?, others = ?,
                said = ?, decisions = ?, struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.held_on,
            new.contact_id,
            new.with_whom,
            new.present,
            new.others,
            new.said,
            new.decisions,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// What came of visits: of one, or of all that are not struck.
pub async fn items(view: &View<Clinical>, of: Option<VisitId>) -> Result<Vec<Item>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query_as!(
        Item,
        r#"select id, person_id, visit_id, what as "what: What", words as "words: Note",
            place as "place: Line", question_id as "question_id: _", turn_id as "turn_id: _",
            medicine_id as "medicine_id: _", task_id as "task_id: _", version
        from visit_item
        where person_id = ?1 and (?2 is null or visit_id = ?2)
            and visit_id not in (select item from hidden where kind = 'visit' and member_id = ?3 and standing)
            and (medicine_id is null or medicine_id not in
                (select item from hidden where kind = 'medicine' and member_id = ?3 and standing))
            and (question_id is null or question_id not in
                (select item from hidden where kind = 'question' and member_id = ?3 and standing))
        order by id"#,
        person,
        of,
        member
    ));
    let seen: Vec<_> = match of {
        Some(id) => vec![find(view, id).await?.id],
        None => list(view).await?.into_iter().map(|it| it.id).collect(),
    };
    Ok(all.await?.into_iter().filter(|it| seen.contains(&it.visit_id)).collect())
}

/// How often each question stood at a visit and was not answered there.
pub async fn carried(view: &View<Clinical>) -> Result<HashMap<QuestionId, usize>> {
    let mut often = HashMap::new();
    for id in
        items(view, None).await?.iter().filter(|it| it.is_carried()).filter_map(|it| it.question_id)
    {
        *often.entry(id).or_insert(0) += 1;
    }
    Ok(often)
}

pub async fn add_item(write: &mut Write<Clinical>, new: &Item) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into visit_item (person_id, visit_id, what, words, place, question_id, turn_id,
                medicine_id, task_id)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.visit_id,
            new.what,
            new.words,
            new.place,
            new.question_id,
            new.turn_id,
            new.medicine_id,
            new.task_id
        ),
    );
    added.await.map(|_| ())
}

/// Who should read a note.
pub async fn readers<A>(view: &View<A>, visit: VisitId) -> Result<Vec<Reader>> {
    let all = ever_readers(view, visit).await?;
    Ok(all.into_iter().filter(|it| it.standing).collect())
}

/// Who was ever asked to read a note.
pub async fn ever_readers<A>(view: &View<A>, visit: VisitId) -> Result<Vec<Reader>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Reader,
        r#"select id, person_id, visit_id, member_id, read_at as "read_at: Instant",
            standing as "standing: bool", version
        from visit_reader
        where person_id = ? and visit_id = ?
            and visit_id not in (select item from hidden where kind = 'visit' and member_id = ? and standing)
        order by member_id"#,
        person,
        visit,
        member
    ))
    .await
}

/// The notes that this member was asked to read, and has not said that she has.
pub async fn unread(view: &View<Clinical>) -> Result<Vec<Visit>> {
    let (person, member) = (view.person(), view.member());
    let asked = view.all(query!(
        r#"select visit_id as "visit_id: VisitId" from visit_reader
        where person_id = ?1 and member_id = ?2 and standing and read_at is null
            and visit_id not in (select item from hidden where kind = 'visit' and member_id = ?2 and standing)"#,
        person,
        member
    ));
    let (asked, mut all) = (asked.await?, list(view).await?);
    all.retain(|it| asked.iter().any(|row| row.visit_id == it.id));
    Ok(all)
}

pub async fn add_reader(write: &mut Write<Clinical>, new: &Reader) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into visit_reader (person_id, visit_id, member_id, read_at, standing)
            values (?, ?, ?, ?, ?)",
            person,
            new.visit_id,
            new.member_id,
            new.read_at,
            new.standing
        ),
    );
    added.await.map(|_| ())
}

/// Asked no more, or once more.
pub async fn save_reader(write: &mut Write<Clinical>, old: &Reader, new: &Reader) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update visit_reader set read_at = ?, standing = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.read_at,
            new.standing,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// A reader says that the note was read, in any role.
pub async fn mark_read(write: &mut Write<Notes>, old: &Reader, new: &Reader) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update visit_reader set read_at = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.read_at,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Those who may be asked to read a note: the standing members who see the clinical pages.
pub async fn members(view: &View<Clinical>) -> Result<Vec<(MemberId, String)>> {
    let person = view.person();
    let all = view.all(query!(
        r#"select m.id as "id: MemberId", m.name, s.role as "role: Role",
            s.lowered as "lowered: String"
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? and s.state = 'standing' order by s.id"#,
        person
    ));
    let sees = |role: Role, lowered: &str| {
        let reach = Reach { role, lowered: Lowered::from(lowered.to_owned()) };
        policy::allows(Some(reach), AreaName::Clinical, Level::See)
    };
    let all = all.await?.into_iter().filter(|it| sees(it.role, &it.lowered));
    Ok(all.map(|it| (it.id, it.name)).collect())
}

/// With whom and on which day each was, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(VisitId, String)>> {
    let all = visits(view, None).await?.into_iter();
    Ok(all.map(|it| (it.id, title(it.with_whom.as_str(), it.held_on))).collect())
}

/// Who should read which note, for the history.
pub async fn reader_titles(view: &View<Clinical>) -> Result<Vec<(i64, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select id, visit_id as "visit_id: VisitId" from visit_reader
        where person_id = ?
            and visit_id not in (select item from hidden where kind = 'visit' and member_id = ? and standing)"#,
        person,
        member
    ));
    let (all, titles) = (all.await?, titles(view).await?);
    let title = |id: VisitId| Some(titles.iter().find(|it| it.0 == id)?.1.clone());
    Ok(all.into_iter().filter_map(|it| Some((it.id, title(it.visit_id)?))).collect())
}
