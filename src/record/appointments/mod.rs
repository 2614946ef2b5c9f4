//! Appointments: when, where, with whom, who goes along; once, or again and again.
//!
//! A series is a rule of RFC 5545 on the wall of the zone it was booked in. One of it that differs (moved, cancelled,
//! kept, missed, another escort) is named by the day it would have been on. Pages join contacts and members, and are in
//! `across/appointments`.

pub mod calendar;
pub mod escort;
pub mod matter;
pub mod matter_store;
pub mod meeting;
pub mod model;
pub mod occurrence;
pub mod repeat;
pub mod store;

#[cfg(test)]
mod tests;
