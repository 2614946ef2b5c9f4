//! Coverage and cards: who pays for the person's care, the cards that are shown at a desk, and what
//! was refused at the pharmacy counter.
//!
//! Numbers are masked on every page; a press shows them, and the history notes that it was pressed,
//! and never a number. What the plans themselves print is typed as it stands there: nothing here says
//! what is covered, nor whether a refusal is right. Refusals lean on a medicine, so their pages are in
//! `across/coverage`.

pub mod actions;
pub mod cards;
pub mod form;
pub mod kind;
mod mask;
pub mod model;
mod noted;
mod pages;
pub mod refusals;
pub mod rules;
pub mod store;

pub use mask::masked;
pub use noted::noted;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/coverage/{cover}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/coverage/add", get(pages::blank).post(pages::add))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("numbers"), get(pages::numbers).post(pages::keep_numbers))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
        .merge(cards::routes())
}
