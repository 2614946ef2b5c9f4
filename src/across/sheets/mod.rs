//! Sheets: one page of the record for one audience, the same on screen and on paper.
//!
//! The facts of a sheet are gathered once; the screen and the press both show them, in the same
//! order with the same words. Each print leaves a row and an entry in the history; a print that
//! cannot be noted (a full disk) is printed all the same, and says so.

mod emergency;
mod pages;
pub mod print;
pub mod store;
mod usual;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/sheets", get(pages::list))
        .route("/p/{person}/sheets/emergency", get(pages::emergency))
        .route("/p/{person}/sheets/emergency/print", post(pages::print_emergency))
}
