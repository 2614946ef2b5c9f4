//! The earlier visits to the same clinician: times of appointments that were kept, and notes of
//! visits. With the same contact; where one of the two is only typed, of the same name.

use crate::{
    across::{questions::occasion::With, turns::told::named},
    base::{
        clock::Instant,
        ids::{AppointmentId, ContactId},
        zone::Zone,
    },
    family::tasks::model::Task,
    platform::{
        auth::area::{Clinical, Essentials, Tasks},
        db::View,
        error::Result,
    },
    record::{
        appointments::{meeting::Meeting, model::Status, store as appointments},
        contacts::store as contacts,
        visits::{model::Visit, store as visits},
    },
};
use time::{Date, Duration};

/// So far back.
const YEARS: Duration = Duration::days(3653);

#[derive(Default)]
pub struct Earlier {
    kept: Vec<Meeting>,
    notes: Vec<Visit>,
}

impl Earlier {
    /// Those before a moment, but for the visit itself.
    pub async fn read(
        view: &View<Clinical>,
        with: &With,
        (until, own): (Instant, Option<(AppointmentId, Date)>),
    ) -> Result<Earlier> {
        let mut kept = match view.area::<Tasks>() {
            Some(view) => appointments::meetings(&view, until.minus(YEARS), until).await?,
            None => Vec::new(),
        };
        let known = match view.area::<Essentials>() {
            Some(view) => contacts::list(&view).await?,
            None => Vec::new(),
        };
        let name = |it: &Meeting| match (&it.appointment.with_whom, it.appointment.contact_id) {
            (Some(typed), _) => typed.to_string(),
            (None, id) => {
                let of = known.iter().find(|it| Some(it.id) == id);
                of.map(|it| it.name.to_string()).unwrap_or_default()
            }
        };
        kept.retain(|it| {
            it.status == Status::Kept && is_same(with, it.appointment.contact_id, &name(it))
        });
        let zone = view.whose().await?.zone;
        let mut notes = visits::list(view).await?;
        notes.retain(|it| {
            let is_own = own.is_some() && it.appointment_id.zip(it.occurrence_on) == own;
            let same = is_same(with, it.contact_id, it.with_whom.as_str());
            same && !is_own && it.held_on <= zone.day(until)
        });
        Ok(Earlier { kept, notes })
    }

    /// The day of the last of them.
    pub fn last(&self, zone: &Zone) -> Option<Date> {
        let kept = self.kept.iter().map(|it| it.day(zone));
        kept.chain(self.notes.iter().map(|it| it.held_on)).max()
    }

    /// Whether a task came of one of them.
    pub fn led_to(&self, task: &Task) -> bool {
        task.about().is_some_and(|(kind, item)| match kind {
            "appointment" => self.kept.iter().any(|it| i64::from(it.id()) == item),
            "visit" => self.notes.iter().any(|it| i64::from(it.id) == item),
            _ => false,
        })
    }
}

fn is_same(with: &With, contact: Option<ContactId>, name: &str) -> bool {
    match (contact, with.contact) {
        (Some(one), Some(other)) => one == other,
        _ => !name.is_empty() && (named(name, &with.name) || named(&with.name, name)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_contact_is_the_same_by_itself_and_a_typed_one_by_its_name() {
        let lind = |contact: Option<i64>| With {
            contact: contact.map(ContactId::from),
            kind: None,
            name: "Dr Lind".to_owned(),
        };
        assert!(is_same(&lind(Some(4)), Some(4.into()), "another name"));
        assert!(!is_same(&lind(Some(4)), Some(5.into()), "Dr Lind"));
        assert!(is_same(&lind(Some(4)), None, "Dr Lind, the heart clinic"));
        assert!(!is_same(&lind(None), None, "Dr Lindqvist"));
        assert!(!is_same(&lind(None), None, ""));
    }
}
