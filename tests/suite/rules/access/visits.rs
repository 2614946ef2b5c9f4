//! Visits: the notes, what is being typed, the questions for one clinician in their order.

use super::Row;

#[rustfmt::skip]
pub const TABLE: &[Row] = &[
    ("GET",  "/p/{person}/questions/with/{contact}",      "yyyyyns"),
    ("GET",  "/p/{person}/questions/with/{contact}/starters", "yyyffns"),
    ("POST", "/p/{person}/questions/with/{contact}/starters", "yyyffns"),
    ("POST", "/p/{person}/questions/{question}/with/{contact}/earlier", "yyyffns"),
    ("POST", "/p/{person}/questions/{question}/with/{contact}/later", "yyyffns"),
    ("GET",  "/p/{person}/questions/for/{appointment}/{day}", "yyyyyns"),
    ("GET",  "/p/{person}/questions/for/{appointment}/{day}/starters", "yyyffns"),
    ("POST", "/p/{person}/questions/for/{appointment}/{day}/starters", "yyyffns"),
    ("POST", "/p/{person}/questions/{question}/for/{appointment}/{day}/earlier", "yyyffns"),
    ("POST", "/p/{person}/questions/{question}/for/{appointment}/{day}/later", "yyyffns"),
    ("GET",  "/p/{person}/visits",                        "yyyyyns"),
    ("GET",  "/p/{person}/visits/add",                    "yyyffns"),
    ("POST", "/p/{person}/visits/add",                    "yyyffns"),
    ("GET",  "/p/{person}/visits/of/{appointment}/{day}", "yyyffns"),
    ("POST", "/p/{person}/visits/of/{appointment}/{day}", "yyyffns"),
    ("POST", "/p/{person}/visits/typed",                  "yyyffns"),
    ("POST", "/p/{person}/visits/typed/{appointment}/{day}", "yyyffns"),
    // Ines is typing it: to the others it is not there.
    ("GET",  "/p/{person}/visits/drafts/{draft}",         "nynffns"),
    ("GET",  "/p/{person}/visits/drafts/{draft}/throw-away", "nynffns"),
    ("POST", "/p/{person}/visits/drafts/{draft}/throw-away", "nynffns"),
    ("GET",  "/p/{person}/visits/{visit}",                "yyyyyns"),
    ("GET",  "/p/{person}/visits/{visit}/edit",           "yyyffns"),
    ("POST", "/p/{person}/visits/{visit}/edit",           "yyyffns"),
    ("GET",  "/p/{person}/visits/{visit}/strike",         "yyyffns"),
    ("POST", "/p/{person}/visits/{visit}/strike",         "yyyffns"),
    ("GET",  "/p/{person}/visits/{visit}/bring-back",     "yyyffns"),
    ("POST", "/p/{person}/visits/{visit}/bring-back",     "yyyffns"),
    // Nobody was asked to read it.
    ("POST", "/p/{person}/visits/{visit}/read",           "nnnnnns"),
];
