//! Every route and every role, in one table. A route that is not listed fails.
//!
//! Columns: person, steward, relative, aide, reader, a member of another record, nobody.
//! `y` may; `f` sees it but may not change it (403); `n` it is not there (404); `s` sign in first.

use crate::support::{
    Browser, Family,
    family::{CAST, add_member, add_person, place},
    routes,
};
use kinsheaf::platform::auth::area::Role;
use std::collections::BTreeSet;

#[rustfmt::skip]
pub const TABLE: &[(&str, &str, &str)] = &[
    ("GET",  "/",                                         "yyyyyys"),
    ("GET",  "/me",                                       "yyyyyys"),
    ("GET",  "/me/edit",                                  "yyyyyys"),
    ("POST", "/me/edit",                                  "yyyyyys"),
    ("GET",  "/me/password",                              "yyyyyys"),
    ("POST", "/me/password",                              "yyyyyys"),
    ("POST", "/me/devices/{session}/end",                 "nnnnnns"),
    ("GET",  "/sign-in",                                  "yyyyyyy"),
    ("POST", "/sign-in",                                  "yyyyyyy"),
    ("GET",  "/sign-in/forgot",                           "yyyyyyy"),
    ("POST", "/sign-in/forgot",                           "yyyyyyy"),
    ("GET",  "/sign-in/reset/{token}",                    "ggggggg"),
    ("POST", "/sign-in/reset/{token}",                    "ggggggg"),
    ("GET",  "/sign-in/demo/{token}",                     "nnnnnnn"),
    ("GET",  "/setup/{token}",                            "ggggggg"),
    ("POST", "/setup/{token}",                            "ggggggg"),
    ("GET",  "/join/{token}",                             "ggggggg"),
    ("POST", "/join/{token}",                             "ggggggg"),
    ("GET",  "/join/{token}/accept",                      "ggggggs"),
    ("POST", "/join/{token}/accept",                      "ggggggs"),
    ("GET",  "/records/add",                              "yyfffys"),
    ("POST", "/records/add",                              "yyfffys"),
    ("GET",  "/healthz",                                  "yyyyyyy"),
    ("GET",  "/readyz",                                   "yyyyyyy"),
    ("GET",  "/static/{*name}",                           "nnnnnnn"),
    ("GET",  "/manifest.webmanifest",                     "yyyyyyy"),
    ("GET",  "/sw.js",                                    "yyyyyyy"),
    ("GET",  "/offline",                                  "yyyyyyy"),
    ("GET",  "/p/{person}",                               "yyyyyns"),
    ("GET",  "/p/{person}/edit",                          "yyyffns"),
    ("POST", "/p/{person}/edit",                          "yyyffns"),
    ("GET",  "/p/{person}/check",                         "yyyffns"),
    ("POST", "/p/{person}/check",                         "yyyffns"),
    ("GET",  "/p/{person}/died",                          "fyfffns"),
    ("POST", "/p/{person}/died",                          "fyfffns"),
    ("GET",  "/p/{person}/died/take-back",                "yyfffns"),
    ("POST", "/p/{person}/died/take-back",                "yyfffns"),
    ("GET",  "/p/{person}/medicines",                     "yyyyyns"),
    ("GET",  "/p/{person}/medicines/add",                 "yyyffns"),
    ("POST", "/p/{person}/medicines/add",                 "yyyffns"),
    ("GET",  "/p/{person}/medicines/check",               "yyyffns"),
    ("POST", "/p/{person}/medicines/check",               "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}",          "yyyyyns"),
    ("GET",  "/p/{person}/medicines/{medicine}/edit",     "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/edit",     "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/check",    "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/check",    "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/hold",     "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/hold",     "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/stop",     "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/stop",     "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/strike",   "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/strike",   "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/bring-back", "yyyffns"),
    ("GET",  "/p/{person}/medicines/day",                 "yyyyyns"),
    ("GET",  "/p/{person}/medicines/week",                "yyyyyns"),
    ("GET",  "/p/{person}/medicines/{medicine}/steps/add", "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/steps/add", "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/steps/{step}/edit", "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/steps/{step}/edit", "yyyffns"),
    ("GET",  "/p/{person}/medicines/{medicine}/steps/{step}/strike", "yyyffns"),
    ("POST", "/p/{person}/medicines/{medicine}/steps/{step}/strike", "yyyffns"),
    ("GET",  "/p/{person}/allergies", "yyyyyns"),
    ("GET",  "/p/{person}/allergies/add", "yyyffns"),
    ("POST", "/p/{person}/allergies/add", "yyyffns"),
    ("GET",  "/p/{person}/allergies/answer", "yyyffns"),
    ("POST", "/p/{person}/allergies/answer", "yyyffns"),
    ("GET",  "/p/{person}/allergies/check", "yyyffns"),
    ("POST", "/p/{person}/allergies/check", "yyyffns"),
    ("GET",  "/p/{person}/allergies/{allergy}", "yyyyyns"),
    ("GET",  "/p/{person}/allergies/{allergy}/edit", "yyyffns"),
    ("POST", "/p/{person}/allergies/{allergy}/edit", "yyyffns"),
    ("GET",  "/p/{person}/allergies/{allergy}/check", "yyyffns"),
    ("POST", "/p/{person}/allergies/{allergy}/check", "yyyffns"),
    ("GET",  "/p/{person}/allergies/{allergy}/strike", "yyyffns"),
    ("POST", "/p/{person}/allergies/{allergy}/strike", "yyyffns"),
    ("GET",  "/p/{person}/allergies/{allergy}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/allergies/{allergy}/bring-back", "yyyffns"),
    ("GET",  "/p/{person}/contacts", "yyyyyns"),
    ("GET",  "/p/{person}/contacts/add", "yyyffns"),
    ("POST", "/p/{person}/contacts/add", "yyyffns"),
    ("GET",  "/p/{person}/contacts/check", "yyyffns"),
    ("POST", "/p/{person}/contacts/check", "yyyffns"),
    ("GET",  "/p/{person}/contacts/order", "yyyffns"),
    ("GET",  "/p/{person}/contacts/cards.vcf", "yyyyyns"),
    ("GET",  "/p/{person}/contacts/{contact}", "yyyyyns"),
    ("GET",  "/p/{person}/contacts/{contact}/card.vcf", "yyyyyns"),
    ("GET",  "/p/{person}/contacts/{contact}/edit", "yyyffns"),
    ("POST", "/p/{person}/contacts/{contact}/edit", "yyyffns"),
    ("GET",  "/p/{person}/contacts/{contact}/check", "yyyffns"),
    ("POST", "/p/{person}/contacts/{contact}/check", "yyyffns"),
    ("GET",  "/p/{person}/contacts/{contact}/strike", "yyyffns"),
    ("POST", "/p/{person}/contacts/{contact}/strike", "yyyffns"),
    ("GET",  "/p/{person}/contacts/{contact}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/contacts/{contact}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/contacts/{contact}/earlier", "yyyffns"),
    ("POST", "/p/{person}/contacts/{contact}/later", "yyyffns"),
    ("GET",  "/p/{person}/conditions", "yyyyyns"),
    ("GET",  "/p/{person}/conditions/add", "yyyffns"),
    ("POST", "/p/{person}/conditions/add", "yyyffns"),
    ("GET",  "/p/{person}/conditions/check", "yyyffns"),
    ("POST", "/p/{person}/conditions/check", "yyyffns"),
    ("GET",  "/p/{person}/conditions/{condition}", "yyyyyns"),
    ("GET",  "/p/{person}/conditions/{condition}/edit", "yyyffns"),
    ("POST", "/p/{person}/conditions/{condition}/edit", "yyyffns"),
    ("GET",  "/p/{person}/conditions/{condition}/check", "yyyffns"),
    ("POST", "/p/{person}/conditions/{condition}/check", "yyyffns"),
    ("GET",  "/p/{person}/conditions/{condition}/over", "yyyffns"),
    ("POST", "/p/{person}/conditions/{condition}/over", "yyyffns"),
    ("GET",  "/p/{person}/conditions/{condition}/strike", "yyyffns"),
    ("POST", "/p/{person}/conditions/{condition}/strike", "yyyffns"),
    ("GET",  "/p/{person}/conditions/{condition}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/conditions/{condition}/bring-back", "yyyffns"),
    ("GET",  "/p/{person}/operations", "yyyyyns"),
    ("GET",  "/p/{person}/operations/add", "yyyffns"),
    ("POST", "/p/{person}/operations/add", "yyyffns"),
    ("GET",  "/p/{person}/operations/check", "yyyffns"),
    ("POST", "/p/{person}/operations/check", "yyyffns"),
    ("GET",  "/p/{person}/operations/{operation}", "yyyyyns"),
    ("GET",  "/p/{person}/operations/{operation}/edit", "yyyffns"),
    ("POST", "/p/{person}/operations/{operation}/edit", "yyyffns"),
    ("GET",  "/p/{person}/operations/{operation}/check", "yyyffns"),
    ("POST", "/p/{person}/operations/{operation}/check", "yyyffns"),
    ("GET",  "/p/{person}/operations/{operation}/strike", "yyyffns"),
    ("POST", "/p/{person}/operations/{operation}/strike", "yyyffns"),
    ("GET",  "/p/{person}/operations/{operation}/bring-back", "yyyffns"),
    ("POST", "/p/{person}/operations/{operation}/bring-back", "yyyffns"),
    ("GET",  "/p/{person}/statements", "yyyyyns"),
    ("GET",  "/p/{person}/statements/{question}", "yyyffns"),
    ("POST", "/p/{person}/statements/{question}", "yyyffns"),
    ("GET",  "/p/{person}/usual",                         "yyyyyns"),
    ("GET",  "/p/{person}/usual/edit",                    "yyyffns"),
    ("POST", "/p/{person}/usual/edit",                    "yyyffns"),
    ("GET",  "/p/{person}/usual/check",                   "yyyffns"),
    ("POST", "/p/{person}/usual/check",                   "yyyffns"),
    ("GET",  "/p/{person}/family",                        "yyynnns"),
    ("GET",  "/p/{person}/family/invite",                 "yyfnnns"),
    ("POST", "/p/{person}/family/invite",                 "yyfnnns"),
    ("POST", "/p/{person}/family/invitations/{invitation}/take-back", "yyfnnns"),
    ("GET",  "/p/{person}/family/{membership}",           "yyynnns"),
    ("GET",  "/p/{person}/family/{membership}/asked",     "yyfnnns"),
    ("POST", "/p/{person}/family/{membership}/asked",     "yyfnnns"),
    ("GET",  "/p/{person}/family/answers",                "yyfnnns"),
    ("GET",  "/p/{person}/family/answers/add",            "yyfnnns"),
    ("POST", "/p/{person}/family/answers/add",            "yyfnnns"),
    ("GET",  "/p/{person}/family/answers/{answer}",       "yyfnnns"),
    ("GET",  "/p/{person}/family/answers/{answer}/again", "yyfnnns"),
    ("POST", "/p/{person}/family/answers/{answer}/again", "yyfnnns"),
    ("GET",  "/p/{person}/family/answers/{answer}/strike", "yyfnnns"),
    ("POST", "/p/{person}/family/answers/{answer}/strike", "yyfnnns"),
    ("GET",  "/p/{person}/family/answers/{answer}/bring-back", "yyfnnns"),
    ("POST", "/p/{person}/family/answers/{answer}/bring-back", "yyfnnns"),
    ("GET",  "/p/{person}/family/{membership}/role",      "yyfnnns"),
    ("POST", "/p/{person}/family/{membership}/role",      "yyfnnns"),
    ("GET",  "/p/{person}/family/{membership}/areas",     "yyfnnns"),
    ("POST", "/p/{person}/family/{membership}/areas",     "yyfnnns"),
    ("GET",  "/p/{person}/family/{membership}/pause",     "yyfnnns"),
    ("POST", "/p/{person}/family/{membership}/pause",     "yyfnnns"),
    ("GET",  "/p/{person}/family/{membership}/resume",    "yyfnnns"),
    ("POST", "/p/{person}/family/{membership}/resume",    "yyfnnns"),
    ("GET",  "/p/{person}/family/{membership}/remove",    "yyfnnns"),
    ("POST", "/p/{person}/family/{membership}/remove",    "yyfnnns"),
    ("GET",  "/p/{person}/today",                         "yyyyyns"),
    ("POST", "/p/{person}/today/read",                    "yyynnns"),
    ("GET",  "/p/{person}/happenings",                    "yyyyyns"),
    ("GET",  "/p/{person}/happenings/about/{kind}/{item}", "yyyyyns"),
    ("GET",  "/p/{person}/happenings/add",                "yyyyfns"),
    ("POST", "/p/{person}/happenings/add",                "yyyyfns"),
    ("GET",  "/p/{person}/happenings/{happening}",        "yyyyyns"),
    ("GET",  "/p/{person}/happenings/{happening}/edit",   "fyfffns"),
    ("POST", "/p/{person}/happenings/{happening}/edit",   "fyfffns"),
    ("GET",  "/p/{person}/happenings/{happening}/photo",  "nnnnnns"),
    ("GET",  "/p/{person}/happenings/{happening}/strike", "yyfffns"),
    ("POST", "/p/{person}/happenings/{happening}/strike", "yyfffns"),
    ("GET",  "/p/{person}/happenings/{happening}/bring-back", "yyfffns"),
    ("POST", "/p/{person}/happenings/{happening}/bring-back", "yyfffns"),
    ("GET",  "/p/{person}/happenings/{happening}/place",  "yyyyfns"),
    ("POST", "/p/{person}/happenings/{happening}/place",  "yyyyfns"),
    ("GET",  "/p/{person}/history",                       "yyynnns"),
    ("GET",  "/p/{person}/history/verify",                "yyynnns"),
    ("POST", "/p/{person}/history/verify",                "yyynnns"),
    ("GET",  "/p/{person}/history/{kind}/{item}",         "yyynnns"),
    ("GET",  "/p/{person}/visibility/{kind}/{item}",      "yyfnnns"),
    ("POST", "/p/{person}/visibility/{kind}/{item}",      "yyfnnns"),
    ("GET",  "/p/{person}/visibility/{kind}/{item}/asked", "yyfnnns"),
    ("POST", "/p/{person}/visibility/{kind}/{item}/asked", "yyfnnns"),
    ("GET",  "/p/{person}/sheets/kept",                   "yyfnnns"),
    ("POST", "/p/{person}/sheets/kept/print",             "yyfnnns"),
    ("GET",  "/p/{person}/sheets",                        "yyyyyns"),
    ("GET",  "/p/{person}/sheets/emergency",              "yyyyyns"),
    ("POST", "/p/{person}/sheets/emergency/print",        "yyyyyns"),
    ("POST", "/p/{person}/sheets/emergency/keep",         "yyyyyns"),
    ("POST", "/sign-out",                                 "sssssss"),
];

