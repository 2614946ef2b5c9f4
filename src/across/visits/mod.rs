//! The notes of visits beside everything that comes of one: answers, changes of medicines, tests and
//! follow-ups as tasks, the next appointment, who should read it.
//!
//! One press saves all of it in one write, or nothing. Until then the form is kept on the server as it
//! is typed (`draft`): with the script a few seconds after typing pauses, without it by a press.

mod contacts;
mod draft;
mod edit;
mod fields;
mod follow;
mod form;
mod list;
pub mod meeting;
pub mod needs;
mod rows;
mod save;
mod show;
mod turned;
mod write;

use crate::platform::house::House;
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/visits/{visit}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/visits", get(list::list))
        .route("/p/{person}/visits/add", get(write::blank).post(save::add))
        .route("/p/{person}/visits/of/{appointment}/{day}", get(write::of).post(save::add_of))
        .route("/p/{person}/visits/typed", post(draft::typed))
        .route("/p/{person}/visits/typed/{appointment}/{day}", post(draft::typed_of))
        .route("/p/{person}/visits/drafts/{draft}", get(write::again))
        .route(
            "/p/{person}/visits/drafts/{draft}/throw-away",
            get(draft::throwing).post(draft::throw_away),
        )
        .route(each, get(show::show))
        .route(&step("edit"), get(edit::edit).post(edit::save))
}
