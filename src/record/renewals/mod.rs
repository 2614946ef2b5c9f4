//! What is to be renewed, and what papers are expected to be there.
//!
//! Two dated files are compiled in, each line with its source or the words that there is none:
//! `rules.json` (what is known of renewing a kind of paper) and `expected.json` (what is expected for
//! whom, and what follows where it is missing). The latest day to begin is reckoned from the last day,
//! what the issuer needs and what the form takes; where nothing is known, the issuer says. Rows that
//! lean on other things, and all pages, are in `across/renewals`.

pub mod expected;
pub mod form;
pub mod known;
pub mod model;
pub mod reckon;
pub mod rule;
pub mod store;
pub mod word;
pub mod word_store;
