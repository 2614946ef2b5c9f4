//! With whom questions will be talked over, and which of those that wait are for that one, in their
//! order. Nothing of it is kept: a question goes to the next visit with the right clinician, whenever
//! that is booked, and stands again at the one after it until it is answered.

use crate::{
    across::{turns::told::named, visits::meeting::Met},
    base::{
        clock::Instant,
        ids::{AppointmentId, ContactId, MedicineId},
    },
    platform::{
        auth::area::{Clinical, Essentials, Tasks},
        db::View,
        error::{Error, Result},
    },
    record::{
        appointments::store as appointments,
        contacts::{kind::Kind, model::Contact, store as contacts},
        medicines::store as medicines,
        questions::{
            model::{Question, Whom},
            store::{self, Wanted},
        },
        visits::model::Visit,
    },
};
use std::collections::HashMap;
use time::{Date, Duration};

/// The one who will be asked.
#[derive(Clone, Debug)]
pub struct With {
    pub contact: Option<ContactId>,
    pub kind: Option<Kind>,
    pub name: String,
}

impl With {
    pub fn contact(contact: &Contact) -> With {
        let name = contact.name.to_string();
        With { contact: Some(contact.id), kind: Some(contact.kind), name }
    }

    /// With whom a visit of the calendar is: a contact, a typed name, else what the visit is.
    pub async fn of_meeting(view: &View<Clinical>, met: &Met) -> With {
        if let (Some(id), Some(view)) =
            (met.meeting.appointment.contact_id, view.area::<Essentials>())
            && let Ok(contact) = contacts::find(&view, id).await
        {
            return With::contact(&contact);
        }
        let contact = met.meeting.appointment.contact_id;
        let name = Some(met.with_whom()).filter(|it| !it.is_empty());
        let name = name.unwrap_or_else(|| met.meeting.appointment.title.to_string());
        With { contact, kind: None, name }
    }

    /// With whom a visit was that has a note.
    pub async fn of_visit(view: &View<Clinical>, visit: &Visit) -> Result<With> {
        let name = visit.with_whom.to_string();
        let known = match (visit.contact_id, view.area::<Essentials>()) {
            (Some(id), Some(view)) => contacts::find(&view, id).await.ok(),
            _ => None,
        };
        let kind = known.map(|it| it.kind);
        Ok(With { contact: visit.contact_id, kind, name })
    }

    /// Whether a question is for this one: by the contact, by the name, or by the trade alone. What
    /// is for the prescriber of a medicine goes to the one whose name stands at that medicine;
    /// where none does, to any doctor.
    pub fn is_asked(&self, question: &Question, prescribers: &Prescribers) -> bool {
        let same = |name: &str| named(name, &self.name) || named(&self.name, name);
        match question.for_whom {
            Whom::Pharmacist => self.kind == Some(Kind::Pharmacy),
            Whom::Clinician => match (question.contact_id, self.contact) {
                (Some(one), Some(other)) => one == other,
                _ => same(question.whom()),
            },
            Whom::Prescriber => match prescribers.of(question) {
                Some(name) => same(name),
                None => self.kind == Some(Kind::Doctor),
            },
        }
    }
}

/// Who prescribes each medicine, as far as its label says.
#[derive(Default)]
pub struct Prescribers(HashMap<MedicineId, String>);

impl Prescribers {
    pub async fn read(view: &View<Clinical>) -> Result<Prescribers> {
        let all = medicines::list(view).await?.into_iter();
        Ok(Prescribers(all.filter_map(|it| Some((it.id, it.prescriber?.to_string()))).collect()))
    }

    fn of(&self, question: &Question) -> Option<&str> {
        let (_, item) = question.about().filter(|(kind, _)| *kind == "medicine")?;
        self.0.get(&MedicineId::from(item)).map(String::as_str)
    }
}

/// Where a page of such questions is, and with whom they are talked over.
pub struct Occasion {
    pub with: With,
    /// The steps of its address: `with/3`, `for/7/2026-12-03`.
    pub path: String,
    /// The visit, where it is one in the calendar.
    pub met: Option<Met>,
}

impl Occasion {
    pub async fn of_contact(view: &View<Clinical>, id: ContactId) -> Result<Occasion> {
        let view = view.area::<Essentials>().ok_or(Error::NotFound)?;
        let contact = contacts::find(&view, id).await?;
        Ok(Occasion { with: With::contact(&contact), path: format!("with/{id}"), met: None })
    }

