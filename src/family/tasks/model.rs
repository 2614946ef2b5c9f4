//! What a task is, and what is said of it. What may happen to one stands in `moves`.

use super::repeats::{Repeats, Unit};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{MemberId, PersonId, TaskId},
    text::{Line, Note},
};
use crate::platform::{
    auth::area::{AreaName, Role},
    error::{Error, Result},
};
use time::Date;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum State {
    /// Nobody has it.
    #[serde(rename = "open")]
    #[sqlx(rename = "open")]
    Open,
    #[serde(rename = "taken")]
    #[sqlx(rename = "taken")]
    Taken,
    /// Someone has it, and can do nothing until another has done something.
    #[serde(rename = "waiting")]
    #[sqlx(rename = "waiting")]
    Waiting,
    #[serde(rename = "done")]
    #[sqlx(rename = "done")]
    Done,
    #[serde(rename = "let go")]
    #[sqlx(rename = "let go")]
    LetGo,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    pub id: TaskId,
    pub person_id: PersonId,
    /// What is to be done.
    pub title: Line,
    pub why: Option<Note>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub about_kind: Option<String>,
    pub about_item: Option<i64>,
    pub due_on: Option<Date>,
    /// Must be done by then; not only best.
    pub firm: bool,
    pub from_afar: bool,
    pub every: Option<i64>,
    pub unit: Option<Unit>,
    /// The day that the repeats are counted from.
    pub counted_from: Option<Date>,
    pub state: State,
    /// Who has it, or who had it when it was done.
    pub owner_id: Option<MemberId>,
    /// Asked to take it, by whom.
    pub offered_to: Option<MemberId>,
    pub offered_by: Option<MemberId>,
    /// Who said no when it was last offered, and why.
    pub declined_by: Option<MemberId>,
    pub declined_why: Option<Line>,
    pub waiting_on: Option<Line>,
    pub waiting_until: Option<Date>,
    pub off_until: Option<Date>,
    pub off_reason: Option<Line>,
    /// The day it was done or let go, and who said so.
    pub closed_on: Option<Date>,
    pub closed_by: Option<MemberId>,
    pub proof: Option<Note>,
    /// The sum of a photo that shows it, among the house's files.
    pub photo: Option<String>,
    pub let_go_reason: Option<Line>,
    /// The next time of a repeating one.
    pub next_id: Option<TaskId>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Task as "task" {
    title: "words", why: "reason for it", entered_by: "", entered_at: "", about_kind: "",
    about_item: "", due_on: "day", firm: "must be by then", from_afar: "can be done from afar",
    every: "rhythm", unit: "rhythm counted in", counted_from: "", state: "",
    owner_id: "", offered_to: "", offered_by: "", declined_by: "", declined_why: "",
    waiting_on: "waits on", waiting_until: "waits until", off_until: "put off until",
    off_reason: "why it was put off", closed_on: "", closed_by: "", proof: "what shows it",
    photo: "", let_go_reason: "reason", next_id: "", struck: "struck", struck_reason: "why struck",
} skip { id, person_id, version });

/// The day it is due, and whether that day holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Due {
    pub on: Date,
    pub firm: bool,
    /// How often it comes again after that day.
    pub repeats: Option<Repeats>,
}

/// What is written down of a task.
#[derive(Clone, Debug)]
pub struct Wording {
    pub title: Line,
    pub why: Option<Note>,
    pub due: Option<Due>,
    pub from_afar: bool,
    /// Kind and id of an item of the record.
    pub about: Option<(String, i64)>,
}

impl Wording {
    /// What is to be done, and nothing else yet.
    pub fn of(title: Line) -> Wording {
        Wording { title, why: None, due: None, from_afar: false, about: None }
    }
}

