//! The schedule of a medicine: steps from day to day, what falls on a day, directions in words.

pub mod directions;
pub mod model;
pub mod repeat;
pub mod times;
