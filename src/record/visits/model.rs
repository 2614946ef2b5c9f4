//! What the note of a visit is, what came of the visit, and who should read it.
//!
//! What was written through other capabilities (an answer, a change of a medicine, a task) is a row
//! of theirs; the note keeps which. It can be put right; what came of it stays as it was written.

use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{
        AppointmentId, ContactId, MedicineId, MemberId, PersonId, QuestionId, TaskId, TurnId,
        VisitId,
    },
    text::{Line, Note},
};
use crate::platform::error::{Error, Result};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Visit {
    pub id: VisitId,
    pub person_id: PersonId,
    /// The time of an appointment that this was, by the day that names it.
    pub appointment_id: Option<AppointmentId>,
    pub occurrence_on: Option<Date>,
    pub held_on: Date,
    pub contact_id: Option<ContactId>,
    /// The contact's name as it was, or a typed one.
    pub with_whom: Line,
    /// The members who were there, as JSON: see [`Visit::members`].
    pub present: String,
    pub others: Option<Line>,
    pub said: Option<Note>,
    pub decisions: Option<Note>,
    /// The appointment that was asked for or made there.
    pub next_id: Option<AppointmentId>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Visit as "visit" {
    appointment_id: "", occurrence_on: "", held_on: "day", contact_id: "",
    with_whom: "one it was with", present: "", others: "others who were there",
    said: "what was said", decisions: "decisions", next_id: "", entered_by: "", entered_at: "",
    struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What is typed of the note itself.
#[derive(Clone, Debug)]
pub struct Account {
    pub held_on: Date,
    pub contact: Option<ContactId>,
    pub with_whom: Line,
    pub present: Vec<MemberId>,
    pub others: Option<Line>,
    pub said: Option<Note>,
    pub decisions: Option<Note>,
}

impl Visit {
    pub fn new(
        person_id: PersonId,
        meeting: Option<(AppointmentId, Date)>,
        account: Account,
        (by, at): (MemberId, Instant),
    ) -> Visit {
        let (appointment_id, occurrence_on) = meeting.unzip();
        let blank = Visit {
            id: VisitId::default(),
            person_id,
            appointment_id,
            occurrence_on,
            held_on: account.held_on,
            contact_id: None,
            with_whom: account.with_whom.clone(),
            present: String::new(),
            others: None,
            said: None,
            decisions: None,
            next_id: None,
            entered_by: by,
            entered_at: at,
            struck: false,
            struck_reason: None,
            version: 1,
        };
        blank.put_right(account)
    }

    /// In other words; what came of the visit stays as it was written.
    pub fn put_right(&self, account: Account) -> Visit {
        let mut present: Vec<i64> = account.present.into_iter().map(i64::from).collect();
        present.sort_unstable();
        Visit {
            held_on: account.held_on,
            contact_id: account.contact,
            with_whom: account.with_whom,
            present: serde_json::json!(present).to_string(),
            others: account.others,
            said: account.said,
            decisions: account.decisions,
            ..self.clone()
        }
    }

    pub fn leading_to(&self, next: Option<AppointmentId>) -> Visit {
        Visit { next_id: next, ..self.clone() }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Visit> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self, reason: Line) -> Visit {
        Visit { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Visit {
        Visit { struck: false, struck_reason: None, ..self.clone() }
    }

    /// The members who were there.
    pub fn members(&self) -> Vec<MemberId> {
        let ids: Vec<i64> = serde_json::from_str(&self.present).unwrap_or_default();
        ids.into_iter().map(MemberId::from).collect()
    }

    pub fn was_there(&self, member: MemberId) -> bool {
        self.members().contains(&member)
    }

    pub fn day(&self) -> String {
        day::words(self.held_on)
    }

    /// "Dr Lind, 12 November 2026"
    pub fn title(&self) -> String {
        title(self.with_whom.as_str(), self.held_on)
    }
}

pub fn title(with_whom: &str, held_on: Date) -> String {
    format!("{with_whom}, {}", day::words(held_on))
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum What {
    #[serde(rename = "answered")]
    #[sqlx(rename = "answered")]
    Answered,
    /// Put, and the answer is to come.
    #[serde(rename = "asked")]
    #[sqlx(rename = "asked")]
    Asked,
    #[serde(rename = "not reached")]
    #[sqlx(rename = "not reached")]
    NotReached,
    #[serde(rename = "medicine")]
    #[sqlx(rename = "medicine")]
    Medicine,
    #[serde(rename = "test")]
    #[sqlx(rename = "test")]
    Test,
    #[serde(rename = "follow-up")]
    #[sqlx(rename = "follow-up")]
    FollowUp,
}

/// One thing that came of a visit.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    pub id: i64,
    pub person_id: PersonId,
    pub visit_id: VisitId,
    pub what: What,
    /// The answer, the test, what is to be done.
    pub words: Option<Note>,
    /// Where the test is done.
    pub place: Option<Line>,
    pub question_id: Option<QuestionId>,
    pub turn_id: Option<TurnId>,
    pub medicine_id: Option<MedicineId>,
    pub task_id: Option<TaskId>,
    pub version: i64,
}

audited!(Item as "visit_item" {
    visit_id: "", what: "", words: "", place: "", question_id: "", turn_id: "", medicine_id: "",
    task_id: "",
} skip { id, person_id, version });

impl Item {
    fn new(visit: &Visit, what: What) -> Item {
        Item {
            id: 0,
            person_id: visit.person_id,
            visit_id: visit.id,
            what,
            words: None,
            place: None,
            question_id: None,
            turn_id: None,
            medicine_id: None,
            task_id: None,
            version: 1,
        }
    }

    pub fn answered(visit: &Visit, question: QuestionId, answer: Note) -> Item {
        let (question_id, words) = (Some(question), Some(answer));
        Item { question_id, words, ..Item::new(visit, What::Answered) }
    }

    /// A question that stands again at the next visit.
    pub fn carried(visit: &Visit, question: QuestionId, asked: bool) -> Item {
        let what = if asked { What::Asked } else { What::NotReached };
        Item { question_id: Some(question), ..Item::new(visit, what) }
    }

    pub fn medicine(visit: &Visit, turn: TurnId, medicine: MedicineId) -> Item {
        let (turn_id, medicine_id) = (Some(turn), Some(medicine));
        Item { turn_id, medicine_id, ..Item::new(visit, What::Medicine) }
    }

    pub fn test(visit: &Visit, words: Line, place: Option<Line>, task: Option<TaskId>) -> Item {
        let words = Some(Note::from(words.to_string()));
        Item { words, place, task_id: task, ..Item::new(visit, What::Test) }
    }

    pub fn follow_up(visit: &Visit, words: Line, task: Option<TaskId>) -> Item {
        let words = Some(Note::from(words.to_string()));
        Item { words, task_id: task, ..Item::new(visit, What::FollowUp) }
    }

    /// Whether it is a question that stands again.
    pub fn is_carried(&self) -> bool {
        matches!(self.what, What::Asked | What::NotReached)
    }
}

/// Who should read a note; that she has is said by herself only.
#[derive(Clone, Debug, PartialEq)]
pub struct Reader {
    pub id: i64,
    pub person_id: PersonId,
    pub visit_id: VisitId,
    pub member_id: MemberId,
    pub read_at: Option<Instant>,
    /// Off, once the reader is not asked any more.
    pub standing: bool,
    pub version: i64,
}

audited!(Reader as "visit_reader" {
    visit_id: "", member_id: "", read_at: "", standing: "",
} skip { id, person_id, version });

impl Reader {
    pub fn new(person_id: PersonId, visit_id: VisitId, member_id: MemberId) -> Reader {
        let (read_at, standing) = (None, true);
        Reader { id: 0, person_id, visit_id, member_id, read_at, standing, version: 1 }
    }

    pub fn no_longer_asked(&self) -> Reader {
        Reader { standing: false, ..self.clone() }
    }

    pub fn asked_again(&self) -> Reader {
        Reader { read_at: None, standing: true, ..self.clone() }
    }

    pub fn read(&self, at: Instant) -> Reader {
        Reader { read_at: self.read_at.or(Some(at)), ..self.clone() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn account(with: &str) -> Account {
        Account {
            held_on: date!(2026 - 11 - 12),
            contact: Some(4.into()),
            with_whom: Line::from(with.to_owned()),
            present: vec![3.into(), 2.into()],
            others: None,
            said: Some(Note::from("Walk every day.".to_owned())),
            decisions: None,
        }
    }

    fn visit() -> Visit {
        let meeting = Some((7.into(), date!(2026 - 11 - 12)));
        Visit::new(1.into(), meeting, account("Dr Lind"), (2.into(), Instant::from_unix(0)))
    }

    #[test]
    fn it_keeps_who_was_there_and_which_time_of_the_appointment_it_was() {
        let it = visit();
        assert_eq!((it.was_there(2.into()), it.was_there(4.into())), (true, false));
        assert_eq!(it.present, "[2,3]");
        assert_eq!(it.title(), "Dr Lind, 12 November 2026");
        let right = it.put_right(Account { said: None, ..account("Dr Oyelaran") });
        assert_eq!(right.appointment_id, it.appointment_id);
        assert_eq!((right.said, right.with_whom.as_str()), (None, "Dr Oyelaran"));
    }

    #[test]
    fn what_was_not_answered_is_carried_and_a_read_mark_keeps_its_first_moment() {
        let of = |asked| Item::carried(&visit(), 5.into(), asked);
        assert!(of(true).is_carried() && of(false).is_carried());
        let answered = Item::answered(&visit(), 5.into(), Note::from("Yes.".to_owned()));
        assert!(!answered.is_carried());
        let first = Reader::new(1.into(), 1.into(), 2.into()).read(Instant::from_unix(5));
        assert_eq!(first.read(Instant::from_unix(9)).read_at, Some(Instant::from_unix(5)));
    }
}
