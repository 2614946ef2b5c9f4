//! What every role is answered of decisions: an aide and a reader see the clinical pages, and none
//! of these. The one there is was decided.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/decisions",                         "yyynnns"),
    ("GET",  "/p/{person}/decisions/add",                     "yyynnns"),
    ("POST", "/p/{person}/decisions/add",                     "yyynnns"),
    ("GET",  "/p/{person}/decisions/meeting",                 "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}",              "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}/edit",         "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/edit",         "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}/decide",       "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/decide",       "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}/look-again",   "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/look-again",   "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}/replace",      "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/replace",      "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}/withdraw",     "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/withdraw",     "yyynnns"),
    ("GET",  "/p/{person}/decisions/{decision}/bring-back",   "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/bring-back",   "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/earlier",      "yyynnns"),
    ("POST", "/p/{person}/decisions/{decision}/later",        "yyynnns"),
];
