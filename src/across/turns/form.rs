//! What can be typed of who was told.

use crate::{
    base::{
        ids::{ContactId, MemberId, TellingId, TurnId},
        text::Line,
    },
    platform::web::form::{FormErrors, FromForm, Reader},
    record::medicines::turns::model::{Telling, Turn},
};
use time::Date;

/// Whom, on which day, and how.
pub struct Told {
    pub contact: Option<ContactId>,
    pub whom: Option<Line>,
    on: Date,
    how: Option<Line>,
}

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let contact = form.raw("contact").parse().ok();
        let (whom, how) = (form.line("whom"), form.line("how"));
        if contact.is_none() && whom.is_none() {
            form.wrong("whom", "Choose who was told, or enter a name.");
        }
        let on = form.needed_day("told_on", "Enter the day, like 2026-03-09 or 9 Mar 2026.");
        form.finish(|| Some(Told { contact, whom, on: on?, how }))
    }
}

impl Told {
    pub fn of(&self, turn: &Turn, whom: (Option<ContactId>, Line), by: MemberId) -> Telling {
        Telling {
            id: TellingId::default(),
            person_id: turn.person_id,
            turn_id: turn.id,
            medicine_id: turn.medicine_id,
            contact_id: whom.0,
            whom: whom.1,
            told_on: self.on,
            told_by: by,
            how: self.how.clone(),
            struck: false,
            version: 1,
        }
    }

    pub fn come(&self, today: Date) -> Result<(), FormErrors> {
        FormErrors::unless_come("told_on", self.on, today)
    }
}

/// Those that were told of, by their ids.
pub struct TellAll {
    pub turns: Vec<TurnId>,
    pub told: Told,
}

impl FromForm for TellAll {
    fn read(form: &mut Reader) -> Result<TellAll, FormErrors> {
        let turns: Vec<_> = form.every("turn").iter().filter_map(|it| it.parse().ok()).collect();
        if turns.is_empty() {
            form.wrong("turn", "Tick what was told.");
        }
        let how = form.line("how");
        let on = form.needed_day("told_on", "Enter the day, like 2026-03-09 or 9 Mar 2026.");
        form.finish(|| {
            let told = Told { contact: None, whom: None, on: on?, how };
            Some(TellAll { turns, told })
        })
    }
}
