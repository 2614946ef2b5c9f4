//! A member's place in a record: her role, what is lowered for her, and whether it stands.
//!
//! Only the person and stewards decide, by the rules in `rules`. A paused place sees nothing
//! until the pause is taken back. One that has ended stays in the history, and is filled again by
//! a new invitation.

pub mod form;
pub mod pages;
pub mod rules;
pub mod store;
pub mod turns;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/family/{membership}";
    let step = |name: &str| format!("{each}/{name}");
    Router::new()
        .route(each, get(pages::show))
        .route(&step("role"), get(pages::role).post(pages::change_role))
        .route(&step("areas"), get(pages::areas).post(pages::lower))
        .route(&step("pause"), get(turns::pausing).post(turns::pause))
        .route(&step("resume"), get(turns::resuming).post(turns::resume))
        .route(&step("remove"), get(turns::removing).post(turns::remove))
}
