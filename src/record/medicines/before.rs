//! How a medicine was before a turn, or before something was accepted: enough to put every part of
//! it back.

use super::model::{Medicine, Status};
use crate::base::{clock::Instant, day, text::Line};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub struct Before {
    strength: Option<String>,
    form: Option<String>,
    dose: Option<String>,
    times: Option<String>,
    route: Option<String>,
    #[serde(default)]
    as_needed: bool,
    #[serde(default)]
    label_limit: Option<String>,
    source: Option<String>,
    status: String,
    status_since: Option<String>,
    status_reason: Option<String>,
    checked_at: Option<i64>,
    checked_by: Option<i64>,
    checked_against: Option<String>,
}

impl Before {
    /// As a text to keep.
    pub fn kept(medicine: &Medicine) -> String {
        let text = |it: &Option<Line>| it.as_ref().map(Line::to_string);
        let before = Before {
            strength: text(&medicine.strength),
            form: text(&medicine.form),
            dose: text(&medicine.dose),
            times: text(&medicine.times),
            route: text(&medicine.route),
            as_needed: medicine.as_needed,
            label_limit: text(&medicine.label_limit),
            source: text(&medicine.source),
            status: medicine.status.to_string(),
            status_since: medicine.status_since.map(|it| it.to_string()),
            status_reason: text(&medicine.status_reason),
            checked_at: medicine.checked_at.map(Instant::unix),
            checked_by: medicine.checked_by.map(Into::into),
            checked_against: text(&medicine.checked_against),
        };
        serde_json::to_string(&before).unwrap_or_default()
    }

    pub fn read(kept: &str) -> Option<Before> {
        serde_json::from_str(kept).ok()
    }

    /// Its standing as it was; what its label says stays as it is.
    pub fn stood_again(self, now: &Medicine) -> Medicine {
        let Medicine { status, status_since, status_reason, .. } = self.restored(now);
        Medicine { status, status_since, status_reason, ..now.clone() }
    }

    /// The medicine as it was; its other parts stay as they are.
    pub fn restored(self, now: &Medicine) -> Medicine {
        let line = |it: Option<String>| it.map(Line::from);
        let statuses = [Status::Taking, Status::OnHold, Status::Stopped, Status::Struck];
        let was = statuses.into_iter().find(|it| it.to_string() == self.status);
        Medicine {
            strength: line(self.strength),
            form: line(self.form),
            dose: line(self.dose),
            times: line(self.times),
            route: line(self.route),
            as_needed: self.as_needed,
            label_limit: line(self.label_limit),
            source: line(self.source),
            status: was.unwrap_or(now.status),
            status_since: self.status_since.as_deref().and_then(day::iso),
            status_reason: line(self.status_reason),
            checked_at: self.checked_at.map(Instant::from_unix),
            checked_by: self.checked_by.map(Into::into),
            checked_against: line(self.checked_against),
            ..now.clone()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::model::{Label, Supply};
    use super::*;
    use crate::base::check::Check;
    use time::macros::date;

    #[test]
    fn every_part_that_accepting_writes_is_put_back() {
        let line = |it: &str| Line::from(it.to_owned());
        let label = Label {
            name: line("Furosemide"),
            strength: Some(line("20 mg")),
            form: Some(line("tablet")),
            dose: Some(line("1 tablet")),
            route: Some(line("by mouth")),
            times: Some(line("in the morning")),
            purpose: None,
            prescriber: None,
            started_on: None,
            as_needed: false,
            label_limit: None,
            supply: Supply::Prescription,
            source: Some(line("the bottle")),
        };
        let check = Check { at: Instant::from_unix(9), by: 2.into(), against: line("the bottle") };
        let was = Medicine::new(1.into(), label.clone()).checked(check);
        let today = date!(2026 - 11 - 25);
        let changed = Label { strength: Some(line("40 mg")), times: None, route: None, ..label };
        for after in
            [was.relabelled(changed), was.stopped(today, line("the list"), today).expect("stopped")]
        {
            assert_ne!(after, was);
            let before = Before::read(&Before::kept(&was)).expect("kept");
            assert_eq!(before.restored(&after), was);
        }
    }
}
