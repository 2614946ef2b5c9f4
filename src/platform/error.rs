//! What can go wrong with a request, and what the reader is told.
//!
//! A body never shows internals: the cause goes to the log, once, with the request's id. What a
//! form got wrong is not answered here: `web::ask_again` shows the page again.

use super::web::{form::FormErrors, refusal};
use axum::{
    http::StatusCode,
    response::{IntoResponse, Response},
};

pub type Result<T> = std::result::Result<T, Error>;

#[derive(Debug)]
pub enum Error {
    /// No such thing, or not for this reader: the two look the same.
    NotFound,
    /// Seen, but not changeable in this role.
    Forbidden,
    SignedOut,
    /// What was typed cannot be kept: the page is shown again with it.
    Invalid(FormErrors),
    /// The database refused a value: which constraint, by the end of its message.
    Refused(String),
    /// Someone else changed it meanwhile: both versions are shown.
    Stale,
    /// This form was kept already: answered as it was then.
    Repeated,
    /// A link that was used, or is too old.
    Spent,
    /// Something that is not there (any more), in words of its own.
    Told {
        status: StatusCode,
        head: &'static str,
        says: &'static str,
    },
    TooLarge,
    /// Too many tries; after so many seconds again.
    Wait(u64),
    Busy,
    /// The request came from another site's page.
    Foreign,
    /// The write or view was used after it ended: a mistake in the program.
    Closed,
    Internal(Box<dyn std::error::Error + Send + Sync>),
}

impl std::fmt::Display for Error {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{self:?}")
    }
}

impl std::error::Error for Error {}

impl From<sqlx::Error> for Error {
    fn from(e: sqlx::Error) -> Self {
        match &e {
            sqlx::Error::PoolTimedOut => Error::Busy,
            sqlx::Error::Database(cause)
                if cause.is_unique_violation() || cause.is_check_violation() =>
            {
                Error::Refused(cause.message().to_owned())
            }
            // SQLITE_BUSY, SQLITE_FULL and their extended codes: nothing was kept, try again.
            sqlx::Error::Database(cause)
                if cause
                    .code()
                    .and_then(|it| it.parse::<i32>().ok())
                    .is_some_and(|it| matches!(it & 0xff, 5 | 13)) =>
            {
                tracing::error!(error = %e, "the database is busy or the disk is full");
                Error::Busy
            }
            _ => Error::Internal(e.into()),
        }
    }
}

impl From<FormErrors> for Error {
    fn from(errors: FormErrors) -> Self {
        Error::Invalid(errors)
    }
}

impl IntoResponse for Error {
    fn into_response(self) -> Response {
        match self {
            Error::Invalid(errors) => refusal::ask_again(errors),
            Error::Refused(constraint) => refusal::constraint(constraint),
            Error::Stale => refusal::stale(),
            Error::Repeated => refusal::repeated(),
            Error::SignedOut => refusal::signed_out(),
            Error::NotFound => refusal::page(StatusCode::NOT_FOUND),
            Error::Forbidden => refusal::page(StatusCode::FORBIDDEN),
            Error::Spent => refusal::page(StatusCode::GONE),
            Error::Told { status, head, says } => refusal::sorry(status, head, says),
            Error::Foreign => refusal::foreign(),
            Error::TooLarge => refusal::page(StatusCode::PAYLOAD_TOO_LARGE),
            Error::Wait(seconds) => refusal::wait(seconds),
            Error::Busy => refusal::page(StatusCode::SERVICE_UNAVAILABLE),
            Error::Closed => refusal::internal("used after it ended".into()),
            Error::Internal(cause) => refusal::internal(cause),
        }
    }
}
