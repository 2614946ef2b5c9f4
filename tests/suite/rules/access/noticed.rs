//! What every role is answered of what was noticed. The one there is was noticed by the steward; the
//! person signs in, so nobody else speaks for her.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/noticed",                           "yyyyyns"),
    ("GET",  "/p/{person}/noticed/add",                       "yyyyfns"),
    ("POST", "/p/{person}/noticed/add",                       "yyyyfns"),
    ("GET",  "/p/{person}/noticed/{observation}",             "yyyyyns"),
    ("GET",  "/p/{person}/noticed/{observation}/edit",        "fyfffns"),
    ("POST", "/p/{person}/noticed/{observation}/edit",        "fyfffns"),
    ("GET",  "/p/{person}/noticed/{observation}/answer",      "yffffns"),
    ("POST", "/p/{person}/noticed/{observation}/answer",      "yffffns"),
    ("GET",  "/p/{person}/noticed/{observation}/clinician",   "yffffns"),
    ("POST", "/p/{person}/noticed/{observation}/clinician",   "yffffns"),
    ("GET",  "/p/{person}/noticed/{observation}/family",      "yffffns"),
    ("POST", "/p/{person}/noticed/{observation}/family",      "yffffns"),
    ("GET",  "/p/{person}/noticed/{observation}/visit",       "yyyyfns"),
    ("POST", "/p/{person}/noticed/{observation}/visit",       "yyyyfns"),
    ("GET",  "/p/{person}/noticed/{observation}/strike",      "yyfffns"),
    ("POST", "/p/{person}/noticed/{observation}/strike",      "yyfffns"),
    ("GET",  "/p/{person}/noticed/{observation}/bring-back",  "yyfffns"),
    ("POST", "/p/{person}/noticed/{observation}/bring-back",  "yyfffns"),
];
