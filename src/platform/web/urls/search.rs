//! Where everything is found again.

use super::{Address, record};

pub fn search() -> Address {
    record("/search")
}

/// A paper of which a page was found.
pub fn paper_found(paper: i64) -> Address {
    record(format!("/papers/{paper}"))
}
