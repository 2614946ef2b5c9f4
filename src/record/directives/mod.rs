//! Directives: the papers in which the person said beforehand what is to be done, or who decides for
//! her. In an emergency department the staff had the paper at hand in 1 to 44 % of cases, although
//! 21 to 53 % of the patients said that they have one (Oulton and others, 2015): so what is kept is
//! which one is in force as far as the family knows, where its original is, and who has a copy.
//!
//! The text stays on the paper. Nothing here says which of two papers is right or what one is worth.
//! Who is named in one is a contact and gets no place in the record by it; a place makes nobody an
//! agent. The pages join them with the contacts: `across/directives`.

pub mod answer;
pub mod copies;
pub mod copy_store;
pub mod diagnosis;
pub mod event_store;
pub mod events;
pub mod form;
pub mod kind;
pub mod model;
pub mod review;
pub mod signing;
pub mod standing;
pub mod store;
