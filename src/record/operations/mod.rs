//! Operations, and what was put in.
//!
//! An implant stands with the number of its card, as a hospital asks for it. Whether the person
//! has an implant is not concluded from this list: that is a statement of its own.

mod actions;
pub mod form;
pub mod model;
mod pages;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/operations/{operation}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/operations", get(pages::list))
        .route("/p/{person}/operations/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/operations/check", get(actions::checking_all).post(actions::check_all))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("check"), get(actions::checking).post(actions::check))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
