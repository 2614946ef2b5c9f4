//! Answers: what the person was asked about her own record, and what she said.
//!
//! The parent owns the record, and many a parent never signs in. So whoever asked her writes down
//! the question, her answer, who asked, how and when; signed in, she writes it down herself. An
//! answer does nothing by itself and unlocks nothing: it leads to the page where it is done, and
//! stands beside what was decided there. Only those who decide, and she, read answers.

pub mod actions;
pub mod ask;
pub mod form;
pub mod model;
pub mod pages;
pub mod starters;
pub mod store;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/family/answers/{answer}";
    let step = |name: &str| format!("{each}/{name}");
    Router::new()
        .route("/p/{person}/family/answers", get(pages::list))
        .route("/p/{person}/family/answers/add", get(ask::asking).post(ask::add))
        .route(each, get(pages::show))
        .route(&step("again"), get(ask::asking_again).post(ask::ask_again))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
        .route(
            "/p/{person}/family/{membership}/asked",
            get(ask::asking_of_place).post(ask::add_of_place),
        )
}
