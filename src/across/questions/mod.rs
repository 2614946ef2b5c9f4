//! Questions, beside what they are about: the list, one question, its words and its item.
//!
//! The questions themselves are `record/questions`; the items they can be about come from
//! everywhere in the record, as far as the reader sees them.

mod edit;
pub mod made;
mod pages;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/questions/{question}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/questions", get(pages::list))
        .route("/p/{person}/questions/add", get(edit::blank).post(edit::add))
        .route("/p/{person}/questions/about/{kind}/{item}", get(pages::about))
        .route(each, get(pages::show))
        .route(&step("edit"), get(edit::edit).post(edit::save))
}
