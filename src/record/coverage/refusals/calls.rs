//! A call about a refusal: when, with whom, and what was said.

use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{MemberId, PersonId, RefusalCallId, RefusalId},
    text::{Line, Note},
    time_of_day::TimeOfDay,
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Call {
    pub id: RefusalCallId,
    pub person_id: PersonId,
    pub refusal_id: RefusalId,
    pub called_on: Date,
    pub called_time: Option<TimeOfDay>,
    pub with_whom: Line,
    pub said: Note,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Call as "refusal_call" {
    refusal_id: "", called_on: "day of the call", called_time: "time of the call",
    with_whom: "with whom", said: "what was said", entered_by: "", entered_at: "",
    struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// A call as it was typed.
#[derive(Clone, Debug)]
pub struct Told {
    pub on: Date,
    pub time: Option<TimeOfDay>,
    pub with_whom: Line,
    pub said: Note,
}

impl Call {
    pub fn new(
        person_id: PersonId,
        refusal_id: RefusalId,
        told: Told,
        (entered_by, entered_at, today): (MemberId, Instant, Date),
    ) -> Result<Call> {
        FormErrors::unless_come("called_on", told.on, today)?;
        Ok(Call {
            id: RefusalCallId::default(),
            person_id,
            refusal_id,
            called_on: told.on,
            called_time: told.time,
            with_whom: told.with_whom,
            said: told.said,
            entered_by,
            entered_at,
            struck: false,
            struck_reason: None,
            version: 1,
        })
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Call> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self, reason: Line) -> Call {
        Call { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    /// "Mon 23 Nov 2026, 9:30 am"
    pub fn when(&self) -> String {
        let time = self.called_time.as_ref().map(|it| format!(", {}", it.words()));
        format!("{}{}", day::short_words(self.called_on), time.unwrap_or_default())
    }
}
