//! Members: those who sign in, their own settings, their `places` in a record,
//! `invitations`, their `mail_choices`, and the `answers` of the person to what they ask her about her record.
//!
//! Signing in is slowed after wrong tries, never closed. A new password is chosen by a mailed
//! link or one made at the command line, never by another member, and the member is told.

pub mod answers;
pub mod form;
pub mod invitations;
pub mod mail_choices;
pub mod me;
pub mod model;
pub mod pages;
pub mod places;
pub mod reset;
pub mod sign_in;
pub mod store;

use crate::platform::{house::House, web::form::Constraint};
use axum::{
    Router,
    routing::{get, post},
};

pub const CONSTRAINTS: [Constraint; 1] = [Constraint {
    ends: "member.email",
    field: "email",
    says: "Someone with this address signs in here already.",
}];

pub fn routes() -> Router<House> {
    Router::new()
        .route("/", get(pages::records))
        .route("/sign-in", get(sign_in::form).post(sign_in::enter))
        .route("/sign-in/demo/{token}", get(sign_in::enter_demo))
        .route("/sign-in/forgot", get(reset::forgotten).post(reset::forgot))
        .route("/sign-in/reset/{token}", get(reset::form).post(reset::choose))
        .route("/sign-out", post(sign_in::leave))
        .route("/me", get(me::show))
        .route("/me/edit", get(me::edit).post(me::save))
        .route("/me/password", get(me::password).post(me::change_password))
        .route("/me/devices/{session}/end", post(me::end_session))
        .route("/p/{person}/family", get(pages::family))
        .merge(answers::routes())
        .merge(invitations::routes())
        .merge(mail_choices::routes())
        .merge(places::routes())
}
