//! All the SQL of appointments, and of what differs at one of a series.
//!
//! An appointment that is hidden from the reader is not there; nor is one that leans on a contact hidden from her, as the
//! clinician or as an escort. What is clinical about it is in `matter_store`.

use super::{
    calendar::Calendar,
    meeting::Meeting,
    model::{Appointment, Status, VisitKind},
    occurrence::Occurrence,
};
use crate::base::{
    change::Change,
    clock::Instant,
    day,
    ids::{AppointmentId, MemberId, OccurrenceId},
    recurrence::Rule,
    text::Line,
    time_of_day::TimeOfDay,
    zone::Zone,
};
use crate::platform::{
    auth::{
        area::{AreaName, Role, Tasks},
        lowered::Lowered,
        policy::{self, Level, Reach},
    },
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every appointment that was not struck, by its first day.
pub async fn list(view: &View<Tasks>) -> Result<Vec<Appointment>> {
    let mut all = read(view, None).await?;
    all.retain(|it| !it.struck);
    Ok(all)
}

/// One, a struck one as well.
pub async fn find(view: &View<Tasks>, id: AppointmentId) -> Result<Appointment> {
    read(view, Some(id)).await?.pop().ok_or(Error::NotFound)
}

async fn read(view: &View<Tasks>, id: Option<AppointmentId>) -> Result<Vec<Appointment>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Appointment,
        r#"select id, person_id, title as "title: Line", kind as "kind: VisitKind",
            contact_id as "contact_id: _", with_whom as "with_whom: Line", place as "place: Line",
            on_day as "on_day: Date", at_time as "at_time: TimeOfDay", zone as "zone: Zone", minutes,
            repeats as "repeats: Rule", transport as "transport: Line",
            escort_id as "escort_id: _", escort_contact_id as "escort_contact_id: _",
            alone as "alone: bool", interpreter as "interpreter: Line",
            status as "status: Status", reason as "reason: Line", follows_id as "follows_id: _",
            struck as "struck: bool", struck_reason as "struck_reason: Line", version
        from appointment a
        where person_id = ?1 and (?2 is null or id = ?2)
            and id not in (select item from hidden where kind = 'appointment' and member_id = ?3 and standing)
            and not exists (select 1 from hidden x
                where x.kind = 'contact' and x.member_id = ?3 and x.standing
                    and (x.item in (a.contact_id, a.escort_contact_id)
                        or x.item in (select o.escort_contact_id from occurrence o
                            where o.appointment_id = a.id and not o.struck)))
        order by on_day, id"#,
        person,
        id,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Tasks>, new: &Appointment) -> Result<AppointmentId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into appointment (person_id, title, kind, contact_id, with_whom, place, on_day,
                at_time, zone, minutes, repeats, transport, escort_id, escort_contact_id, alone,
                interpreter, status, reason, follows_id, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.title,
            new.kind,
            new.contact_id,
            new.with_whom,
            new.place,
            new.on_day,
            new.at_time,
            new.zone,
            new.minutes,
            new.repeats,
            new.transport,
            new.escort_id,
            new.escort_contact_id,
            new.alone,
            new.interpreter,
            new.status,
            new.reason,
            new.follows_id,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Tasks>, old: &Appointment, new: &Appointment) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update appointment set title = ?, kind = ?, contact_id = ?, with_whom = ?, place = ?,
                on_day = ?, at_time = ?, zone = ?, minutes = ?, repeats = ?, transport = ?,
                escort_id = ?, escort_contact_id = ?, alone = ?, interpreter = ?, status = ?,
                reason = ?, follows_id = ?, struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.title,
            new.kind,
            new.contact_id,
            new.with_whom,
            new.place,
            new.on_day,
            new.at_time,
            new.zone,
            new.minutes,
            new.repeats,
            new.transport,
            new.escort_id,
            new.escort_contact_id,
            new.alone,
            new.interpreter,
            new.status,
            new.reason,
            new.follows_id,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

pub async fn calendar(view: &View<Tasks>) -> Result<Calendar> {
    let (appointments, occurrences) = (list(view).await?, occurrences(view, None).await?);
    Ok(Calendar { appointments, occurrences })
}

/// Those that begin from one moment on and before another, in order; with those whose day the
/// series no longer has.
pub async fn meetings(view: &View<Tasks>, from: Instant, to: Instant) -> Result<Vec<Meeting>> {
    Ok(calendar(view).await?.meetings(from, to))
}