impl Task {
    pub fn new(person_id: PersonId, wording: Wording, (by, at): (MemberId, Instant)) -> Task {
        let blank = Task {
            id: TaskId::default(),
            person_id,
            title: wording.title.clone(),
            why: None,
            entered_by: by,
            entered_at: at,
            about_kind: None,
            about_item: None,
            due_on: None,
            firm: false,
            from_afar: false,
            every: None,
            unit: None,
            counted_from: None,
            state: State::Open,
            owner_id: None,
            offered_to: None,
            offered_by: None,
            declined_by: None,
            declined_why: None,
            waiting_on: None,
            waiting_until: None,
            off_until: None,
            off_reason: None,
            closed_on: None,
            closed_by: None,
            proof: None,
            photo: None,
            let_go_reason: None,
            next_id: None,
            struck: false,
            struck_reason: None,
            version: 1,
        };
        blank.reworded(wording)
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Task> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// In other words. Another day, or another rhythm: the repeats are counted from that day.
    pub fn reworded(&self, wording: Wording) -> Task {
        let (about_kind, about_item) = wording.about.unzip();
        let (due, repeats) = (wording.due, wording.due.and_then(|it| it.repeats));
        let same = self.due_on == due.map(|it| it.on) && self.repeats() == repeats;
        let counted_from = if same { self.counted_from } else { due.map(|it| it.on) };
        Task {
            title: wording.title,
            why: wording.why,
            about_kind,
            about_item,
            due_on: due.map(|it| it.on),
            firm: due.is_some_and(|it| it.firm),
            from_afar: wording.from_afar,
            every: repeats.map(|it| it.every),
            unit: repeats.map(|it| it.unit),
            counted_from: repeats.and(counted_from),
            ..self.clone()
        }
    }

    pub fn repeats(&self) -> Option<Repeats> {
        Some(Repeats { every: self.every?, unit: self.unit? })
    }

    pub fn about(&self) -> Option<(&str, i64)> {
        Some((self.about_kind.as_deref()?, self.about_item?))
    }

    /// Whether something is still to be done.
    pub fn stands(&self) -> bool {
        !self.struck && !self.is_closed()
    }

    pub fn is_closed(&self) -> bool {
        matches!(self.state, State::Done | State::LetGo)
    }

    pub fn is_done(&self) -> bool {
        self.state == State::Done
    }

    pub fn is_waiting(&self) -> bool {
        self.state == State::Waiting
    }

    /// Off the board until a day that has not come.
    pub fn is_put_off(&self, today: Date) -> bool {
        self.stands() && self.off_until.is_some_and(|it| it > today)
    }

    pub fn is_overdue(&self, today: Date) -> bool {
        self.stands() && !self.is_put_off(today) && self.due_on.is_some_and(|it| it < today)
    }

    /// Whether the day has come to ask again after what it waits on.
    pub fn wait_is_over(&self, today: Date) -> bool {
        let come = self.waiting_until.is_some_and(|it| it <= today);
        self.is_waiting() && !self.struck && !self.is_put_off(today) && come
    }

    pub fn is_owned_by(&self, member: MemberId) -> bool {
        self.owner_id == Some(member)
    }

    pub fn is_offered_to(&self, member: MemberId) -> bool {
        self.stands() && self.offered_to == Some(member)
    }

    /// Whether a member may strike it: her own entry, or as one who decides.
    pub fn may_be_struck_by(&self, member: MemberId, role: Role) -> bool {
        self.entered_by == member || role.decides()
    }

    /// Whether a member may give it back or hand it over: who has it, or as one who decides.
    pub fn may_be_moved_by(&self, member: MemberId, role: Role) -> bool {
        self.owner_id.is_none_or(|it| it == member) || role.decides()
    }

    /// "must be done by Tue 3 Mar 2026", "best by Tue 3 Mar 2026".
    pub fn due(&self) -> Option<String> {
        let on = day::short_words(self.due_on?);
        Some(match self.firm {
            true => format!("must be done by {on}"),
            false => format!("best by {on}"),
        })
    }

    /// "every month", and what is said of a month that is too short.
    pub fn rhythm(&self) -> Option<String> {
        let repeats = self.repeats()?;
        let short = self.counted_from.and_then(|it| repeats.short_month(it));
        let short = short.map(|it| format!(". {it}")).unwrap_or_default();
        Some(format!("{repeats}{short}"))
    }

    pub fn waits_until(&self) -> Option<String> {
        self.waiting_until.map(day::short_words)
    }

    pub fn back_on(&self) -> Option<String> {
        self.off_until.map(day::short_words)
    }

    pub fn closed_day(&self) -> Option<String> {
        self.closed_on.map(day::short_words)
    }
}

/// The areas that an item of a kind belongs to: a task about it is seen by who reaches them.
pub fn areas_of(kind: &str) -> &'static [AreaName] {
    match kind {
        "medicine" | "condition" | "operation" | "question" | "visit" => &[AreaName::Clinical],
        "appointment" => &[AreaName::Tasks],
        // A paper that names a medicine.
        "refusal" => &[AreaName::Papers, AreaName::Clinical],
        "renewal" | "paper" => &[AreaName::Papers],
        _ => &[AreaName::Essentials],
    }
}
