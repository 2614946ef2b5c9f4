//! A member's calendar at a secret address, for the calendar program of her phone: the appointments that she may see, and her
//! own tasks that have a day, in every record she shares or in one.
//!
//! The address is shown once and kept as its SHA-256; she takes it back, and makes another. It is read as she would read
//! the pages at that moment: less for a lowered area, nothing of what is hidden from her or of a place that is paused.

mod event;
mod gather;
mod model;
mod own_tasks;
mod pages;
#[cfg(test)]
mod random;
mod serve;
mod store;
#[cfg(test)]
mod tests;
mod vtimezone;

pub use model::Feed;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/calendar/{token}", get(serve::calendar))
        .route("/me/calendar", get(pages::list).post(pages::make))
        .route("/me/calendar/{feed}/take-back", post(pages::take_back))
}
