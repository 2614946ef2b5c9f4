//! What is mailed to a member: which kinds of reminders about which record, how long before, and in
//! which hours nothing is.
//!
//! Where she has chosen nothing, what is usual for her role holds. The choices are hers alone:
//! nobody else sees them. A link in every reminder stops its kind without a sign-in, by a button.

pub mod form;
pub mod kind;
pub mod model;
mod pages;
pub mod quiet;
mod stop;
pub mod store;
mod test_mail;

use crate::platform::house::House;
use axum::{Router, routing::get};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/me/mail", get(pages::show))
        .route("/me/mail/quiet", get(pages::quieting).post(pages::keep_quiet))
        .route("/me/mail/test", get(test_mail::form).post(test_mail::send))
        .route("/me/mail/{person}", get(pages::choosing).post(pages::choose))
        .route("/mail/stop/{token}", get(stop::form).post(stop::stop))
}
