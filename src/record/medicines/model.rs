//! What a medicine is, and what may happen to it.

use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    day,
    ids::{MedicineId, MemberId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::{Date, Duration};

#[derive(Clone, Debug, PartialEq)]
pub struct Medicine {
    pub id: MedicineId,
    pub person_id: PersonId,
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    /// As written on the label.
    pub dose: Option<Line>,
    pub route: Option<Line>,
    pub times: Option<Line>,
    pub purpose: Option<Line>,
    pub prescriber: Option<Line>,
    pub started_on: Option<Date>,
    pub as_needed: bool,
    /// The label's own limit for as-needed use.
    pub label_limit: Option<Line>,
    pub supply: Supply,
    /// Read off which paper, or said by whom.
    pub source: Option<Line>,
    pub status: Status,
    pub status_since: Option<Date>,
    pub status_reason: Option<Line>,
    pub checked_at: Option<Instant>,
    pub checked_by: Option<MemberId>,
    pub checked_against: Option<Line>,
    pub version: i64,
}

audited!(Medicine as "medicine" {
    name: "name", strength: "strength", form: "form", dose: "dose", route: "route",
    times: "times", purpose: "purpose", prescriber: "prescriber", started_on: "start",
    as_needed: "as-needed", label_limit: "label's limit", supply: "supply", source: "source",
    status: "status", status_since: "since", status_reason: "reason",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// How it is got.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Supply {
    #[serde(rename = "prescription")]
    #[sqlx(rename = "prescription")]
    Prescription,
    #[serde(rename = "over the counter")]
    #[sqlx(rename = "over the counter")]
    OverTheCounter,
    #[serde(rename = "supplement")]
    #[sqlx(rename = "supplement")]
    Supplement,
}

impl Choice for Supply {
    const ALL: &'static [Supply] =
        &[Supply::Prescription, Supply::OverTheCounter, Supply::Supplement];

    fn words(self) -> &'static str {
        match self {
            Supply::Prescription => "prescription",
            Supply::OverTheCounter => "over the counter",
            Supply::Supplement => "supplement",
        }
    }
}

impl fmt::Display for Supply {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Status {
    #[serde(rename = "taking")]
    #[sqlx(rename = "taking")]
    Taking,
    #[serde(rename = "on hold")]
    #[sqlx(rename = "on hold")]
    OnHold,
    #[serde(rename = "stopped")]
    #[sqlx(rename = "stopped")]
    Stopped,
    /// Entered by mistake.
    #[serde(rename = "struck")]
    #[sqlx(rename = "struck")]
    Struck,
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Status::Taking => "taking",
            Status::OnHold => "on hold",
            Status::Stopped => "stopped",
            Status::Struck => "struck",
        })
    }
}

/// What is typed about a medicine when it is added or edited.
#[derive(Clone, Debug)]
pub struct Label {
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub dose: Option<Line>,
    pub route: Option<Line>,
    pub times: Option<Line>,
    pub purpose: Option<Line>,
    pub prescriber: Option<Line>,
    pub started_on: Option<Date>,
    pub as_needed: bool,
    pub label_limit: Option<Line>,
    pub supply: Supply,
    pub source: Option<Line>,
}

impl Label {
    /// The rules that join several fields.
    pub fn sound(self, today: Date) -> Result<Label> {
        if self.label_limit.is_some() && !self.as_needed {
            return Err(Error::from(FormErrors::at(
                "label_limit",
                "This is the label's limit for as-needed use. Tick \"as needed\", or leave it empty.",
            )));
        }
        if self.started_on.is_some_and(|it| it > today + Duration::days(366)) {
            return Err(FormErrors::at("started_on", "This start is more than a year away.").into());
        }
        Ok(self)
    }
}

impl Medicine {
    pub fn new(person_id: PersonId, label: Label) -> Medicine {
        Medicine {
            id: MedicineId::default(),
            person_id,
            name: label.name,
            strength: label.strength,
            form: label.form,
            dose: label.dose,
            route: label.route,
            times: label.times,
            purpose: label.purpose,
            prescriber: label.prescriber,
            started_on: label.started_on,
            as_needed: label.as_needed,
            label_limit: label.label_limit,
            supply: label.supply,
            source: label.source,
            status: Status::Taking,
            status_since: None,
            status_reason: None,
            checked_at: None,
            checked_by: None,
            checked_against: None,
            version: 1,
        }
    }

    /// The same medicine under a changed label: what it says now has not been checked.
    /// The same label again changes nothing, and leaves the check.
    pub fn relabelled(&self, label: Label) -> Medicine {
        let after = Medicine {
            id: self.id,
            status: self.status,
            status_since: self.status_since,
            status_reason: self.status_reason.clone(),
            version: self.version,
            ..Medicine::new(self.person_id, label)
        };
        let unchecked =
            Medicine { checked_at: None, checked_by: None, checked_against: None, ..self.clone() };
        if after == unchecked { self.clone() } else { after }
    }

