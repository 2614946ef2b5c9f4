//! The answers to what cannot be done: marks for `ask_again`, and one plain page for the rest.

use super::form::FormErrors;
use askama::Template;
use axum::{
    http::{HeaderValue, StatusCode, header},
    response::{Html, IntoResponse, Response},
};

/// Why a form is shown again, or answered as before: read by `ask_again`.
#[derive(Clone)]
pub(super) enum Refusal {
    Errors(FormErrors),
    Constraint(String),
    Stale,
    Repeated,
}

/// What a page says that cannot be shown: read by `layout`, which knows the base path.
#[derive(Clone)]
pub struct Sorry {
    pub status: StatusCode,
    pub head: &'static str,
    pub says: String,
}

/// The page that says sorry.
#[derive(Template)]
#[template(path = "sorry.html")]
struct SorryPage<'a> {
    sorry: &'a Sorry,
    base: &'a str,
    stylesheet: String,
}

pub fn ask_again(errors: FormErrors) -> Response {
    marked(Refusal::Errors(errors), StatusCode::UNPROCESSABLE_ENTITY)
}

pub fn constraint(message: String) -> Response {
    marked(Refusal::Constraint(message), StatusCode::UNPROCESSABLE_ENTITY)
}

pub fn stale() -> Response {
    marked(Refusal::Stale, StatusCode::CONFLICT)
}

pub fn repeated() -> Response {
    marked(Refusal::Repeated, StatusCode::CONFLICT)
}

fn marked(refusal: Refusal, status: StatusCode) -> Response {
    let mut response = status.into_response();
    response.extensions_mut().insert(refusal);
    response
}

/// Signed out: `guard::finish` makes the redirect, and remembers where the reader was going.
#[derive(Clone)]
pub struct SignedOut;

pub fn signed_out() -> Response {
    let mut response = StatusCode::UNAUTHORIZED.into_response();
    response.extensions_mut().insert(SignedOut);
    response
}

pub fn page(status: StatusCode) -> Response {
    let (head, says) = match status {
        StatusCode::NOT_FOUND => (
            "Not found",
            "There is nothing at this address, or it is not for you to see. Check the address, or go back to the records you share.",
        ),
        StatusCode::FORBIDDEN => (
            "Not yours to change",
            "You may see this, but your role in this record does not change it. Nothing was changed. Ask a steward of the record.",
        ),
        StatusCode::PAYLOAD_TOO_LARGE => (
            "Too much at once",
            "This was longer than a form may be, so nothing was kept. Go back: your browser may still hold what you typed.",
        ),
        StatusCode::GONE => (
            "This link no longer works",
            "It was used already, or it is too old. If you have chosen a password, sign in with it. Otherwise ask the one who runs the server for a new link.",
        ),
        StatusCode::METHOD_NOT_ALLOWED => {
            ("Not like this", "This address cannot be used in this way. Nothing was changed.")
        }
        _ => (
            "Busy just now",
            "Nothing was kept. Go back and send it again in a moment. If it stays like this, the one who runs the server should look whether the disk is full.",
        ),
    };
    sorry(status, head, says)
}

pub fn wait(seconds: u64) -> Response {
    let says = format!(
        "There were too many tries. Wait {} and try again, or ask for a new password by mail.",
        if seconds <= 90 {
            format!("{seconds} seconds")
        } else {
            format!("{} minutes", seconds.div_ceil(60))
        }
    );
    let mut response = sorry(StatusCode::TOO_MANY_REQUESTS, "Wait a little", says);
    response.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from(seconds));
    response
}

pub fn foreign() -> Response {
    let says = "This form was sent from another site's page, so nothing was done. Open the page here and send it again.";
    sorry(StatusCode::FORBIDDEN, "Not from here", says)
}

pub fn internal(cause: Box<dyn std::error::Error + Send + Sync>) -> Response {
    tracing::error!(error = %cause, "a request failed");
    let says = "Something went wrong in the program, and nothing was kept. What happened stands in the server's log.";
    sorry(StatusCode::INTERNAL_SERVER_ERROR, "Something went wrong", says)
}

pub fn sorry(status: StatusCode, head: &'static str, says: impl Into<String>) -> Response {
    let mut response = status.into_response();
    response.extensions_mut().insert(Sorry { status, head, says: says.into() });
    response
}

/// The page for a [`Sorry`].
pub fn render(sorry: &Sorry, base: &str) -> Response {
    let page = SorryPage { sorry, base, stylesheet: super::assets::stylesheet() };
    match page.render() {
        Ok(html) => (sorry.status, Html(html)).into_response(),
        Err(_) => sorry.status.into_response(),
    }
}
