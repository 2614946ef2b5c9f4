//! Papers, in the tray and filed: for an aide and a reader there are none. The one there is was put in
//! and filed by the steward, and is a letter.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/papers",                            "yyynnns"),
    ("GET",  "/p/{person}/papers/tray",                       "yyynnns"),
    ("GET",  "/p/{person}/papers/words",                      "yyynnns"),
    ("GET",  "/p/{person}/papers/tray/add",                   "yyynnns"),
    ("POST", "/p/{person}/papers/tray/add",                   "yyynnns"),
    // Of what comes in pieces each finds her own, under a token that nobody else was told.
    ("POST",   "/p/{person}/papers/tray/sending",             "yyynnns"),
    ("GET",    "/p/{person}/papers/tray/sending/{token}",     "nnnnnns"),
    ("PATCH",  "/p/{person}/papers/tray/sending/{token}",     "nnnnnns"),
    ("DELETE", "/p/{person}/papers/tray/sending/{token}",     "nnnnnns"),
    // What became of a pile is told to the one who sent it.
    ("GET",  "/p/{person}/papers/tray/arrived/{arrival}",     "nynnnns"),
    ("GET",  "/p/{person}/papers/{paper}",                    "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/alike",              "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/alike",              "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/file",               "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/file",               "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/read-again",         "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/join",               "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/join",               "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/replace",            "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/replace",            "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/stands-again",       "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/stands-again",       "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/strike",             "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/strike",             "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/bring-back",         "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/bring-back",         "yyynnns"),
    ("GET",  "/p/{person}/papers/{paper}/pages/{page}",       "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/pages/{page}/turn",  "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/pages/{page}/earlier", "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/pages/{page}/later", "yyynnns"),
    ("POST", "/p/{person}/papers/{paper}/pages/{page}/split-off", "yyynnns"),
];
