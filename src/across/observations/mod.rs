//! What was noticed, as it is read: by day and by what it is about, and one of them with the
//! person's answer and the visit on whose sheet it stands. Never counted by who noticed it.
//!
//! The observations themselves, and who sees which, are `record/observations`.

mod form;
mod pages;
pub mod tick;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/noticed/{observation}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/noticed", get(pages::list))
        .route(each, get(pages::show))
        .route(&step("visit"), get(tick::ticking).post(tick::tick))
}
