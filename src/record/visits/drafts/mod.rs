//! Notes that are being typed: kept on the server as they stand, each for the one member who types.

pub mod model;
pub mod store;
