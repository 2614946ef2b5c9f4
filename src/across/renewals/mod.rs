//! One list of all that is to be renewed, wherever it is kept, by the latest day to begin; and which
//! papers are not there yet.
//!
//! `sources` has a function for each place where something with a last day is kept; another place is a
//! function more. `held` has the same for what is there. What is said of a row (who renews it, until
//! when it was renewed, that it is let lapse) is kept in `record/renewals`.

mod acts;
mod edit;
mod held;
pub mod item;
mod list;
mod missing;
pub mod needs;
mod show;
mod sources;
pub mod titles;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/renewals/{about}/{number}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/renewals", get(list::list))
        .route("/p/{person}/renewals/add", get(edit::blank).post(edit::add))
        .route("/p/{person}/renewals/missing", get(missing::list))
        .route(
            "/p/{person}/renewals/missing/{expected}",
            get(missing::answering).post(missing::answer),
        )
        .route(each, get(show::show))
        .route(&step("edit"), get(edit::edit).post(edit::save))
        .route(&step("begin"), get(acts::beginning).post(acts::begin))
        .route(&step("renewed"), get(acts::renewing).post(acts::renew))
        .route(&step("let-lapse"), get(acts::letting_lapse).post(acts::let_lapse))
        .route(&step("again"), get(acts::standing_again).post(acts::stand_again))
        .route(&step("strike"), get(acts::striking).post(acts::strike))
        .route(&step("bring-back"), get(acts::bringing_back).post(acts::bring_back))
}
