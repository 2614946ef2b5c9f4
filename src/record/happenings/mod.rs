//! What happened: a line or a photo, kept at once with name and time by whoever was there.
//!
//! It waits until someone gives it its place: about a medicine, a condition, a contact and so on,
//! or on its own. What it is about is joined on in `across/happenings`; here an item is only a
//! kind and a number. The words are a witness's: only who noted them puts them right.

mod actions;
pub mod form;
pub mod model;
mod pages;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/happenings/{happening}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/happenings/add", get(pages::blank).post(pages::add))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("photo"), get(pages::photo))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
