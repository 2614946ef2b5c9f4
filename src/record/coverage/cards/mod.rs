//! Cards: front and back of what is asked for at a desk, as photos, to be shown large.
//!
//! Each opening is noted. Where the plan year is the calendar year, the new card is asked about from
//! the second day of the year, until it was photographed or someone said that it stays the same.

mod actions;
pub mod form;
pub mod model;
mod pages;
mod photos;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/coverage/cards/{card}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/coverage/cards", get(pages::list))
        .route("/p/{person}/coverage/cards/add", get(pages::blank).post(pages::add))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("front/photo"), get(photos::front))
        .route(&step("back/photo"), get(photos::back))
        .route(&step("photograph"), get(photos::photographing).post(photos::photograph))
        .route(&step("same"), get(actions::staying).post(actions::stay))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
