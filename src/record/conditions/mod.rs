//! Conditions, as the family was told of them.
//!
//! Beside each stands who may know of it, in the person's own words, and how much of it she wants
//! to be told herself. A condition that is over stays listed as over; one that was a mistake is
//! struck. Neither leaves the history.

mod actions;
pub mod form;
pub mod model;
mod pages;
pub mod store;
pub mod wish;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/conditions/{condition}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/conditions", get(pages::list))
        .route("/p/{person}/conditions/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/conditions/check", get(actions::checking_all).post(actions::check_all))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("check"), get(actions::checking).post(actions::check))
        .route(&step("over"), get(actions::ending).post(actions::end))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
