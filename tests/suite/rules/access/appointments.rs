//! The routes of the appointments. An aide may go along herself, and says nothing of what she does not go along to.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/appointments", "yyyyyns"),
    ("GET",  "/p/{person}/appointments/past", "yyyyyns"),
    ("GET",  "/p/{person}/appointments/add", "yyyffns"),
    ("POST", "/p/{person}/appointments/add", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}", "yyyyyns"),
    ("GET",  "/p/{person}/appointments/{appointment}/edit", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/edit", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/cancel", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/cancel", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/strike", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/strike", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/bring-back", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}", "yyyyyns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/go", "fyyyfns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/go", "fyyyfns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/escort", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/escort", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/move", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/move", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/stands", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/stands", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/cancel", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/cancel", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/settle", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/settle", "yyyffns"),
    ("GET",  "/p/{person}/appointments/{appointment}/on/{day}/later", "yyyffns"),
    ("POST", "/p/{person}/appointments/{appointment}/on/{day}/later", "yyyffns"),
];