/// A route with something real in its place.
pub fn filled(family: &Family, route: &str) -> String {
    let person = family.person.to_string();
    let pairs = [
        ("{person}", person.as_str()),
        ("{medicine}", "1"),
        ("{allergy}", "1"),
        ("{contact}", "1"),
        ("{condition}", "1"),
        ("{operation}", "1"),
        ("{question}", "blood-thinner"),
        ("{happening}", "1"),
        ("{step}", "1"),
        ("{membership}", "5"),
        ("{invitation}", "1"),
        ("{answer}", "1"),
        ("{kind}", "medicine"),
        ("{item}", "1"),
        ("{session}", "999"),
        ("{token}", "0000"),
        ("{*name}", "nothing.css"),
    ];
    pairs.iter().fold(route.to_owned(), |path, (name, value)| path.replace(name, value))
}

pub fn letter(browser: &Browser) -> char {
    match browser.status.as_u16() {
        303 if browser.at.starts_with("/sign-in?") || browser.at == "/sign-in" => 's',
        200 | 303 | 409 | 422 => 'y',
        403 => 'f',
        404 => 'n',
        410 => 'g',
        other => panic!("{other} at {}: {}", browser.at, browser.text()),
    }
}

#[tokio::test]
async fn every_route_answers_every_role_as_the_table_says() {
    let family = Family::with_one_of_everything().await;
    let other = add_person(&family.house, "Emeric Varga").await;
    let stranger = add_member(&family.house, "Stranger", "UTC").await;
    place(&family.house, other, stranger, Role::Steward).await;
    let names = CAST.iter().map(|(name, ..)| *name).chain(["Stranger"]);
    let mut browsers = Vec::new();
    for name in names {
        browsers.push(family.browser(name).await);
    }
    browsers.push(Browser::new(&family.house.app));
    for (method, route, expected) in TABLE {
        let path = filled(&family, route);
        let mut found = String::new();
        for browser in &mut browsers {
            match *method {
                "GET" => browser.get(&path).await,
                _ => browser.send(&path, &[]).await,
            };
            found.push(letter(browser));
        }
        assert_eq!(&found, expected, "{method} {route}");
    }
    family.house.is_sound().await;
}

#[test]
fn every_route_is_in_the_table_and_every_form_has_a_page() {
    let listed: BTreeSet<(String, String)> =
        TABLE.iter().map(|(method, path, _)| ((*method).into(), (*path).into())).collect();
    let routes = routes::all();
    assert_eq!(
        routes.difference(&listed).collect::<Vec<_>>(),
        Vec::<&(String, String)>::new(),
        "not listed"
    );
    assert_eq!(
        listed.difference(&routes).collect::<Vec<_>>(),
        Vec::<&(String, String)>::new(),
        "no such route"
    );
    // A form posts to the address that shows it; these posts have a button and no fields.
    let buttons = ["/sign-out", "/me/devices/{session}/end", "/p/{person}/sheets/emergency/keep"];
    for (method, path) in &routes {
        let shown = routes.contains(&("GET".to_owned(), path.clone()));
        let button = buttons.contains(&path.as_str())
            || path.ends_with("/print")
            || path.ends_with("/take-back")
            || path.ends_with("/earlier")
            || path.ends_with("/later")
            || path.ends_with("/today/read");
        assert!(method == "GET" || shown || button, "{path} takes a form but shows none");
    }
}
