//! The addresses of what is to be renewed, and of what papers are missing.

use super::{Address, record};
use crate::base::ids::RenewalId;

pub fn renewals() -> Address {
    record("/renewals")
}

/// An entry by its own number.
pub fn renewal(id: impl Into<RenewalId>) -> Address {
    let id = id.into();
    record(format!("/renewals/own/{id}"))
}

/// Something that is kept elsewhere, by its kind and number.
pub fn renewal_of(kind: &str, item: i64) -> Address {
    record(format!("/renewals/{kind}/{item}"))
}

/// Which papers are not there yet.
pub fn missing_papers() -> Address {
    renewals().and("missing")
}

/// What was said of one that is expected, or of what decides it.
pub fn missing_paper(name: &str) -> Address {
    missing_papers().and(name)
}
