//! The schedule of a medicine: steps from day to day, what falls on a day, directions in words.
//!
//! A label says in words how something is taken; a step says the same in numbers, so that a day,
//! a pill box and a supply can be laid out. The label's own words are always kept beside it.

pub mod day;
pub mod directions;
mod form;
pub mod grids;
pub mod model;
mod pages;
#[cfg(test)]
mod random;
pub mod repeat;
pub mod store;
pub mod times;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/medicines/{medicine}/steps/{step}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/medicines/day", get(grids::day))
        .route("/p/{person}/medicines/week", get(grids::week))
        .route("/p/{person}/medicines/{medicine}/steps/add", get(pages::blank).post(pages::add))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("strike"), get(pages::striking).post(pages::strike))
}
