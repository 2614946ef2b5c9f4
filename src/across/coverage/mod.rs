//! Coverage at one look, and what was refused at the counter beside the medicine it is about: its
//! run-out day, the cover, whose move it is. And what of all that stands on Today.
//!
//! A refusal is written in the area of the papers and names a medicine of the clinical one: its pages
//! ask for both, so that it is not there for who sees one of them only.

mod calls;
mod list;
mod needs;
mod refusals;
mod show;
mod steps;
pub mod titles;

pub use needs::needs;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/coverage/refusals/{refusal}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/coverage", get(list::list))
        .route("/p/{person}/coverage/refusals", get(refusals::list))
        .route("/p/{person}/coverage/refusals/add", get(refusals::blank).post(refusals::add))
        .route(each, get(show::show))
        .route(&step("edit"), get(refusals::edit).post(refusals::save))
        .route(&step("statement"), get(steps::stating).post(steps::state))
        .route(&step("decision"), get(steps::deciding).post(steps::decide))
        .route(&step("move"), get(steps::moving).post(steps::hand_on))
        .route(&step("settle"), get(steps::settling).post(steps::settle))
        .route(&step("calls/add"), get(calls::blank).post(calls::add))
        .route(&step("calls/{call}/strike"), get(calls::striking).post(calls::strike))
        .route(&step("strike"), get(refusals::striking).post(refusals::strike))
        .route(&step("bring-back"), get(refusals::bringing_back).post(refusals::bring_back))
}
