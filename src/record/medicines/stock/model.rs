//! What is kept of a medicine's supply: fills from the pharmacy, and counts of what is in the house.
//!
//! A fill says what its label says, and nothing is proposed. What was entered by mistake is
//! struck and kept. Days on which the medicine was not taken are kept as pauses, so that they use
//! nothing up.

use super::super::model::{Medicine, Status};
use super::amount::Amount;
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{CountId, FillId, MedicineId, MemberId, PauseId, PersonId, SupplySettingId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::{Date, Duration};

#[derive(Clone, Debug, PartialEq)]
pub struct Fill {
    pub id: FillId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub filled_on: Date,
    pub amount: Amount,
    /// The days' supply, where the label says one.
    pub label_days: Option<i64>,
    pub pharmacy: Option<Line>,
    /// Working days this pharmacy needs.
    pub pharmacy_days: Option<i64>,
    pub refills_left: Option<i64>,
    /// The day the prescription was written.
    pub written_on: Option<Date>,
    /// The prescription's last day, where its label has one.
    pub expires_on: Option<Date>,
    pub class: Class,
    /// The first day the pharmacy fills it again.
    pub earliest_refill: Option<Date>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub version: i64,
}

audited!(Fill as "fill" {
    medicine_id: "", filled_on: "day", amount: "quantity", label_days: "label's days' supply",
    pharmacy: "pharmacy", pharmacy_days: "pharmacy's working days", refills_left: "refills left",
    written_on: "prescription's day", expires_on: "prescription's last day",
    class: "schedule class", earliest_refill: "earliest refill", entered_by: "", entered_at: "",
    struck: "struck",
} skip { id, person_id, version });

/// How much was in the house on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Count {
    pub id: CountId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub counted_on: Date,
    pub amount: Amount,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub version: i64,
}

audited!(Count as "stock_count" {
    medicine_id: "", counted_on: "day", amount: "quantity", entered_by: "", entered_at: "",
    struck: "struck",
} skip { id, person_id, version });

/// Days on which a medicine was not taken, the first and the last of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Pause {
    pub id: PauseId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub from_on: Date,
    pub until_on: Date,
    pub version: i64,
}

audited!(Pause as "pause" {
    medicine_id: "", from_on: "from", until_on: "until",
} skip { id, person_id, version });

/// How many working days a pharmacy needs, where no fill says it.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    pub id: SupplySettingId,
    pub person_id: PersonId,
    pub pharmacy_days: i64,
    pub version: i64,
}

audited!(Setting as "supply_setting" {
    pharmacy_days: "working days",
} skip { id, person_id, version });

/// The schedule of controlled substances a medicine is in, as its label says (21 U.S.C. 812).
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize, sqlx::Type)]
pub enum Class {
    #[serde(rename = "none known")]
    #[sqlx(rename = "none known")]
    NoneKnown,
    #[serde(rename = "II")]
    #[sqlx(rename = "II")]
    Two,
    #[serde(rename = "III")]
    #[sqlx(rename = "III")]
    Three,
    #[serde(rename = "IV")]
    #[sqlx(rename = "IV")]
    Four,
    #[serde(rename = "V")]
    #[sqlx(rename = "V")]
    Five,
}

impl Choice for Class {
    const ALL: &'static [Class] =
        &[Class::NoneKnown, Class::Two, Class::Three, Class::Four, Class::Five];

    fn words(self) -> &'static str {
        match self {
            Class::NoneKnown => "none known",
            Class::Two => "II",
            Class::Three => "III",
            Class::Four => "IV",
            Class::Five => "V",
        }
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Fill {
    /// The rules that join several fields, at the field each is about.
    pub fn sound(self, today: Date) -> Result<Fill> {
        let wrong = |field, says: String| Err(Error::from(FormErrors::at(field, says)));
        let filled = day::words(self.filled_on);
        FormErrors::unless_come("filled_on", self.filled_on, today)?;
        if self.written_on.is_some_and(|it| it > self.filled_on) {
            return wrong("written_on", format!("This is after it was filled, {filled}."));
        }
        if self.expires_on.is_some_and(|it| it < self.filled_on) {
            return wrong("expires_on", format!("This is before it was filled, {filled}."));
        }
        if self.earliest_refill.is_some_and(|it| it < self.filled_on) {
            return wrong("earliest_refill", format!("This is before it was filled, {filled}."));
        }
        Ok(self)
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Fill> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self) -> Fill {
        Fill { struck: true, ..self.clone() }
    }
}

impl Count {
    pub fn sound(self, today: Date) -> Result<Count> {
        FormErrors::unless_come("counted_on", self.counted_on, today)?;
        Ok(self)
    }

    pub fn opened_at(self, version: i64) -> Result<Count> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self) -> Count {
        Count { struck: true, ..self.clone() }
    }
}

impl Pause {
    /// The days without, from a hold or a stop to the day of the next turn, which is not one.
    pub fn between(before: &Medicine, after: &Medicine, today: Date) -> Option<Pause> {
        if !matches!(before.status, Status::OnHold | Status::Stopped) || after == before {
            return None;
        }
        let from_on = before.status_since?;
        let until_on = after.status_since.unwrap_or(today) - Duration::DAY;
        let medicine_id = before.id;
        let (id, person_id) = (PauseId::default(), before.person_id);
        (until_on >= from_on).then_some(Pause {
            id,
            person_id,
            medicine_id,
            from_on,
            until_on,
            version: 1,
        })
    }

    pub fn covers(&self, day: Date) -> bool {
        self.from_on <= day && day <= self.until_on
    }
}

impl Setting {
    /// Two working days, until the family says otherwise (common practice, no source).
    pub fn unsaid(person_id: PersonId) -> Setting {
        Setting { id: SupplySettingId::default(), person_id, pharmacy_days: 2, version: 0 }
    }
}
