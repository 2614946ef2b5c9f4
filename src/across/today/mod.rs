//! Today: what needs someone, what changed since the reader last confirmed having read, and which
//! facts were checked longest ago. At its foot one line for what happened.
//!
//! Each panel is there as far as the reader's place reaches. Having opened a page is never noted;
//! having read is said by a press, and only by the reader herself.

mod checks;
mod facts;
mod form;
pub mod needs;
mod pages;
mod planned;
pub mod read;
mod week;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/today", get(pages::show))
        .route("/p/{person}/today/read", post(pages::confirm))
}
