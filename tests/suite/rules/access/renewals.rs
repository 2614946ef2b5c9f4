//! What every role is answered of what is to be renewed, and of papers that are not there yet: they are
//! in the area of papers, which an aide and a reader do not see. The one there is is the family's own.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/renewals",                              "yyynnns"),
    ("GET",  "/p/{person}/renewals/add",                          "yyynnns"),
    ("POST", "/p/{person}/renewals/add",                          "yyynnns"),
    ("GET",  "/p/{person}/renewals/missing",                      "yyynnns"),
    ("GET",  "/p/{person}/renewals/missing/{expected}",           "yyynnns"),
    ("POST", "/p/{person}/renewals/missing/{expected}",           "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}",             "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/edit",        "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/edit",        "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/begin",       "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/begin",       "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/renewed",     "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/renewed",     "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/let-lapse",   "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/let-lapse",   "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/again",       "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/again",       "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/strike",      "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/strike",      "yyynnns"),
    ("GET",  "/p/{person}/renewals/{about}/{number}/bring-back",  "yyynnns"),
    ("POST", "/p/{person}/renewals/{about}/{number}/bring-back",  "yyynnns"),
];
