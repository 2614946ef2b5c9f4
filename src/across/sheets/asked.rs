//! What a sheet is asked for by its address: read from the query, and written into one again.

use crate::platform::error::{Error, Result};
use std::str::FromStr;

/// An id, where one is named; what is none leads nowhere.
pub fn id<I: FromStr>(typed: &str) -> Result<Option<I>> {
    match typed {
        "" => Ok(None),
        typed => typed.parse().map(Some).map_err(|_| Error::NotFound),
    }
}

/// The same, as an address asks it: what is empty is left out.
pub fn query<const N: usize>(pairs: [(&str, &str); N]) -> String {
    let said = pairs.into_iter().filter(|(_, value)| !value.is_empty());
    let said = said.map(|(name, value)| format!("{name}={value}"));
    said.collect::<Vec<_>>().join("&")
}
