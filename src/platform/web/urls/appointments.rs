//! The addresses of appointments, and of one of a series by the day it would have been on.

use super::{Address, me, record};
use crate::base::ids::{AppointmentId, FeedId};
use time::Date;

/// The calendar.
pub fn appointments() -> Address {
    record("/appointments")
}

pub fn appointment(id: impl Into<AppointmentId>) -> Address {
    appointments().and(&id.into().to_string())
}

/// One time of it.
pub fn appointment_on(id: impl Into<AppointmentId>, on: impl std::borrow::Borrow<Date>) -> Address {
    appointment(id).and("on").and(&on.borrow().to_string())
}

/// The addresses of the reader's calendar for other programs.
pub fn my_calendar() -> Address {
    me().and("calendar")
}

pub fn feed(id: impl Into<FeedId>) -> Address {
    my_calendar().and(&id.into().to_string())
}
