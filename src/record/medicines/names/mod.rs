//! Names of medicines, from a list that the one who runs the server may bring in: to complete what
//! is typed, and to propose that two names are of one ingredient. Nothing is decided by them, and
//! everything works without them.
//!
//! The list is RxNorm's RXNCONSO.RRF, of the US National Library of Medicine. It is read line by
//! line (`rrf`), kept in two tables that belong to no record, and never sent anywhere.

mod pages;
pub mod rrf;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/names", get(pages::complete))
}
