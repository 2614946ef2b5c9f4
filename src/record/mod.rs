//! What is known about one person. Each folder owns its tables and knows no other folder here.

pub mod allergies;
pub mod contacts;
pub mod medicines;
pub mod people;
