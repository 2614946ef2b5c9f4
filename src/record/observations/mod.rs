//! Noticed: plain observations of a day, in the words of whoever saw it: what was seen, and no
//! opinion. No score, no counting by observer, nothing of it in mail.
//!
//! | an observation | the person | who noticed it | others who see the log | the sheet of its visit |
//! |---|---|---|---|---|
//! | as it was noticed | sees it | sees it | see it | has it, if ticked |
//! | hidden from a member | sees it | sees it, unless hidden from her | all but that member | has it, if the one who prints sees it |
//! | for the clinician only | sees it | sees it | it is not there | has it, if the person or who noticed it prints |
//! | struck | by its history | by its history | as above, by its history | never has it |
//!
//! Where it is not there, nothing of it is: no title, no number, no line of the history. Only who
//! noticed it puts the words right; only the person answers, or those who decide for one who does
//! not sign in. `store` holds the table, `tests/suite/journeys/what_is_noticed.rs` proves it.

mod actions;
pub mod fall;
pub mod form;
pub mod model;
mod pages;
pub mod store;
pub mod subject;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/noticed/{observation}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/noticed/add", get(pages::blank).post(pages::add))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("answer"), get(pages::answering).post(pages::answer))
        .route(&step("clinician"), get(actions::keeping).post(actions::keep_for_clinician))
        .route(&step("family"), get(actions::showing).post(actions::show_to_family))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
}
