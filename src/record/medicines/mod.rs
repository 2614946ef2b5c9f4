//! Medicines: what is taken, how, and what for, in the words of the label.
//!
//! A medicine is being taken, on hold, stopped, or struck (entered by mistake); it is never
//! deleted, and each of these can be taken back. Nothing here computes a dose or judges one.
//! A check says who compared the entry with what, and when; an edit takes the check off.

pub mod abbreviations;
mod actions;
pub mod before;
pub mod form;
pub mod given;
pub mod ingredients;
pub mod model;
pub mod names;
mod pages;
mod past;
pub mod schedule;
pub mod stock;
pub mod store;
pub mod turns;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/medicines/{medicine}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/medicines", get(pages::list))
        .route("/p/{person}/medicines/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/medicines/check", get(actions::checking_all).post(actions::check_all))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("check"), get(actions::checking).post(actions::check))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
        .merge(schedule::routes())
        .merge(stock::routes())
        .merge(given::routes())
        .merge(turns::routes())
        .merge(ingredients::routes())
        .merge(names::routes())
}
