//! A prescription that was refused at the pharmacy counter: what was said, whose move it is and
//! since when, the calls about it, and by when the plan answers.
//!
//! A refusal names a medicine: it is there only for those who also see the medicines, and hidden with
//! the one it names. Its pages are in `across/coverage`. Whether it is right is nowhere asked: the
//! plan is, and the notice says how.

pub mod calls;
pub mod due;
pub mod form;
pub mod model;
pub mod mover;
pub mod store;
