//! Turns: why a medicine was started, stopped, held, resumed or taken differently, and who was told.
//!
//! A medicine's row says how it stands; a turn says who said so, why, from when, and in whose place.
//! Most undocumented changes are small ones, so each turn ends on a page that asks who has been
//! told. That someone opened a page is kept nowhere. The pages that name contacts are in
//! `across/turns`.

mod actions;
pub mod form;
pub mod keeping;
pub mod model;
mod own;
pub mod standing;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/medicines/{medicine}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route(&step("hold"), get(actions::holding).post(actions::hold))
        .route(&step("stop"), get(actions::stopping).post(actions::stop))
        .route(&step("resume"), get(actions::resuming).post(actions::resume))
        .route(&step("change"), get(actions::changing).post(actions::change))
        .route("/p/{person}/changes/{turn}/done", get(own::doing).post(own::done))
        .route("/p/{person}/changes/{turn}/resume-on", get(own::giving_day).post(own::give_day))
        .route("/p/{person}/changes/{turn}/strike", get(own::striking).post(own::strike))
}