    /// One time of an appointment.
    pub async fn of_meeting(view: &View<Clinical>, key: (AppointmentId, Date)) -> Result<Occasion> {
        let met = Met::find(view, key).await?;
        let with = With::of_meeting(view, &met).await;
        Ok(Occasion { with, path: format!("for/{}/{}", key.0, met.meeting.on), met: Some(met) })
    }

    /// The questions that wait for this one, in their order.
    pub async fn questions(&self, view: &View<Clinical>) -> Result<Vec<Question>> {
        waiting(view, &self.with).await
    }
}

/// The questions that wait for someone, in their order.
pub async fn waiting(view: &View<Clinical>, with: &With) -> Result<Vec<Question>> {
    let prescribers = Prescribers::read(view).await?;
    let mut all = store::list(view, &Wanted::default()).await?;
    all.retain(|it| it.waits() && with.is_asked(it, &prescribers));
    all.sort_by_key(Question::place);
    Ok(all)
}

/// So far ahead the next visit is looked for.
const DAYS: i64 = 400;

/// The next visit at which a question is asked: computed anew at each look, so that it moves with
/// the calendar. None where none is in it, or the calendar is out of the reader's reach.
pub async fn next(view: &View<Clinical>, question: &Question, now: Instant) -> Result<Option<Met>> {
    let Some(tasks) = view.area::<Tasks>() else { return Ok(None) };
    let prescribers = Prescribers::read(view).await?;
    let until = now.plus(Duration::days(DAYS));
    for meeting in appointments::meetings(&tasks, now, until).await? {
        let met = Met { meeting };
        let with = With::of_meeting(view, &met).await;
        if met.meeting.status.is_open() && with.is_asked(question, &prescribers) {
            return Ok(Some(met));
        }
    }
    Ok(None)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        base::text::{Line, Note},
        record::questions::model::Wording,
    };

    fn question(for_whom: Whom, clinician: Option<&str>) -> Question {
        let words = Note::from("With food?".to_owned());
        let clinician = clinician.map(|it| Line::from(it.to_owned()));
        let about = Some(("medicine".to_owned(), 7));
        let wording = Wording { words, for_whom, clinician, about };
        Question::new(1.into(), wording, (2.into(), Instant::from_unix(0)))
    }

    fn with(contact: Option<i64>, kind: Option<Kind>, name: &str) -> With {
        With { contact: contact.map(ContactId::from), kind, name: name.to_owned() }
    }

    fn prescribers() -> Prescribers {
        Prescribers(HashMap::from([(7.into(), "Dr Oyelaran".to_owned())]))
    }

    #[test]
    fn a_question_for_a_contact_goes_to_that_contact_and_by_name_to_who_is_none() {
        let lind = |contact| with(contact, Some(Kind::Doctor), "Dr Lind");
        let of = question(Whom::Clinician, None).for_contact(4.into(), "Dr Lind".to_owned().into());
        let asked = |with: &With, it| with.is_asked(it, &prescribers());
        assert!(asked(&lind(Some(4)), &of));
        assert!(!asked(&lind(Some(5)), &of), "another of the same name");
        assert!(asked(&lind(None), &of), "a visit whose clinician was only typed");
        let typed = question(Whom::Clinician, Some("dr lind, surgeon"));
        assert!(asked(&lind(Some(4)), &typed));
        assert!(!asked(&with(Some(4), None, "Dr Lindqvist"), &typed));
    }

    #[test]
    fn a_trade_goes_to_whoever_has_it() {
        let pharmacy = with(Some(1), Some(Kind::Pharmacy), "Harbor Pharmacy");
        let doctor = with(Some(2), Some(Kind::Doctor), "Dr Lind");
        let oyelaran = with(Some(3), Some(Kind::Doctor), "Dr Oyelaran");
        let asked = |with: &With, whom| with.is_asked(&question(whom, None), &prescribers());
        assert!(asked(&pharmacy, Whom::Pharmacist) && !asked(&doctor, Whom::Pharmacist));
        assert!(asked(&oyelaran, Whom::Prescriber), "her name stands at the medicine");
        assert!(!asked(&doctor, Whom::Prescriber), "another name stands at the medicine");
        let nobody = Prescribers::default();
        assert!(doctor.is_asked(&question(Whom::Prescriber, None), &nobody), "no name at all");
    }
}
