//! `At(id)`: the id of a thing in the address, by the name its type has there.

use crate::base::ids::PathId;
use crate::platform::error::{Error, Result};
use axum::{
    extract::{FromRequestParts, RawPathParams},
    http::request::Parts,
};

pub struct At<I>(pub I);

impl<I: PathId, S: Send + Sync> FromRequestParts<S> for At<I> {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self> {
        text(parts, state, I::PARAM).await?.parse().map(At).map_err(|_| Error::NotFound)
    }
}

/// The text of one parameter of the route; a route without it is "not found".
pub async fn text<S: Send + Sync>(parts: &mut Parts, state: &S, name: &str) -> Result<String> {
    let params = RawPathParams::from_request_parts(parts, state).await;
    let params = params.map_err(|_| Error::NotFound)?;
    let found = params.iter().find(|(key, _)| *key == name);
    found.map(|(_, value)| value.to_owned()).ok_or(Error::NotFound)
}
