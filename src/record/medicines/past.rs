//! A medicine as it stood once, from the fields that its history gives.

use super::model::{Medicine, Status, Supply};
use crate::base::{
    clock::Instant,
    day,
    ids::{MedicineId, MemberId, PersonId},
    text::Line,
};
use crate::platform::{audit::past::Fields, web::form::Choice};
use serde_json::Value;

impl Medicine {
    /// None where the history does not even give a name: it was erased.
    pub fn stood(id: MedicineId, person_id: PersonId, fields: &Fields) -> Option<Medicine> {
        let text = |name: &str| fields.get(name).and_then(Value::as_str);
        let line = |name: &str| text(name).map(|it| Line::from(it.to_owned()));
        let date = |name: &str| text(name).and_then(day::iso);
        let supply = Supply::ALL.iter().find(|it| Some(it.words()) == text("supply"));
        let statuses = [Status::Taking, Status::OnHold, Status::Stopped, Status::Struck];
        let status =
            statuses.into_iter().find(|it| Some(it.to_string().as_str()) == text("status"));
        Some(Medicine {
            id,
            person_id,
            name: line("name")?,
            strength: line("strength"),
            form: line("form"),
            dose: line("dose"),
            route: line("route"),
            times: line("times"),
            purpose: line("purpose"),
            prescriber: line("prescriber"),
            started_on: date("started_on"),
            as_needed: fields.get("as_needed").and_then(Value::as_bool).unwrap_or_default(),
            label_limit: line("label_limit"),
            supply: supply.copied()?,
            source: line("source"),
            status: status?,
            status_since: date("status_since"),
            status_reason: line("status_reason"),
            checked_at: text("checked_at").and_then(Instant::parse),
            checked_by: fields.get("checked_by").and_then(Value::as_i64).map(MemberId::from),
            checked_against: line("checked_against"),
            version: 0,
        })
    }
}
