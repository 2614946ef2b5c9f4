//! Reconciliation: a second list of medicines (the hospital's discharge list, a clinic's printout,
//! the bottles on the table) is taken in as it stands and laid beside the record.
//!
//! Every row is settled by a press: theirs accepted, ours kept, or asked of someone. Nothing is
//! decided here, nothing is guessed silently, and what a list does not mention is not a stop. What
//! was accepted is written in one go, and can be taken back in one go.

mod compare;
mod finish;
mod form;
pub mod lines;
mod matching;
pub mod model;
mod pages;
mod pairs;
mod settle;
pub mod settled;
pub mod settled_store;
pub mod store;
mod strength;
mod understood;
mod undo;

pub use matching::Pairs;
pub use pages::shown;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/reconciliation/{list}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/reconciliation", get(pages::list))
        .route("/p/{person}/reconciliation/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/reconciliation/pairs", get(pairs::list))
        .route("/p/{person}/reconciliation/pairs/{pair}/take-back", post(pairs::take_back))
        .route(each, get(pages::show).post(settle::settle))
        .route(&step("lines"), get(understood::lines))
        .route(&step("lines/add"), get(understood::blank).post(understood::add))
        .route(&step("lines/{line}"), get(understood::edit).post(understood::save))
        .route(&step("finish"), get(finish::finishing).post(finish::finish))
        .route(&step("take-back"), get(undo::taking_back).post(undo::take_back))
        .route(&step("strike"), get(finish::striking).post(finish::strike))
        .route(&step("bring-back"), get(finish::bringing_back).post(finish::bring_back))
}