    /// What its label says now.
    pub fn label(&self) -> Label {
        let it = self.clone();
        Label {
            name: it.name,
            strength: it.strength,
            form: it.form,
            dose: it.dose,
            route: it.route,
            times: it.times,
            purpose: it.purpose,
            prescriber: it.prescriber,
            started_on: it.started_on,
            as_needed: it.as_needed,
            label_limit: it.label_limit,
            supply: it.supply,
            source: it.source,
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Medicine> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn stopped(&self, on: Date, reason: Line, today: Date) -> Result<Medicine> {
        self.turned(Status::Stopped, on, reason, today)
    }

    pub fn held(&self, on: Date, reason: Line, today: Date) -> Result<Medicine> {
        self.turned(Status::OnHold, on, reason, today)
    }

    fn turned(&self, status: Status, on: Date, reason: Line, today: Date) -> Result<Medicine> {
        FormErrors::unless_come("on", on, today)?;
        self.started_by(on)?;
        Ok(Medicine { status, status_since: Some(on), status_reason: Some(reason), ..self.clone() })
    }

    /// Nothing turns before the start.
    pub fn started_by(&self, on: Date) -> Result<()> {
        match self.started_on.filter(|it| *it > on).map(day::words) {
            Some(started) => {
                let says = format!("This is before it was started, {started}.");
                Err(FormErrors::at("on", says).into())
            }
            None => Ok(()),
        }
    }

    /// Taken again from this day, after a hold or a stop.
    pub fn resumed(&self, on: Date, today: Date) -> Result<Medicine> {
        FormErrors::unless_come("on", on, today)?;
        if let Some(since) = self.status_since.filter(|it| *it > on) {
            let says = format!("This is before the {} began, {}.", self.pause(), day::words(since));
            return Err(FormErrors::at("on", says).into());
        }
        Ok(self.brought_back())
    }

    fn pause(&self) -> &'static str {
        if self.is_on_hold() { "hold" } else { "stop" }
    }

    /// Taken off the lists because it was entered by mistake.
    pub fn struck(&self, reason: Line, today: Date) -> Medicine {
        Medicine {
            status: Status::Struck,
            status_since: Some(today),
            status_reason: Some(reason),
            ..self.clone()
        }
    }

    /// Taken, as if it had never been held, stopped or struck.
    pub fn brought_back(&self) -> Medicine {
        Medicine { status: Status::Taking, status_since: None, status_reason: None, ..self.clone() }
    }

    pub fn checked(&self, check: Check) -> Medicine {
        Medicine {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    /// Whether it stands on the list of what she takes: taking, or on hold.
    pub fn is_current(&self) -> bool {
        matches!(self.status, Status::Taking | Status::OnHold)
    }

    pub fn is_taken(&self) -> bool {
        self.status == Status::Taking
    }

    pub fn is_on_hold(&self) -> bool {
        self.status == Status::OnHold
    }

    pub fn is_struck(&self) -> bool {
        self.status == Status::Struck
    }

    pub fn is_over_the_counter(&self) -> bool {
        self.supply == Supply::OverTheCounter
    }

    pub fn is_supplement(&self) -> bool {
        self.supply == Supply::Supplement
    }

    pub fn has_flags(&self) -> bool {
        self.as_needed || self.supply != Supply::Prescription || self.status_since.is_some()
    }

    /// "Warfarin 2.5 mg tablet", with the number and its unit kept on one line.
    pub fn title(&self) -> String {
        let strength = self.strength.as_ref().map(|it| it.as_str().replace(' ', "\u{a0}"));
        let parts =
            [Some(self.name.as_str()), strength.as_deref(), self.form.as_ref().map(Line::as_str)];
        parts.into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    /// How it is taken, in the label's own words; what is missing is said to be missing.
    pub fn directions(&self) -> String {
        let said = [self.dose.as_ref(), self.times.as_ref(), self.route.as_ref()];
        match joined(said, ", ") {
            none if none.is_empty() => "how taken: not written down".into(),
            said => said,
        }
    }

    /// All that a label says of how it is taken: strength, form, dose, time, route, its own limit.
    pub fn taken(&self) -> String {
        let how = [self.dose.as_ref(), self.times.as_ref(), self.route.as_ref()];
        let as_needed = self.as_needed.then(|| "as needed".to_owned());
        let limit = self.label_limit.as_ref().map(|it| format!("label says {it}"));
        let how = [Some(joined(how, ", ")).filter(|it| !it.is_empty()), as_needed, limit];
        let how = how.into_iter().flatten().collect::<Vec<_>>().join(", ");
        let how = if how.is_empty() { "not written down".to_owned() } else { how };
        match joined([self.strength.as_ref(), self.form.as_ref()], " ") {
            none if none.is_empty() => how,
            what => format!("{what}: {how}"),
        }
    }

    pub fn started(&self) -> Option<String> {
        self.started_on.map(day::words)
    }

    /// The day it was held, stopped or struck.
    pub fn turned_on(&self) -> Option<String> {
        self.status_since.map(day::words)
    }
}

fn joined<'a>(parts: impl IntoIterator<Item = Option<&'a Line>>, by: &str) -> String {
    let parts: Vec<&str> = parts.into_iter().flatten().map(Line::as_str).collect();
    parts.join(by)
}
