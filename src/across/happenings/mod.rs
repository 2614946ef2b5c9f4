//! What happened, beside what it is about: the list, one note with its photo, and its place.
//!
//! The notes themselves are `record/happenings`; the items they can be about come from everywhere
//! in the record, as far as the reader sees them.

mod form;
pub mod items;
mod pages;
mod place;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/happenings/{happening}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/happenings", get(pages::list))
        .route("/p/{person}/happenings/about/{kind}/{item}", get(pages::about))
        .route(each, get(pages::show))
        .route(&step("place"), get(place::placing).post(place::place))
}
