//! Kinsheaf: one care record that a family shares.
//!
//! In reading order: `base` is the vocabulary, `platform` the plumbing; `record` and `family`
//! hold the capabilities, each owning its tables; `across` joins them; `app` wires it all.
//! Imports go that way only.

pub mod across;
pub mod app;
pub mod base;
pub mod cli;
pub mod family;
pub mod platform;
pub mod record;
