//! People: the person cared for, and what stands at the top of every sheet.
//!
//! Who she is, what someone who meets her must know (language, hearing, vision, mobility), which
//! numbers to call, and the paper her sheets are printed on. A check says who compared it with
//! what, and when; an edit takes the check off. After a death every page says when.

mod death;
pub mod first;
pub mod form;
pub mod mail;
pub mod model;
mod pages;
pub mod paper;
pub mod store;

use crate::platform::{house::House, web::form::Constraint};
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}", get(pages::show))
        .route("/p/{person}/edit", get(pages::edit).post(pages::save))
        .route("/p/{person}/check", get(pages::checking).post(pages::check))
        .route("/p/{person}/mail", get(mail::choosing).post(mail::choose))
        .route("/p/{person}/died", get(death::pages::entering).post(death::pages::enter))
        .route(
            "/p/{person}/died/take-back",
            get(death::pages::taking_back).post(death::pages::take_back),
        )
}

/// What the database may refuse that a form can hold: a field of blanks that cannot be seen.
pub const CONSTRAINTS: [Constraint; 1] = [Constraint {
    ends: "first_complete",
    field: "first_whom",
    says: "Whom to phone first needs the name, the number and who said so, or none of them.",
}];
