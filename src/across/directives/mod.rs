//! The pages of the directives: which stand, which two disagree, what is to be looked at again, who
//! has a copy. They join the papers (`record/directives`) with the contacts and the members.
//!
//! Who is named in a paper is one thing, whose place reaches these pages another: both are shown,
//! and neither is derived from the other.

mod acts;
mod answers;
mod copies;
mod edit;
mod events;
pub mod ground;
mod list;
pub mod needs;
mod reach;
mod show;
mod signing;
mod titles;

pub use titles::titles;

use crate::platform::{
    auth::{
        area::Directives,
        grant::{Change, Grant, See},
    },
    house::House,
};
use axum::{
    Router,
    routing::{get, post},
};

pub type Seeing = Grant<See<Directives>>;
pub type Changing = Grant<Change<Directives>>;

pub fn routes() -> Router<House> {
    let each = "/p/{person}/directives/{directive}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/directives", get(list::list))
        .route("/p/{person}/directives/add", get(edit::blank).post(edit::add))
        .route("/p/{person}/directives/answer", get(answers::asking).post(answers::answer))
        .route("/p/{person}/directives/signing", get(signing::list))
        .route(each, get(show::show))
        .route(&step("edit"), get(edit::edit).post(edit::save))
        .route(&step("sign"), get(acts::signing).post(acts::sign))
        .route(&step("void"), get(acts::voiding).post(acts::void))
        .route(&step("supersede"), get(acts::superseding).post(acts::supersede))
        .route(&step("stands"), get(acts::standing).post(acts::stand))
        .route(&step("differs"), get(acts::differing).post(acts::differ))
        .route(&step("review"), get(acts::reviewing).post(acts::review))
        .route(&step("strike"), get(acts::striking).post(acts::strike))
        .route(&step("bring-back"), get(acts::bringing_back).post(acts::bring_back))
        .route(&step("copies/add"), get(copies::giving).post(copies::give))
        .route("/p/{person}/directives/copies/{copy}/told", get(copies::telling).post(copies::tell))
        .route(
            "/p/{person}/directives/copies/{copy}/strike",
            get(copies::striking).post(copies::strike),
        )
        .route("/p/{person}/directives/events", get(events::list))
        .route("/p/{person}/directives/events/add", get(events::blank).post(events::add))
        .route(
            "/p/{person}/directives/events/{event}/strike",
            get(events::striking).post(events::strike),
        )
        .route(
            "/p/{person}/directives/events/{event}/bring-back",
            get(events::bringing_back).post(events::bring_back),
        )
        .route(&step("aside/{event}"), get(events::putting_aside).post(events::put_aside))
        .route(&step("aside/{event}/take-back"), post(events::take_back))
}
