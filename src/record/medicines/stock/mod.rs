//! The supply of medicines: how long what is in the house lasts, and what must be done by when.
//!
//! Kept are fills from the pharmacy and counts of what is in the house; all else is reckoned from
//! them and the steps of the schedule. Words: run-out day (the first day without), days' supply,
//! act by (the last day on which the pharmacy can still be asked in time). Nothing is advised: the
//! label says, and the pharmacist is asked.

mod act_by;
mod amount;
mod away;
mod covered;
mod form;
mod lasts;
pub mod life;
mod list;
pub mod model;
mod pages;
#[cfg(test)]
mod samples;
mod show;
pub mod standing;
pub mod store;
mod walk;

pub use amount::{Amount, same_unit};

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/medicines/{medicine}/stock";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/medicines/supply", get(list::supply))
        .route("/p/{person}/medicines/supply/away", get(away::away))
        .route("/p/{person}/medicines/supply/days", get(list::setting).post(list::set))
        .route(each, get(show::show))
        .route(&step("fills/add"), get(pages::filling).post(pages::fill))
        .route(&step("fills/{fill}/edit"), get(pages::edit).post(pages::save))
        .route(&step("fills/{fill}/strike"), get(pages::striking).post(pages::strike))
        .route(&step("counts/add"), get(pages::counting).post(pages::count))
        .route(&step("counts/{count}/strike"), get(pages::striking_count).post(pages::strike_count))
}
