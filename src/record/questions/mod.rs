//! Questions for a pharmacist, a prescriber or a clinician: in the family's words, with who will
//! ask, and with what was answered.
//!
//! A question is open, asked, answered, or let go; each can be taken back. One that nobody will
//! ask stands in front. What it is about is joined on in `across/questions`; here an item is only
//! a kind and a number. An answer is what someone said, and never more than that.

mod actions;
pub mod form;
pub mod model;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/questions/{question}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route(&step("own"), get(actions::owning).post(actions::own))
        .route(&step("hand"), get(actions::handing).post(actions::hand))
        .route(&step("ask"), get(actions::asking).post(actions::ask))
        .route(&step("answer"), get(actions::answering).post(actions::answer))
        .route(&step("let-go"), get(actions::letting_go).post(actions::let_go))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