/// One time of an appointment, by its original day. What does not repeat has one time only,
/// whatever the day by which it was once named.
pub async fn meeting(view: &View<Tasks>, id: AppointmentId, on: Date) -> Result<Meeting> {
    let of = find(view, id).await?;
    if !of.is_series() {
        return Ok(Meeting::of(&of, of.on_day, None));
    }
    let own = occurrence(view, id, on).await?;
    let differs = own.as_ref().is_some_and(|it| !it.struck);
    match differs || of.falls_on(on) {
        true => Ok(Meeting::of(&of, on, own.as_ref())),
        false => Err(Error::NotFound),
    }
}

/// What differs, of one series or of all; what was struck as well.
pub async fn occurrences(view: &View<Tasks>, of: Option<AppointmentId>) -> Result<Vec<Occurrence>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Occurrence,
        r#"select id, person_id, appointment_id, on_day as "on_day: Date",
            moved_on as "moved_on: Date", moved_time as "moved_time: TimeOfDay",
            status as "status: Status", reason as "reason: Line", own_escort as "own_escort: bool",
            escort_id as "escort_id: _", escort_contact_id as "escort_contact_id: _",
            alone as "alone: bool", apart as "apart: bool", struck as "struck: bool", version
        from occurrence
        where person_id = ?1 and (?2 is null or appointment_id = ?2)
            and appointment_id not in (select item from hidden where kind = 'appointment' and member_id = ?3 and standing)
        order by on_day, id"#,
        person,
        of,
        member
    ))
    .await
}

/// What differs at one of a series; what was struck as well.
pub async fn occurrence(
    view: &View<Tasks>,
    of: AppointmentId,
    on: Date,
) -> Result<Option<Occurrence>> {
    Ok(occurrences(view, Some(of)).await?.into_iter().find(|it| it.on_day == on))
}

/// Kept for the first time, or once more.
pub async fn keep_occurrence(
    write: &mut Write<Tasks>,
    old: &Occurrence,
    new: &Occurrence,
) -> Result<()> {
    match old.is_kept() {
        true => save_occurrence(write, old, new).await,
        false => add_occurrence(write, new).await.map(|_| ()),
    }
}

async fn add_occurrence(write: &mut Write<Tasks>, new: &Occurrence) -> Result<OccurrenceId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into occurrence (person_id, appointment_id, on_day, moved_on, moved_time, status,
                reason, own_escort, escort_id, escort_contact_id, alone, apart, struck)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.appointment_id,
            new.on_day,
            new.moved_on,
            new.moved_time,
            new.status,
            new.reason,
            new.own_escort,
            new.escort_id,
            new.escort_contact_id,
            new.alone,
            new.apart,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

async fn save_occurrence(
    write: &mut Write<Tasks>,
    old: &Occurrence,
    new: &Occurrence,
) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update occurrence set moved_on = ?, moved_time = ?, status = ?, reason = ?,
                own_escort = ?, escort_id = ?, escort_contact_id = ?, alone = ?, apart = ?,
                struck = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.moved_on,
            new.moved_time,
            new.status,
            new.reason,
            new.own_escort,
            new.escort_id,
            new.escort_contact_id,
            new.alone,
            new.apart,
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Those who may go along: the standing members who see the calendar, but for the person.
pub async fn escorts(view: &View<Tasks>) -> Result<Vec<(MemberId, String)>> {
    let person = view.person();
    let all = view.all(query!(
        r#"select m.id as "id: MemberId", m.name, s.role as "role: Role",
            s.lowered as "lowered: String"
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? and s.state = 'standing' and s.role <> 'person' order by s.id"#,
        person
    ));
    let sees = |role: Role, lowered: String| {
        let reach = Reach { role, lowered: Lowered::from(lowered) };
        policy::allows(Some(reach), AreaName::Tasks, Level::See)
    };
    let all = all.await?.into_iter().filter(|it| sees(it.role, it.lowered.clone()));
    Ok(all.map(|it| (it.id, it.name)).collect())
}

/// The name of every one there ever was, for the history.
pub async fn titles(view: &View<Tasks>) -> Result<Vec<(AppointmentId, String)>> {
    let all = read(view, None).await?.into_iter();
    Ok(all.map(|it| (it.id, it.title.to_string())).collect())
}

/// Of each that differs its name and day.
pub async fn occurrence_titles(view: &View<Tasks>) -> Result<Vec<(OccurrenceId, String)>> {
    let (all, own) = (read(view, None).await?, occurrences(view, None).await?);
    let title = |it: &Occurrence| {
        let of = all.iter().find(|of| of.id == it.appointment_id)?;
        Some((it.id, format!("{}, {}", of.title, day::short_words(it.on_day))))
    };
    Ok(own.iter().filter_map(title).collect())
}
