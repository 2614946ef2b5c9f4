//! The same ingredient in several medicines: where each stands, what comes together of it in a
//! day as the schedule and the labels say, and which limit stands on a label in the house.
//!
//! A sum, a limit, whose it is, and whom to ask; never whether it is right. What cannot be added
//! is named. A press puts the facts into a question for the pharmacist.

mod limits;
mod pages;
mod question;
mod together;

pub use question::unasked;
pub use together::Written;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/ingredients", get(pages::list))
        .route("/p/{person}/ingredients/as-question", post(question::make))
}
