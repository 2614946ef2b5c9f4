//! Where it stands what each carries.

use super::{Address, record};
use crate::base::ids::CarriedId;

pub fn carried() -> Address {
    record("/carried")
}

/// One entry.
pub fn carried_entry(id: impl Into<CarriedId>) -> Address {
    let id = id.into();
    record(format!("/carried/{id}"))
}
