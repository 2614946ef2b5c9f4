//! What a paper probably is, by its words alone: of which kind, of which day, from whom, about whom.
//!
//! Pure rules. Each gives what it proposes together with why, or says that it does not know; where two
//! answers are as good it names both and takes neither. Nothing here files anything, and what someone
//! confirmed is all that `kinds` learns from.

pub mod bayes;
pub mod dates;
pub mod kinds;
#[cfg(test)]
mod measured;
pub mod person;
pub mod sender;
pub mod tokens;
