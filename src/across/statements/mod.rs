//! What was stated of a blood thinner and of implants, on one page, beside what is listed.
//!
//! An answer and a list may say different things. Then both stand side by side, with no word on
//! which is right: whoever reads it asks.

mod beside;
mod pages;

pub use beside::beside;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/p/{person}/statements", get(pages::list))
}
