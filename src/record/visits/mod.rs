//! Visits: the note of one, in the family's words, with what came of it and who should read it.
//!
//! An answer, a change of a medicine, a task and the next appointment are written through their own
//! capabilities in the same write (`across/visits`); here the note keeps which they are. A draft is
//! what one member is typing: it is no part of the record.

mod actions;
pub mod drafts;
mod form;
pub mod model;
pub mod store;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/visits/{visit}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
        .route(&step("read"), post(actions::read))
}
