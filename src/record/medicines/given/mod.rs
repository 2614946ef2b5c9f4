//! The log of doses: what was given when, or not given and why, in the words of who entered it.
//!
//! Off until a family turns it on, for single medicines or for all; turned off again, what was
//! entered stays. A dose without an entry is "not entered", and nothing more is concluded from
//! it. The label's own limits are shown beside what was entered; nothing here says what to do.

mod as_needed;
pub mod day;
mod entry;
mod form;
mod ground;
pub mod keeping;
pub mod label;
pub mod model;
mod pages;
mod slot;
pub mod store;
mod turning;

use crate::platform::{house::House, web::form::Constraint};
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/medicines/given/{given}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/medicines/given", get(pages::list))
        .route("/p/{person}/medicines/given/keeping", get(turning::keeping).post(turning::keep))
        .route(
            "/p/{person}/medicines/given/slots/{day}/{time}",
            get(slot::entering).post(slot::enter),
        )
        .route(
            "/p/{person}/medicines/given/as-needed/{medicine}",
            get(as_needed::entering).post(as_needed::enter),
        )
        .route(each, get(entry::show))
        .route(&step("edit"), get(entry::edit).post(entry::save))
        .route(&step("strike"), get(entry::striking).post(entry::strike))
        .route(&step("bring-back"), get(entry::bringing_back).post(entry::bring_back))
}

pub const CONSTRAINTS: [Constraint; 1] = [Constraint {
    ends: "given.medicine_id, given.day, given.time_of_day",
    field: "reason",
    says: "Another entry stands for this dose. Strike that one first, or put it right.",
}];
