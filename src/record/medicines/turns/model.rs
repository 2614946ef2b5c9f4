//! What a turn is: a medicine was started, stopped, put on hold, resumed, or is taken differently,
//! because someone said so.
//!
//! The word on the pages is "change". The type has another name because `Change` is taken twice.
//! A turn of a day that has not come is planned: the medicine stands as before until someone says
//! that it was done. Only the newest turn of a medicine is taken back.

use super::super::{
    before::Before,
    model::{Medicine, Status},
};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{ContactId, MedicineId, MemberId, PersonId, QuestionId, TellingId, TurnId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::{Date, Duration};

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum What {
    Started,
    Stopped,
    Held,
    Resumed,
    /// Taken differently: another strength, dose or time.
    Changed,
}

impl What {
    /// As a list says it, before the day.
    pub fn words(self) -> &'static str {
        match self {
            What::Started => "started",
            What::Stopped => "stopped",
            What::Held => "put on hold",
            What::Resumed => "resumed",
            What::Changed => "taken differently",
        }
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    pub id: TurnId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub what: What,
    pub from_on: Date,
    pub said_by: Line,
    pub reason: Line,
    /// In whose place it is taken.
    pub replaces_id: Option<MedicineId>,
    /// The day to resume after a hold, and who gave it.
    pub resume_on: Option<Date>,
    pub resume_by: Option<Line>,
    pub planned: bool,
    /// How the medicine was before, to be put back.
    pub was: Option<String>,
    /// The medicine's version after it.
    pub left_at: i64,
    /// The question when to resume.
    pub question_id: Option<QuestionId>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub version: i64,
}

audited!(Turn as "turn" {
    medicine_id: "", what: "", from_on: "day", said_by: "one who said so", reason: "reason",
    replaces_id: "", resume_on: "day to resume", resume_by: "one who gave the day", planned: "",
    was: "", left_at: "", question_id: "", entered_by: "", entered_at: "", struck: "",
} skip { id, person_id, version });

/// Who was told of a turn, by which member.
#[derive(Clone, Debug, PartialEq)]
pub struct Telling {
    pub id: TellingId,
    pub person_id: PersonId,
    pub turn_id: TurnId,
    pub medicine_id: MedicineId,
    pub contact_id: Option<ContactId>,
    pub whom: Line,
    pub told_on: Date,
    pub told_by: MemberId,
    pub how: Option<Line>,
    pub struck: bool,
    pub version: i64,
}

audited!(Telling as "telling" {
    turn_id: "", medicine_id: "", contact_id: "", whom: "", told_on: "day", told_by: "",
    how: "way", struck: "",
} skip { id, person_id, version });

/// Who said so, why, and from when.
#[derive(Clone, Debug)]
pub struct Said {
    pub on: Date,
    pub by: Line,
    pub reason: Line,
}

impl Said {
    /// A turn may be planned for a day of the coming year.
    pub fn sound(self, today: Date) -> Result<Said> {
        match self.on > today + Duration::days(366) {
            true => Err(FormErrors::at("on", "This day is more than a year away.").into()),
            false => Ok(self),
        }
    }

    /// What cannot be planned has happened.
    pub fn come(self, today: Date, says: &str) -> Result<Said> {
        match self.on > today {
            true => Err(FormErrors::at("on", says).into()),
            false => Ok(self),
        }
    }
}

impl Turn {
    pub fn new(of: &Medicine, what: What, said: Said, (by, at): (MemberId, Instant)) -> Turn {
        Turn {
            id: TurnId::default(),
            person_id: of.person_id,
            medicine_id: of.id,
            what,
            from_on: said.on,
            said_by: said.by,
            reason: said.reason,
            replaces_id: None,
            resume_on: None,
            resume_by: None,
            planned: false,
            was: Some(Before::kept(of)),
            left_at: of.version,
            question_id: None,
            entered_by: by,
            entered_at: at,
            struck: false,
            version: 1,
        }
    }

    /// With the day to resume, which comes after the first day of the hold.
    pub fn resuming(self, on: Option<Date>, by: Option<Line>) -> Result<Turn> {
        let by = by.filter(|_| on.is_some());
        let by = by.or_else(|| on.map(|_| self.said_by.clone()));
        if on.is_some_and(|it| it <= self.from_on) {
            let from = day::words(self.from_on);
            let says = format!("This is not after the first day of the hold, {from}.");
            return Err(FormErrors::at("resume_on", says).into());
        }
        Ok(Turn { resume_on: on, resume_by: by, ..self })
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Turn> {
        if self.version == version && !self.struck { Ok(self) } else { Err(Error::Stale) }
    }

    /// The medicine as this turn leaves it, on a day that has come.
    pub fn turned(&self, medicine: &Medicine, today: Date) -> Result<Medicine> {
        self.fits(medicine)?;
        match self.what {
            What::Held => medicine.held(self.from_on, self.reason.clone(), today),
            What::Stopped => medicine.stopped(self.from_on, self.reason.clone(), today),
            What::Resumed => medicine.resumed(self.from_on, today),
            What::Started | What::Changed => Ok(medicine.clone()),
        }
    }

    /// A hold is of what is taken, a resuming of what is not.
    fn fits(&self, medicine: &Medicine) -> Result<()> {
        let fits = match self.what {
            What::Held => medicine.is_taken(),
            What::Stopped => medicine.is_current(),
            What::Resumed => !medicine.is_taken() && !medicine.is_struck(),
            What::Started | What::Changed => true,
        };
        let says = || format!("{} is {} now.", medicine.name, medicine.status);
        if fits { Ok(()) } else { Err(FormErrors::at("on", says()).into()) }
    }

    /// What was planned was done.
    pub fn done(&self, medicine: &Medicine) -> Turn {
        let was = Some(Before::kept(medicine));
        Turn { planned: false, was, left_at: medicine.version + 1, ..self.clone() }
    }

    /// With the question when to resume.
    pub fn asked(&self, question: QuestionId) -> Turn {
        Turn { question_id: Some(question), ..self.clone() }
    }

    pub fn struck(&self) -> Turn {
        Turn { struck: true, ..self.clone() }
    }

    /// The medicine as it was before this turn, its newest. None: it is not as the turn left it.
    pub fn taken_back(&self, now: &Medicine) -> Option<Medicine> {
        let before = self.was.as_deref().and_then(Before::read);
        let stands = |it: Status| now.status == it && now.status_since == Some(self.from_on);
        match self.what {
            _ if self.planned => Some(now.clone()),
            What::Started => Some(now.clone()),
            What::Held if stands(Status::OnHold) => Some(before?.stood_again(now)),
            What::Stopped if stands(Status::Stopped) => Some(before?.stood_again(now)),
            What::Resumed if now.is_taken() => Some(before?.stood_again(now)),
            What::Changed if now.version == self.left_at => Some(before?.restored(now)),
            _ => None,
        }
    }

    pub fn is_hold(&self) -> bool {
        self.what == What::Held
    }

    pub fn is_change(&self) -> bool {
        self.what == What::Changed
    }

    /// How it was taken before, where it is taken differently since.
    pub fn was_taken(&self, now: &Medicine) -> Option<String> {
        let before = Before::read(self.was.as_deref()?)?.restored(now);
        self.is_change().then(|| before.taken())
    }

    /// "put on hold from 9 March 2026", "to be stopped from 3 December 2026"
    pub fn sentence(&self) -> String {
        let to_be = if self.planned { "to be " } else { "" };
        format!("{to_be}{} from {}", self.what.words(), day::words(self.from_on))
    }

    /// "to resume on 16 March 2026, said Dr Oyelaran"
    pub fn resuming_words(&self) -> Option<String> {
        let by = self.resume_by.as_ref()?;
        Some(format!("to resume on {}, said {by}", day::words(self.resume_on?)))
    }
}

impl Telling {
    pub fn opened_at(self, version: i64) -> Result<Telling> {
        if self.version == version && !self.struck { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self) -> Telling {
        Telling { struck: true, ..self.clone() }
    }

    pub fn day(&self) -> String {
        day::short_words(self.told_on)
    }
}
