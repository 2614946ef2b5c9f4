//! Who comes in here at all: those who may change tasks. For whoever may only see them there is
//! nothing here, so she is answered as if it were not there.

use crate::platform::{
    auth::{
        area::Tasks,
        grant::{Change, Grant},
    },
    error::{Error, Result},
    house::House,
};
use axum::{extract::FromRequestParts, http::request::Parts};

pub struct Carrying(pub Grant<Change<Tasks>>);

impl FromRequestParts<House> for Carrying {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, house: &House) -> Result<Self> {
        match Grant::from_request_parts(parts, house).await {
            Err(Error::Forbidden) => Err(Error::NotFound),
            other => other.map(Carrying),
        }
    }
}
