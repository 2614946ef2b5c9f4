//! Two records disagree: what is written down in one place and not so in another, both with where
//! they come from, and no verdict. A press makes it a question.
//!
//! That a substance is not borne and yet taken is also said at the moment at which a save makes it
//! so (`at_once`): whoever typed it is shown both before anything else.

mod at_once;
mod pages;
mod question;
mod read;
mod rows;

pub use at_once::at_once;
pub use question::unasked;
pub use rows::Written;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/disagreements", get(pages::list))
        .route("/p/{person}/disagreements/as-question", post(question::make))
}
