//! Questions, beside what they are about and whom they are for: the list, one question, its words and
//! its item; the questions for one clinician in their order, and questions to start from.
//!
//! The questions themselves are `record/questions`; the items they can be about come from
//! everywhere in the record, as far as the reader sees them.

mod edit;
pub mod made;
pub mod occasion;
mod order;
mod pages;
mod starters;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/questions/{question}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/questions", get(pages::list))
        .route("/p/{person}/questions/add", get(edit::blank).post(edit::add))
        .route("/p/{person}/questions/about/{kind}/{item}", get(pages::about))
        .route(each, get(pages::show))
        .route(&step("edit"), get(edit::edit).post(edit::save))
        .route("/p/{person}/questions/with/{contact}", get(order::with_contact))
        .route(
            "/p/{person}/questions/with/{contact}/starters",
            get(starters::choosing_with).post(starters::choose_with),
        )
        .route("/p/{person}/questions/for/{appointment}/{day}", get(order::for_meeting))
        .route(
            "/p/{person}/questions/for/{appointment}/{day}/starters",
            get(starters::choosing_for).post(starters::choose_for),
        )
        .route(&step("for/{appointment}/{day}/earlier"), post(order::earlier_for))
        .route(&step("for/{appointment}/{day}/later"), post(order::later_for))
        .route(&step("with/{contact}/earlier"), post(order::earlier_with))
        .route(&step("with/{contact}/later"), post(order::later_with))
}
