//! The addresses of visits: notes, notes that are being typed, the questions for one time of an
//! appointment.

use super::{Address, questions, record};
use crate::base::ids::{AppointmentId, ContactId, DraftId, VisitId};
use std::borrow::Borrow;
use time::Date;

/// The notes of visits.
pub fn visits() -> Address {
    record("/visits")
}

pub fn visit(id: impl Into<VisitId>) -> Address {
    let id = id.into();
    record(format!("/visits/{id}"))
}

/// Where the note of one time of an appointment is written.
pub fn visit_of(id: impl Into<AppointmentId>, on: impl Borrow<Date>) -> Address {
    let id = id.into();
    record(format!("/visits/of/{id}/{}", on.borrow()))
}

/// A note that is being typed.
pub fn visit_draft(id: impl Into<DraftId>) -> Address {
    let id = id.into();
    record(format!("/visits/drafts/{id}"))
}

/// Where the script of the page keeps what is being typed.
pub fn visits_typed() -> Address {
    visits().and("typed")
}

/// The questions for one contact, in their order.
pub fn questions_with(id: impl Into<ContactId>) -> Address {
    let id = id.into();
    questions().and(&format!("with/{id}"))
}

/// The questions for one time of an appointment.
pub fn questions_for(id: impl Into<AppointmentId>, on: impl Borrow<Date>) -> Address {
    let id = id.into();
    questions().and(&format!("for/{id}/{}", on.borrow()))
}
