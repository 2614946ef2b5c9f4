//! The first run: whoever opens the one-time link makes the first steward and the first person.
//!
//! The link is printed where the server was started, works once, and for 24 hours. There is no
//! other way to register.

mod form;
pub mod pages;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/setup/{token}", get(pages::form).post(pages::start))
}
