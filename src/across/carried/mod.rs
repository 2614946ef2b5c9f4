//! What each carries, on one page over a window of days: sums in plain words, by the names in their
//! order; beside it what can be taken from afar, and whom to phone for a rest or in a crisis.
//!
//! No order of merit, no shares, no bars: it is there so that each sees what the others give. The
//! entries and the wishes about them are `family/carried`.

mod door;
mod entry;
mod pages;
mod sums;
mod wishes;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/carried/{carried}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/carried", get(pages::list))
        .route("/p/{person}/carried/add", get(entry::blank).post(entry::add))
        .route("/p/{person}/carried/wish", get(wishes::own).post(wishes::say_own))
        .route("/p/{person}/carried/wish-of-all", get(wishes::of_all).post(wishes::say_of_all))
        .route(each, get(pages::show))
        .route(&step("edit"), get(entry::edit).post(entry::save))
        .route(&step("strike"), get(entry::striking).post(entry::strike))
        .route(&step("bring-back"), get(entry::bringing_back).post(entry::bring_back))
}
