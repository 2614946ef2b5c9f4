//! How the person usually is: the six daily activities, thinking, mood, what a change looks like,
//! how to be with her.
//!
//! A nurse who has never met her takes confusion for her usual state (common practice, no
//! source). Her own words stand first, and say who wrote them down. There is one for each person,
//! made at the first save; until then nothing was asked, and the page says so.

pub mod daily;
pub mod form;
pub mod model;
mod pages;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/usual", get(pages::show))
        .route("/p/{person}/usual/edit", get(pages::edit).post(pages::save))
        .route("/p/{person}/usual/check", get(pages::checking).post(pages::check))
}
