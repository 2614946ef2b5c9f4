//! All the SQL of tasks.
//!
//! A task that is hidden from the reader is not there; nor is one about an item hidden from her, or
//! about one in an area that her place does not reach. An aide sees what she has, what she entered
//! and what she was asked to take, and nothing else of the board. What the item itself leans on is
//! asked in `across/tasks/seen`, which readers of the board go through.

use super::{
    hands::{Hand, Hands, HiddenFrom, Place},
    model::{State, Task},
    repeats::Unit,
};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{MemberId, TaskId},
    text::{Line, Note},
};
use crate::platform::{
    auth::{
        area::{Clinical, Essentials, Role, Tasks},
        lowered::Lowered,
        policy::Reach,
    },
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Which tasks are wanted. Empty: all that were not struck.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// This one, also where it was struck.
    pub id: Option<TaskId>,
    /// Kind and id of the item they are about.
    pub about: Option<(String, i64)>,
    /// Of those that are done or let go, only since this day.
    pub since: Option<Date>,
    /// Only those that are done or let go.
    pub closed: bool,
    /// So many, after so many.
    pub most: i64,
    pub skip: i64,
}

impl Default for Wanted {
    fn default() -> Wanted {
        Wanted { id: None, about: None, since: None, closed: false, most: i64::MAX, skip: 0 }
    }
}

/// Those that stand in front, by their day; then the last that were closed.
pub async fn list(view: &View<Tasks>, wanted: &Wanted) -> Result<Vec<Task>> {
    let (person, member, own) = (view.person(), view.member(), view.own_only());
    let clinical = view.area::<Clinical>().is_some();
    let essentials = view.area::<Essentials>().is_some();
    let (kind, item) = wanted.about.clone().unzip();
    view.all(query_as!(
        Task,
        r#"select id, person_id, title as "title: Line", why as "why: Note", entered_by,
            entered_at as "entered_at: Instant", about_kind, about_item,
            due_on as "due_on: Date", firm as "firm: bool", from_afar as "from_afar: bool",
            every, unit as "unit: Unit", counted_from as "counted_from: Date",
            state as "state: State", owner_id as "owner_id: MemberId",
            offered_to as "offered_to: MemberId", offered_by as "offered_by: MemberId",
            declined_by as "declined_by: MemberId", declined_why as "declined_why: Line",
            waiting_on as "waiting_on: Line", waiting_until as "waiting_until: Date",
            off_until as "off_until: Date", off_reason as "off_reason: Line",
            closed_on as "closed_on: Date", closed_by as "closed_by: MemberId",
            proof as "proof: Note", photo, let_go_reason as "let_go_reason: Line",
            next_id as "next_id: TaskId", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from task t
        where person_id = ?1 and (?3 is null and not struck or id = ?3)
            and (?4 is null or about_kind = ?4 and about_item = ?5)
            and (?6 is null or closed_on is null or closed_on >= ?6)
            and (not ?7 or closed_on is not null)
            and (not ?8 or ?2 in (owner_id, entered_by, offered_to))
            and id not in (select item from hidden where kind = 'task' and member_id = ?2 and standing)
            and (about_kind is null
                or (case when about_kind in ('medicine', 'condition', 'operation', 'question', 'visit', 'refusal') then ?9
                    when about_kind = 'appointment' then 1 else ?10 end)
                and not exists (select 1 from hidden x where x.kind = t.about_kind
                    and x.item = t.about_item and x.member_id = ?2 and x.standing))
        order by closed_on is not null, closed_on desc, due_on is null, due_on, id
        limit ?11 offset ?12"#,
        person,
        member,
        wanted.id,
        kind,
        item,
        wanted.since,
        wanted.closed,
        own,
        clinical,
        essentials,
        wanted.most,
        wanted.skip
    ))
    .await
}

