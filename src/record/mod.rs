//! What is known about one person. Each folder owns its tables and knows no other folder here.

pub mod allergies;
pub mod appointments;
pub mod baseline;
pub mod conditions;
pub mod contacts;
pub mod coverage;
pub mod directives;
pub mod happenings;
pub mod medicines;
pub mod observations;
pub mod operations;
pub mod papers;
pub mod people;
pub mod questions;
pub mod renewals;
pub mod statements;
pub mod visits;
