//! The first run, and another person's record beside the first. Whoever opens the one-time link makes the first steward and the first person.
//!
//! The link is printed where the server was started, works once, and for 24 hours. Everyone
//! else comes by invitation.

pub mod another;
mod form;
pub mod pages;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/setup/{token}", get(pages::form).post(pages::start))
        .route("/records/add", get(another::adding).post(another::add))
}
