//! Two questions that whoever gives treatment asks first: does she take a blood thinner, has she
//! an implant or device.
//!
//! The answer to each is *stated*: yes, with which; or none; by someone, on a day. Until then it
//! is "not asked". It is never concluded from the medicines or the operations: a list may be
//! incomplete, and what a medicine does is not for this record to say.

pub mod form;
pub mod model;
mod pages;
pub mod state;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/p/{person}/statements/{question}", get(pages::asking).post(pages::answer))
}
