//! Invitations: a place in a record, offered by a link.
//!
//! The link works once, for 7 days, until it is taken back, and only as long as the one who
//! invited still decides here. Its token is shown once; the database keeps the SHA-256.

pub mod form;
pub mod join;
pub mod model;
pub mod pages;
pub mod store;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/family/invite", get(pages::inviting).post(pages::invite))
        .route("/p/{person}/family/invitations/{invitation}/take-back", post(pages::take_back))
        .route("/join/{token}", get(join::show).post(join::join))
        .route("/join/{token}/accept", get(join::accepting).post(join::accept))
}
