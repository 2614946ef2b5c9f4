//! The turns of the medicines beside the contacts and the questions: what changed, who has been
//! told and by whom, what a clinician has not been told yet, who asks when to resume; and the list
//! as it stood on a day that is past.

mod as_of;
mod ask;
mod form;
mod pages;
mod tell;
pub mod told;

pub use pages::shown;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/changes/{turn}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/changes", get(pages::list))
        .route(each, get(pages::show))
        .route(&step("tell"), get(tell::telling).post(tell::tell))
        .route(&step("ask"), get(ask::asking).post(ask::ask))
        .route("/p/{person}/changes/tell/{contact}", get(tell::untold).post(tell::tell_all))
        .route("/p/{person}/changes/told/{telling}/strike", get(tell::striking).post(tell::strike))
        .route("/p/{person}/medicines/as-of", get(as_of::list))
}
