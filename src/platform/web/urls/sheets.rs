//! The addresses of the sheets, on screen and in print.

use super::{Address, record};
use crate::base::ids::{AppointmentId, ContactId, TurnId};
use std::borrow::Borrow;
use time::Date;

pub fn sheets() -> Address {
    record("/sheets")
}

pub fn emergency_sheet() -> Address {
    record("/sheets/emergency")
}

/// What is kept about the person, and who sees it.
pub fn kept_sheet() -> Address {
    record("/sheets/kept")
}

/// Which directives stand, and where they are.
pub fn directives_sheet() -> Address {
    record("/sheets/directives")
}

/// Every medicine on one sheet.
pub fn medicine_sheet() -> Address {
    record("/sheets/medicines")
}

pub fn wallet_card() -> Address {
    record("/sheets/wallet")
}

/// A week for the pill box on paper, from a day on.
pub fn week_sheet(from: impl Borrow<Date>) -> Address {
    record(format!("/sheets/week?on={}", from.borrow()))
}

pub fn week_print(from: impl Borrow<Date>) -> Address {
    record(format!("/sheets/week/print?on={}", from.borrow()))
}

/// What changed since a day, on paper: for one contact, or all of it.
pub fn change_slip(since: impl Borrow<Date>, contact: Option<ContactId>) -> Address {
    let contact = contact.map(|it| format!("&contact={it}")).unwrap_or_default();
    record(format!("/sheets/changes?since={}{contact}", since.borrow()))
}

/// One change on paper.
pub fn slip_of(turn: impl Into<TurnId>) -> Address {
    record(format!("/sheets/changes?turn={}", turn.into()))
}

/// What to bring to a visit.
pub fn visit_sheet() -> Address {
    record("/sheets/visit")
}

/// The same for one time of an appointment.
pub fn visit_sheet_of(id: impl Into<AppointmentId>, on: impl Borrow<Date>) -> Address {
    record(format!("/sheets/visit?appointment={}&on={}", id.into(), on.borrow()))
}

/// A day on paper.
pub fn day_sheet(on: impl Borrow<Date>) -> Address {
    record(format!("/sheets/day?on={}", on.borrow()))
}

pub fn day_print(on: impl Borrow<Date>) -> Address {
    record(format!("/sheets/day/print?on={}", on.borrow()))
}
