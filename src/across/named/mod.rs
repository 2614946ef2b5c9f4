//! Where a contact stands in the record: in which papers, directives and plans she is named, and where
//! her name or a number of hers stands in words.
//!
//! A number that was changed is still on other pages, and in letters that were filed: the page says
//! where, as far as the reader sees each. Nothing is changed there by itself.

mod pages;
mod places;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/contacts/{contact}/places";
    let step = |step: &str| format!("{each}/{step}");
    Router::new().route(each, get(pages::show)).route(&step("{number}"), get(pages::changed))
}
