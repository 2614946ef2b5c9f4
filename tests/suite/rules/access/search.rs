//! What every role is answered of the search: whoever sees the essentials may ask, and finds what her
//! own place reaches. What she finds is in the journeys.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/search",                        "yyyyyns"),
];
