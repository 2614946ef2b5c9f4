//! Papers that look alike, side by side, and what someone says of them: that it is the same paper, which is
//! then struck; a newer version; or two papers, which is remembered.

pub mod found;
pub mod job;
mod show;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/p/{person}/papers/{paper}/alike", get(show::show).post(show::answer))
}
