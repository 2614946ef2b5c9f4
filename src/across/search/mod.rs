//! Search: every paper and every fact of a record is found again by its words.
//!
//! What can be found is listed in `kinds`: one function for each kind, which reads what the reader
//! sees through the kind's own store. That lies on her shelf (`shelf`, `platform/words`). The words
//! of the pages of papers have an index in the database (`store`), and of what it finds only the
//! pages on her shelf count. `find` puts both together, `forgive` helps where a word was mistyped.
//! What was struck is not found: it stands in the history.

mod asked;
pub mod by_words;
mod find;
mod forgive;
pub mod kinds;
mod leaves;
mod pages;
mod shelf;
mod shown;
mod store;
mod words;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new().route("/p/{person}/search", get(pages::show))
}
