//! Where everything is found again.

use super::{Address, record};

pub fn search() -> Address {
    record("/search")
}
