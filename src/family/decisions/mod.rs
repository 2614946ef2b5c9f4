//! Decisions: what is to be decided for the person, and what was decided: why, who was heard, who
//! decides by which right, and when to look again. A family meeting goes through the open ones.
//!
//! A right is stated by whoever writes it down, and never concluded from a role or a paper.
//! Reasons tell of health (and money), so decisions are in the clinical area; and they tell how
//! the family stands to one another, so that they are there only for those who also see who shares
//! the record: an aide and a reader see the clinical pages, and no decision.

mod act;
mod decide;
pub mod form;
pub mod meeting;
pub mod model;
mod pages;
pub mod right;
pub mod store;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/decisions/{decision}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/decisions", get(pages::list))
        .route("/p/{person}/decisions/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/decisions/meeting", get(meeting::show))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("decide"), get(decide::deciding).post(decide::decide))
        .route(&step("look-again"), get(act::looking_again).post(act::look_again))
        .route(&step("replace"), get(act::replacing).post(act::replace))
        .route(&step("withdraw"), get(act::withdrawing).post(act::withdraw))
        .route(&step("bring-back"), get(act::bringing_back).post(act::bring_back))
        .route(&step("earlier"), post(meeting::earlier))
        .route(&step("later"), post(meeting::later))
}
