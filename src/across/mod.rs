//! What joins several capabilities: it reads and writes through their stores.

pub mod appointments;
pub mod calendar;
pub mod carried;
pub mod coverage;
pub mod directives;
pub mod disagreements;
pub mod happenings;
pub mod history;
pub mod ingredients;
pub mod named;
pub mod observations;
pub mod papers;
pub mod questions;
pub mod reconciliation;
pub mod reminders;
pub mod renewals;
pub mod search;
pub mod setup;
pub mod sheets;
pub mod statements;
pub mod tasks;
pub mod today;
pub mod turns;
pub mod visibility;
pub mod visits;
