//! The answer to a POST: where to go on, and one line that says what was done.
//!
//! Made only from [`Committed`], so "Stopped" is never said of
//! something that was not kept. `ask_again` turns it into the redirect.

use super::urls::Address;
use crate::base::ids::PersonId;
use crate::platform::{db::Committed, error::Result};
use axum::{
    http::StatusCode,
    response::{IntoResponse, Response},
};
use axum_extra::extract::cookie::Cookie;

#[derive(Clone, Debug)]
pub struct Answer {
    pub(super) to: Address,
    pub(super) person: PersonId,
    pub(super) saying: Option<String>,
    pub(super) cookies: Vec<Cookie<'static>>,
}

impl Committed {
    pub fn then(self, to: Address) -> Answer {
        Answer { to, person: self.person, saying: None, cookies: Vec::new() }
    }
}

impl Answer {
    pub(in crate::platform) fn with(mut self, cookie: Cookie<'static>) -> Answer {
        self.cookies.push(cookie);
        self
    }

    /// Elsewhere, where a save makes something so that must be read first.
    pub fn leads_to(&mut self, to: Address) {
        self.to = to;
    }

    /// One line at the top of the next page.
    pub fn saying(mut self, line: impl Into<String>) -> Result<Answer> {
        self.saying = Some(line.into());
        Ok(self)
    }
}

impl IntoResponse for Answer {
    fn into_response(self) -> Response {
        let mut response = StatusCode::SEE_OTHER.into_response();
        response.extensions_mut().insert(self);
        response
    }
}