pub async fn find(view: &View<Tasks>, id: TaskId) -> Result<Task> {
    let wanted = Wanted { id: Some(id), ..Wanted::default() };
    list(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Tasks>, new: &Task) -> Result<TaskId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into task (person_id, title, why, entered_by, entered_at, about_kind, about_item,
                due_on, firm, from_afar, every, unit, counted_from, state, owner_id, offered_to,
                offered_by, declined_by, declined_why, waiting_on, waiting_until, off_until,
                off_reason, closed_on, closed_by, proof, photo, let_go_reason, next_id, struck,
                struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?,
                ?, ?, ?, ?, ?)",
            person,
            new.title,
            new.why,
            new.entered_by,
            new.entered_at,
            new.about_kind,
            new.about_item,
            new.due_on,
            new.firm,
            new.from_afar,
            new.every,
            new.unit,
            new.counted_from,
            new.state,
            new.owner_id,
            new.offered_to,
            new.offered_by,
            new.declined_by,
            new.declined_why,
            new.waiting_on,
            new.waiting_until,
            new.off_until,
            new.off_reason,
            new.closed_on,
            new.closed_by,
            new.proof,
            new.photo,
            new.let_go_reason,
            new.next_id,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Tasks>, old: &Task, new: &Task) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update task set title = ?, why = ?, about_kind = ?, about_item = ?, due_on = ?,
                firm = ?, from_afar = ?, every = ?, unit = ?, counted_from = ?, state = ?,
                owner_id = ?, offered_to = ?, offered_by = ?, declined_by = ?, declined_why = ?,
                waiting_on = ?, waiting_until = ?, off_until = ?, off_reason = ?, closed_on = ?,
                closed_by = ?, proof = ?, photo = ?, let_go_reason = ?, next_id = ?, struck = ?,
                struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.title,
            new.why,
            new.about_kind,
            new.about_item,
            new.due_on,
            new.firm,
            new.from_afar,
            new.every,
            new.unit,
            new.counted_from,
            new.state,
            new.owner_id,
            new.offered_to,
            new.offered_by,
            new.declined_by,
            new.declined_why,
            new.waiting_on,
            new.waiting_until,
            new.off_until,
            new.off_reason,
            new.closed_on,
            new.closed_by,
            new.proof,
            new.photo,
            new.let_go_reason,
            new.next_id,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Every member with a place in this record, now or once, and what is hidden from whom.
pub async fn hands(view: &View<Tasks>) -> Result<Hands> {
    let person = view.person();
    let members = view.all(query!(
        r#"select m.id as "id: MemberId", m.name, s.role as "role: Role", s.state as "place: Place",
            s.lowered as "lowered: String"
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? order by s.id"#,
        person
    ));
    let members = members.await?.into_iter().map(|it| {
        let reach = Reach { role: it.role, lowered: Lowered::from(it.lowered) };
        Hand { member: it.id, name: it.name, place: it.place, reach }
    });
    let hidden = view.all(query_as!(
        HiddenFrom,
        r#"select member_id as "member: MemberId", kind, item
        from hidden where person_id = ? and standing"#,
        person
    ));
    Ok(Hands { members: members.collect(), hidden: hidden.await? })
}

/// What every task there ever was says, with what it is about, for the history.
pub async fn titles(view: &View<Tasks>) -> Result<Vec<Titled>> {
    let (person, member, own) = (view.person(), view.member(), view.own_only());
    let clinical = view.area::<Clinical>().is_some();
    let essentials = view.area::<Essentials>().is_some();
    view.all(query_as!(
        Titled,
        r#"select id as "id: TaskId", title as "title: String", about_kind, about_item
        from task t
        where person_id = ?1 and (not ?3 or ?2 in (owner_id, entered_by, offered_to))
            and id not in (select item from hidden where kind = 'task' and member_id = ?2 and standing)
            and (about_kind is null
                or (case when about_kind in ('medicine', 'condition', 'operation', 'question', 'visit', 'refusal') then ?4
                    when about_kind = 'appointment' then 1 else ?5 end)
                and not exists (select 1 from hidden x where x.kind = t.about_kind
                    and x.item = t.about_item and x.member_id = ?2 and x.standing))"#,
        person,
        member,
        own,
        clinical,
        essentials
    ))
    .await
}

/// A task by its words.
pub struct Titled {
    pub id: TaskId,
    pub title: String,
    pub about_kind: Option<String>,
    pub about_item: Option<i64>,
}
