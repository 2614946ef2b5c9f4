//! Who sees one item: the person, or a steward on her behalf, hides it from a member.
//!
//! A hidden item is not there for that member: not in lists, counts, sheets or the history. What
//! a steward decides is marked as done on the person's behalf. Nothing is hidden from the person,
//! and nobody hides anything from herself.

mod asked;
mod form;
pub mod model;
mod pages;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/visibility/{kind}/{item}", get(pages::show).post(pages::decide))
        .route("/p/{person}/visibility/{kind}/{item}/asked", get(asked::asking).post(asked::add))
}
