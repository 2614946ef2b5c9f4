//! All the SQL of observations.
//!
//! One that is hidden from the reader is not there; nor is one kept for the clinician only, but for
//! the person and for who noticed it.

use super::{
    fall::{GotUp, Known},
    model::{Observation, title},
    subject::Subject,
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{AppointmentId, MemberId, ObservationId},
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Log,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Which observations are wanted, the newest day first. Empty: all that were not struck.
#[derive(Clone, Debug, Default)]
pub struct Wanted {
    pub id: Option<ObservationId>,
    pub about: Option<Subject>,
    pub before: Option<(Date, ObservationId)>,
    /// On the sheet of which visit.
    pub visit: Option<(AppointmentId, Date)>,
    pub most: i64,
}

/// How many one page shows.
pub const PAGE: i64 = 50;

pub async fn list(view: &View<Log>, wanted: &Wanted) -> Result<Vec<Observation>> {
    let (person, member) = (view.person(), view.member());
    let Wanted { id, about, before, visit, most } = wanted;
    let ((day, last), (appointment, on)) = (before.unzip(), visit.unzip());
    view.all(query_as!(
        Observation,
        r#"select id, person_id, about as "about: Subject", seen_on as "seen_on: Date",
            seen_time as "seen_time: Line", words as "words: Note",
            fall_where as "fall_where: Line", fall_up as "fall_up: GotUp",
            fall_head as "fall_head: Known", fall_hurt as "fall_hurt: Known", noted_by,
            noted_at as "noted_at: Instant", worded_at as "worded_at: Instant",
            answer as "answer: Note", answered_at as "answered_at: Instant",
            answer_by as "answer_by: MemberId", answer_for_her as "answer_for_her: bool",
            clinician_only as "clinician_only: bool", on_behalf as "on_behalf: bool",
            appointment_id as "appointment_id: AppointmentId",
            occurrence_on as "occurrence_on: Date", off_sheets as "off_sheets: bool",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from observation o
        where person_id = ?1 and (not struck or ?3 is not null) and (?3 is null or id = ?3)
            and (?4 is null or about = ?4) and (?5 is null or (seen_on, id) < (?5, ?6))
            and (?7 is null or appointment_id = ?7 and occurrence_on = ?8)
            and id not in (select item from hidden where kind = 'observation' and member_id = ?2 and standing)
            and (not clinician_only or noted_by = ?2 or exists (select 1 from membership m
                where m.person_id = ?1 and m.member_id = ?2 and m.role = 'person'))
        order by seen_on desc, id desc limit ?9"#,
        person,
        member,
        id,
        about,
        day,
        last,
        appointment,
        on,
        most
    ))
    .await
}

pub async fn find(view: &View<Log>, id: ObservationId) -> Result<Observation> {
    let wanted = Wanted { id: Some(id), most: 1, ..Wanted::default() };
    list(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Log>, new: &Observation) -> Result<ObservationId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into observation (person_id, about, seen_on, seen_time, words, fall_where,
                fall_up, fall_head, fall_hurt, noted_by, noted_at, worded_at, answer, answered_at,
                answer_by, answer_for_her, clinician_only, on_behalf, appointment_id,
                occurrence_on, off_sheets, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.about,
            new.seen_on,
            new.seen_time,
            new.words,
            new.fall_where,
            new.fall_up,
            new.fall_head,
            new.fall_hurt,
            new.noted_by,
            new.noted_at,
            new.worded_at,
            new.answer,
            new.answered_at,
            new.answer_by,
            new.answer_for_her,
            new.clinician_only,
            new.on_behalf,
            new.appointment_id,
            new.occurrence_on,
            new.off_sheets,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Log>, old: &Observation, new: &Observation) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update observation set about = ?, seen_on = ?, seen_time = ?, words = ?,
                fall_where = ?, fall_up = ?, fall_head = ?, fall_hurt = ?, worded_at = ?,
                answer = ?, answered_at = ?, answer_by = ?, answer_for_her = ?,
                clinician_only = ?, on_behalf = ?, appointment_id = ?, occurrence_on = ?,
                off_sheets = ?, struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.about,
            new.seen_on,
            new.seen_time,
            new.words,
            new.fall_where,
            new.fall_up,
            new.fall_head,
            new.fall_hurt,
            new.worded_at,
            new.answer,
            new.answered_at,
            new.answer_by,
            new.answer_for_her,
            new.clinician_only,
            new.on_behalf,
            new.appointment_id,
            new.occurrence_on,
            new.off_sheets,
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
pub async fn titles(view: &View<Log>) -> Result<Vec<(ObservationId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select id as "id: ObservationId", substr(words, 1, 200) as "words!: String"
        from observation o
        where person_id = ?1
            and id not in (select item from hidden where kind = 'observation' and member_id = ?2 and standing)
            and (not clinician_only or noted_by = ?2 or exists (select 1 from membership m
                where m.person_id = ?1 and m.member_id = ?2 and m.role = 'person'))"#,
        person,
        member
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, title(&it.words))).collect())
}
