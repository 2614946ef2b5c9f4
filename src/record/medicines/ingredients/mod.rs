//! The ingredients of a medicine, as the label of that product lists them: how much is in one
//! tablet or in so many mL, and the most of it in 24 hours where that label says so.
//!
//! A product of several ingredients has several rows. Nothing is looked up and nothing concluded:
//! what the strength says is proposed in the form, and kept only when someone saves it.

pub mod daily;
mod form;
pub mod measure;
pub mod model;
mod pages;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/medicines/{medicine}/ingredients";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route(&step("add"), get(pages::blank).post(pages::add))
        .route(&step("{ingredient}/edit"), get(pages::edit).post(pages::save))
        .route(&step("{ingredient}/strike"), get(pages::striking).post(pages::strike))
}
