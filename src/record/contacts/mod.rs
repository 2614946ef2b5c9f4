//! Contacts: whom to phone, in calling order.
//!
//! The order is the family's own; a new contact comes last, and one that was struck keeps its
//! place for when it is brought back. A check says who compared the entry with what, and when;
//! an edit takes the check off, a move in the order does not. Who answers now is told by the hours,
//! and stands first on the screen; the order stays what it is. Each can be saved in a phone.

mod actions;
pub mod answering;
mod card;
mod cards;
pub mod form;
pub mod hours;
pub mod kind;
pub mod model;
mod order;
mod pages;
pub mod store;

use crate::platform::{house::House, web::form::Constraint};
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    let each = "/p/{person}/contacts/{contact}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/contacts", get(pages::list))
        .route("/p/{person}/contacts/add", get(pages::blank).post(pages::add))
        .route("/p/{person}/contacts/check", get(actions::checking_all).post(actions::check_all))
        .route("/p/{person}/contacts/order", get(order::show))
        .route("/p/{person}/contacts/cards.vcf", get(cards::all))
        .route(each, get(pages::show))
        .route(&step("edit"), get(pages::edit).post(pages::save))
        .route(&step("card.vcf"), get(cards::one))
        .route(&step("check"), get(actions::checking).post(actions::check))
        .route(&step("strike"), get(actions::striking).post(actions::strike))
        .route(&step("bring-back"), get(actions::bringing_back).post(actions::bring_back))
        .route(&step("earlier"), post(order::earlier))
        .route(&step("later"), post(order::later))
}

/// What the database may refuse that a form can hold: an address of blanks that cannot be seen.
pub const CONSTRAINTS: [Constraint; 1] =
    [Constraint { ends: "contact_reachable", field: "phone", says: form::UNREACHABLE }];
