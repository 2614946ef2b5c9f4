//! The routes of what each carries: not there for a reader, and of an aide only her own.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/carried", "yyyynns"),
    ("GET",  "/p/{person}/carried/add", "yyyynns"),
    ("POST", "/p/{person}/carried/add", "yyyynns"),
    ("GET",  "/p/{person}/carried/wish", "yyyynns"),
    ("POST", "/p/{person}/carried/wish", "yyyynns"),
    ("GET",  "/p/{person}/carried/wish-of-all", "yyffnns"),
    ("POST", "/p/{person}/carried/wish-of-all", "yyffnns"),
    ("GET",  "/p/{person}/carried/{carried}", "yyynnns"),
    ("GET",  "/p/{person}/carried/{carried}/edit", "fyfnnns"),
    ("POST", "/p/{person}/carried/{carried}/edit", "fyfnnns"),
    ("GET",  "/p/{person}/carried/{carried}/strike", "fyfnnns"),
    ("POST", "/p/{person}/carried/{carried}/strike", "fyfnnns"),
    ("GET",  "/p/{person}/carried/{carried}/bring-back", "fyfnnns"),
    ("POST", "/p/{person}/carried/{carried}/bring-back", "fyfnnns"),
];
