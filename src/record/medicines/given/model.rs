//! A dose as someone entered it, and what may happen to the entry.
//!
//! An entry is at a time of the schedule (its day and the name of the time), or as needed (a
//! moment). Whoever entered it puts it right, or one who decides; its history keeps the first.

use super::super::schedule::{directions::counted, times::When};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{GivenId, MedicineId, MemberId, PersonId},
    quantity::Quantity,
    text::Line,
    zone::Zone,
};
use crate::platform::{
    audit::Names,
    auth::area::Role,
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use time::Date;

/// Given, or not given and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Outcome {
    Given,
    Refused,
    /// On a clinician's word.
    Held,
    Asleep,
    Away,
    #[serde(rename = "none left")]
    #[sqlx(rename = "none left")]
    NoneLeft,
    Other,
}

impl Choice for Outcome {
    const ALL: &'static [Outcome] = &[
        Outcome::Given,
        Outcome::Refused,
        Outcome::Held,
        Outcome::Asleep,
        Outcome::Away,
        Outcome::NoneLeft,
        Outcome::Other,
    ];

    fn words(self) -> &'static str {
        match self {
            Outcome::Given => "given",
            Outcome::Refused => "not given: refused",
            Outcome::Held => "not given: held on a clinician's word",
            Outcome::Asleep => "not given: asleep",
            Outcome::Away => "not given: away",
            Outcome::NoneLeft => "not given: none left",
            Outcome::Other => "not given: another reason",
        }
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    pub id: GivenId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub day: Date,
    /// As the schedule calls it; none: as needed.
    pub time_of_day: Option<String>,
    /// As needed: the moment.
    pub at: Option<Instant>,
    pub amount: Quantity,
    /// What was counted then: the step of the schedule may have changed since.
    pub unit: Line,
    pub outcome: Outcome,
    pub note: Option<Line>,
    /// If it was a member.
    pub given_by: Option<MemberId>,
    pub given_name: Line,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Given as "given" {
    medicine_id: "", day: "", time_of_day: "", at: "time", amount: "amount", unit: "",
    outcome: "outcome", note: "note", given_by: "", given_name: "given by", entered_by: "",
    entered_at: "", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// When a dose was: at a time of the schedule, or at a moment.
#[derive(Clone, Copy, Debug)]
pub enum Point {
    Slot(Date, When),
    /// The day on the person's calendar, and the moment.
    Moment(Date, Instant),
}

/// What is said of a dose.
#[derive(Clone, Debug)]
pub struct Said {
    pub amount: Quantity,
    pub outcome: Outcome,
    pub note: Option<Line>,
    pub by: (Option<MemberId>, Line),
}

impl Said {
    /// The rules that join several fields.
    pub fn sound(self) -> Result<Said> {
        if self.outcome == Outcome::Given && self.amount.is_zero() {
            return Err(FormErrors::at("amount", "Write how much was given.").into());
        }
        if self.outcome == Outcome::Other && self.note.is_none() {
            let says = "Write in the note why it was not given.";
            return Err(FormErrors::at("note", says).into());
        }
        Ok(self)
    }
}

impl Given {
    pub fn new(
        (person_id, medicine_id): (PersonId, MedicineId),
        point: Point,
        (said, unit): (Said, Line),
        (entered_by, entered_at): (MemberId, Instant),
    ) -> Given {
        let (day, time_of_day, at) = match point {
            Point::Slot(day, when) => (day, Some(when.name()), None),
            Point::Moment(day, at) => (day, None, Some(at)),
        };
        let (given_by, given_name) = said.by;
        Given {
            id: GivenId::default(),
            person_id,
            medicine_id,
            day,
            time_of_day,
            at,
            amount: said.amount,
            unit,
            outcome: said.outcome,
            note: said.note,
            given_by,
            given_name,
            entered_by,
            entered_at,
            struck: false,
            struck_reason: None,
            version: 1,
        }
    }

    pub fn when(&self) -> Option<When> {
        self.time_of_day.as_deref().and_then(When::of)
    }

    pub fn is_given(&self) -> bool {
        self.outcome == Outcome::Given && !self.struck
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Given> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Whether a member may put it right or strike it: who entered it, or one who decides.
    pub fn is_for(&self, member: MemberId, role: Role) -> bool {
        self.entered_by == member || role.decides()
    }

    /// Put right. A dose as needed may get another moment; one of the schedule keeps its time.
    pub fn put_right(&self, said: Said, moment: Option<(Date, Instant)>) -> Given {
        let (given_by, given_name) = said.by;
        let (day, at) = match (self.at, moment) {
            (Some(_), Some((day, at))) => (day, Some(at)),
            _ => (self.day, self.at),
        };
        Given {
            day,
            at,
            amount: said.amount,
            outcome: said.outcome,
            note: said.note,
            given_by,
            given_name,
            ..self.clone()
        }
    }

    pub fn struck(&self, reason: Line) -> Given {
        Given { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Given {
        Given { struck: false, struck_reason: None, ..self.clone() }
    }

    /// The latest moment at which it can have been: a dose of the morning was given by nine, and
    /// every dose before it was entered.
    pub fn moment(&self, zone: &Zone) -> Instant {
        let slot = |when: When| zone.instant(self.day, when.ends()).min(self.entered_at);
        self.at.or(self.when().map(slot)).unwrap_or(self.entered_at)
    }

    pub fn counted(&self) -> String {
        counted(self.amount, self.unit.as_str())
    }

    /// "in the morning", "at 3:05 pm"
    pub fn time_words(&self, zone: &Zone) -> String {
        match (self.at, self.when()) {
            (Some(at), _) => format!("at {}", zone.clock_words(at)),
            (None, Some(when)) => when.words(),
            (None, None) => self.time_of_day.clone().unwrap_or_default(),
        }
    }

    /// "given by Emeric; entered 8:10 am by Ines"
    pub fn state(&self, names: &Names, zone: &Zone) -> String {
        let mut state = self.outcome.words().to_owned();
        if let Some(note) = &self.note {
            state.push_str(&format!(" ({note})"));
        }
        if self.outcome == Outcome::Given {
            state.push_str(&format!(" by {}", self.giver(names)));
        }
        format!("{state}; entered {}", self.entered(names, zone))
    }

    /// "8:10 am by Ines"; with its day where that is not the day of the dose.
    pub fn entered(&self, names: &Names, zone: &Zone) -> String {
        let entered = match zone.day(self.entered_at) == self.day {
            true => zone.clock_words(self.entered_at),
            false => zone.in_words(self.entered_at),
        };
        format!("{entered} by {}", names.of(self.entered_by))
    }

    pub fn giver<'a>(&'a self, names: &'a Names) -> &'a str {
        self.given_by.map_or(self.given_name.as_str(), |it| names.of(it))
    }

    /// For the emergency sheet: "Wed 25 Nov 2026, 8:10 am, Delia: 1 tablet given in the morning".
    pub fn last_words(&self, names: &Names, zone: &Zone) -> String {
        let (at, by) = (zone.in_words(self.entered_at), names.of(self.entered_by));
        let day = match zone.day(self.entered_at) == self.day {
            true => String::new(),
            false => format!(" on {}", day::short_words(self.day)),
        };
        let time = self.time_words(zone);
        match self.outcome {
            Outcome::Given => {
                let other = match self.given_by == Some(self.entered_by) {
                    true => String::new(),
                    false => format!(" by {}", self.giver(names)),
                };
                format!("{at}, {by}: {} given{other} {time}{day}", self.counted())
            }
            other => format!("{at}, {by}: {}, {time}{day}", other.words()),
        }
    }
}

/// The title of an entry: "Warfarin 2.5 mg, 25 November 2026, in the morning".
pub fn title(medicine: &str, day: Date, time: Option<&str>) -> String {
    let time = match time.and_then(When::of) {
        Some(when) => when.words(),
        None => "as needed".into(),
    };
    format!("{medicine}, {}, {time}", day::words(day))
}

/// The members of the record are known by name; anyone else is only a name.
pub fn whom(
    typed: Option<Line>,
    own: MemberId,
    members: &[(MemberId, String)],
) -> (Option<MemberId>, Line) {
    let named = |id: MemberId| members.iter().find(|it| it.0 == id).map(|it| it.1.clone());
    let name = typed.unwrap_or_else(|| Line::from(named(own).unwrap_or_default()));
    // Of two members with the same name it is the one who types.
    let mut same = members.iter().filter(|it| it.1.to_lowercase() == name.as_str().to_lowercase());
    let found = match named(own).is_some_and(|it| it.to_lowercase() == name.as_str().to_lowercase())
    {
        true => Some(own),
        false => same.next().map(|it| it.0),
    };
    (found, name)
}
