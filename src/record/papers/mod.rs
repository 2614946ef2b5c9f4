//! Papers: what lies in the tray until someone says what it is, and what is filed.
//!
//! A paper has pages: pictures in an order, or one PDF. Each page is a file under the SHA-256 of its
//! bytes, never changed; that it is turned is a number beside it. A filed paper has a kind, a title,
//! where its original lies and who sees it. It is replaced by a newer version, or struck, and never
//! taken away. What joins papers with contacts and the pile itself is in `across/papers`.

mod actions;
pub mod alike;
pub mod form;
pub mod kind;
pub mod lapse;
pub mod model;
mod moves;
pub mod page;
pub mod page_store;
pub mod proposals;
mod serve;
pub mod store;
pub mod text;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/papers/{paper}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route(&step("replace"), get(actions::replacing).post(actions::replace))
        .route(&step("stands-again"), get(actions::standing_again).post(actions::stand_again))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
        .route(&step("pages/{page}"), get(serve::page))
        .route(&step("pages/{page}/turn"), post(moves::turn))
        .route(&step("pages/{page}/earlier"), post(moves::earlier))
        .route(&step("pages/{page}/later"), post(moves::later))
        .route(&step("pages/{page}/split-off"), post(moves::split_off))
}
