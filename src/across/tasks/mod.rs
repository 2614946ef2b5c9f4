//! Tasks, beside the names of the members and of what they are about: the board, one task, and
//! what is done to it.
//!
//! The board has what nobody has in front, then what is taken, what waits, and what was done in
//! the last two weeks; everything is moved by a press. The tasks themselves are `family/tasks`.

mod act;
mod actions;
mod board;
mod course;
mod edit;
mod items;
pub mod leaning;
mod needs;
mod pages;
pub mod rows;
pub mod seen;

pub use needs::needs;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/tasks/{task}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/tasks", get(board::show))
        .route("/p/{person}/tasks/add", get(edit::blank).post(edit::add))
        .route("/p/{person}/tasks/closed", get(pages::closed))
        .route("/p/{person}/tasks/about/{kind}/{item}", get(pages::about))
        .route(each, get(pages::show))
        .route(&step("photo"), get(pages::photo))
        .route(&step("edit"), get(edit::edit).post(edit::save))
        .route(&step("take"), get(actions::taking).post(actions::take))
        .route(&step("give-back"), get(actions::giving_back).post(actions::give_back))
        .route(&step("offer"), get(actions::offering).post(actions::offer))
        .route(&step("withdraw"), get(actions::withdrawing).post(actions::withdraw))
        .route(&step("accept"), get(actions::accepting).post(actions::accept))
        .route(&step("decline"), get(actions::declining).post(actions::decline))
        .route(&step("wait"), get(course::waiting).post(course::wait))
        .route(&step("go-on"), get(course::going_on).post(course::go_on))
        .route(&step("put-off"), get(course::putting_off).post(course::put_off))
        .route(&step("back"), get(course::bringing_forward).post(course::bring_forward))
        .route(&step("finish"), get(course::finishing).post(course::finish))
        .route(&step("let-go"), get(course::letting_go).post(course::let_go))
        .route(&step("open-again"), get(course::opening_again).post(course::open_again))
        .route(&step("strike"), get(course::striking).post(course::strike))
        .route(&step("bring-back"), get(course::bringing_back).post(course::bring_back))
}
