//! Visits: the notes, what is being typed, the questions for one clinician in their order.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/questions/with/{contact}",      "yyyyyns"),
    ("GET",  "/p/{person}/questions/with/{contact}/starters", "yyyffns"),
    ("POST", "/p/{person}/questions/with/{contact}/starters", "yyyffns"),
    ("POST", "/p/{person}/questions/{question}/with/{contact}/earlier", "yyyffns"),
    ("POST", "/p/{person}/questions/{question}/with/{contact}/later", "yyyffns"),
];
