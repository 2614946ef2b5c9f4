//! The history as people read it: sentences, by day, with what it was before.
//!
//! Reads what `platform::audit` kept; the words for each kind of thing are in `kinds`. The life
//! of one item has its own page, and anyone who reads the history can have it verified.

mod answers;
mod appointments;
mod carried;
mod coverage;
pub mod days;
mod death;
mod decided;
mod directives;
mod given;
pub mod kinds;
mod noticed;
mod pages;
mod papers;
mod places;
mod questions;
mod reconciled;
mod renewals;
mod sentences;
mod tasks;
pub mod titles;
mod turns;
mod values;
mod visits;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/history", get(pages::list))
        .route("/p/{person}/history/verify", get(pages::unverified).post(pages::verify))
        .route("/p/{person}/history/{kind}/{item}", get(pages::life))
}
