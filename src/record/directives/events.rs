//! What happened after which a directive is looked at again.
//!
//! The first five and the move are the triggers that the ABA Commission on Law and Aging publishes:
//! decade, death, divorce, diagnosis, decline; and a move to another state. A stay (a transfer of
//! setting or level of care) and changed wishes are those of the directions to the New Jersey POLST
//! form and of polst.org.

use crate::audited;
use crate::base::{
    day,
    ids::{ContactId, DirectiveAsideId, DirectiveEventId, DirectiveId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::Date;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Happened {
    Decade,
    Death,
    Divorce,
    Diagnosis,
    Decline,
    Move,
    Stay,
    Wishes,
}

impl Choice for Happened {
    const ALL: &'static [Happened] = &[
        Happened::Move,
        Happened::Death,
        Happened::Divorce,
        Happened::Diagnosis,
        Happened::Decline,
        Happened::Decade,
        Happened::Stay,
        Happened::Wishes,
    ];

    fn words(self) -> &'static str {
        match self {
            Happened::Decade => "a new decade of life",
            Happened::Death => "a death",
            Happened::Divorce => "a divorce",
            Happened::Diagnosis => "a new diagnosis",
            Happened::Decline => "a decline",
            Happened::Move => "a move to another state",
            Happened::Stay => "a stay, or another level of care",
            Happened::Wishes => "other wishes",
        }
    }
}

impl Happened {
    /// Whether it can be said of someone who is named in a directive.
    fn of_others(self) -> bool {
        matches!(self, Happened::Death | Happened::Divorce | Happened::Move)
    }
}

impl fmt::Display for Happened {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct DirectiveEvent {
    pub id: DirectiveEventId,
    pub person_id: PersonId,
    pub kind: Happened,
    /// To whom; none: to the person herself.
    pub contact_id: Option<ContactId>,
    pub happened_on: Date,
    pub words: Option<Line>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(DirectiveEvent as "directive_event" {
    kind: "", contact_id: "", happened_on: "", words: "words", struck: "struck",
    struck_reason: "reason",
} skip { id, person_id, version });

/// Whether after one event one directive was put aside.
#[derive(Clone, Debug, PartialEq)]
pub struct DirectiveAside {
    pub id: DirectiveAsideId,
    pub person_id: PersonId,
    pub event_id: DirectiveEventId,
    pub directive_id: DirectiveId,
    pub reason: Line,
    /// Off: it is to be looked at after all.
    pub standing: bool,
    pub version: i64,
}

audited!(DirectiveAside as "directive_aside" {
    event_id: "", directive_id: "", reason: "reason", standing: "",
} skip { id, person_id, version });

impl DirectiveEvent {
    pub fn new(
        person_id: PersonId,
        (kind, contact_id): (Happened, Option<ContactId>),
        (happened_on, words): (Date, Option<Line>),
        today: Date,
    ) -> Result<DirectiveEvent> {
        FormErrors::unless_come("happened_on", happened_on, today)?;
        let says = match (kind, contact_id) {
            (Happened::Death, None) => Some("Choose who died, of the contacts."),
            (kind, Some(_)) if !kind.of_others() => {
                Some("This is said of the person herself: choose nobody here.")
            }
            _ => None,
        };
        if let Some(says) = says {
            return Err(FormErrors::at("contact_id", says).into());
        }
        Ok(DirectiveEvent {
            id: DirectiveEventId::default(),
            person_id,
            kind,
            contact_id,
            happened_on,
            words,
            struck: false,
            struck_reason: None,
            version: 1,
        })
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<DirectiveEvent> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self, reason: Line) -> DirectiveEvent {
        DirectiveEvent { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> DirectiveEvent {
        DirectiveEvent { struck: false, struck_reason: None, ..self.clone() }
    }

    /// "a death (Emeric Varga) on 3 March 2026"
    pub fn title(&self, name: Option<&str>) -> String {
        let whom = name.map(|it| format!(" ({it})")).unwrap_or_default();
        format!("{}{whom} on {}", self.kind, day::words(self.happened_on))
    }
}

impl DirectiveAside {
    pub fn new(
        person_id: PersonId,
        (event_id, directive_id): (DirectiveEventId, DirectiveId),
        reason: Line,
    ) -> DirectiveAside {
        let id = DirectiveAsideId::default();
        DirectiveAside { id, person_id, event_id, directive_id, reason, standing: true, version: 1 }
    }

    /// For another reason, also where it had been taken back.
    pub fn anew(&self, reason: Line) -> DirectiveAside {
        DirectiveAside { reason, standing: true, ..self.clone() }
    }

    /// To be looked at after all.
    pub fn taken_back(&self) -> DirectiveAside {
        DirectiveAside { standing: false, ..self.clone() }
    }
}
