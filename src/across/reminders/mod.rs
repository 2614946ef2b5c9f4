//! Reminders: what has become due is put into the outbox, for each member as far as her place
//! reaches and as she chose it.
//!
//! An `Occasion` is one thing that someone may be reminded of at one moment. Each kind has a file
//! here that gives the occasions of one member; `words` says them, without anything clinical;
//! `plan` decides which are due and writes each once. A new kind is a variant of `mail_choices`'
//! `Kind`, a file here, a line in `sources`, and its words.

mod appointments;
mod digest;
mod occasion;
mod pages;
mod plan;
mod renewals;
mod store;
mod supply;
mod tasks;
mod trouble;
mod unsaid;
mod words;

pub use plan::{Due, due, plan};

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/p/{person}/reminders", get(pages::show))
}
