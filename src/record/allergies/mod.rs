//! Allergies and intolerances, with the reaction as it was seen.
//!
//! The list is in one of three states: something is listed; "no known allergies", a dated
//! statement by someone; or not asked. What is listed wins: writing anything about a listed one
//! takes a standing "none known" back, and when the last is struck the answer is "not asked".

mod actions;
pub mod answer;
pub mod form;
pub mod model;
mod pages;
pub mod state;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/allergies/{allergy}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/allergies", get(pages::list))
        .route("/p/{person}/allergies/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/allergies/answer", get(pages::asking).post(pages::answer))
        .route("/p/{person}/allergies/check", get(actions::checking_all).post(actions::check_all))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("check"), get(actions::checking).post(actions::check))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
