//! Every route and every role, as the table says. A route that is not listed fails.

use super::access::TABLE;
use crate::support::{
    Browser, Family,
    family::{CAST, add_member, add_person, place},
    routes,
};
use kinsheaf::platform::auth::area::Role;
use std::collections::BTreeSet;

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
        ("/questions/{question}", "/questions/1"),
        ("{question}", "blood-thinner"),
        ("{happening}", "1"),
        ("{appointment}", "1"),
        ("{task}", "1"),
        ("{carried}", "1"),
        ("{observation}", "1"),
        ("{decision}", "1"),
        ("{cover}", "1"),
        ("{card}", "1"),
        ("{refusal}", "1"),
        ("{call}", "1"),
        ("{directive}", "1"),
        ("{copy}", "1"),
        ("{event}", "1"),
        ("{draft}", "1"),
        ("{visit}", "1"),
        ("{step}", "1"),
        ("{turn}", "1"),
        ("{telling}", "1"),
        ("{ingredient}", "1"),
        ("{fill}", "1"),
        ("{count}", "1"),
        ("{list}", "1"),
        ("{line}", "1"),
        ("{pair}", "999"),
        ("{given}", "1"),
        ("{day}", "2026-11-25"),
        ("{time}", "morning"),
        ("{membership}", "5"),
        ("{invitation}", "1"),
        ("{answer}", "1"),
        ("{paper}", "1"),
        ("{page}", "1"),
        ("{arrival}", "1"),
        ("{kind}", "medicine"),
        ("{item}", "1"),
        ("{session}", "999"),
        ("{feed}", "999"),
        ("{token}", "0000"),
        ("{about}", "own"),
        ("{number}", "1"),
        ("{expected}", "funeral-contract"),
        ("{*name}", "nothing.css"),
    ];
    pairs.iter().fold(route.to_owned(), |path, (name, value)| path.replace(name, value))
}

pub fn letter(browser: &Browser) -> char {
    match browser.status.as_u16() {
        303 if browser.at.starts_with("/sign-in?") || browser.at == "/sign-in" => 's',
        200 | 201 | 303 | 409 | 422 => 'y',
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
    for (method, route, expected) in TABLE.iter() {
        let path = filled(&family, route);
        let mut found = String::new();
        for browser in &mut browsers {
            match *method {
                "POST" => browser.send(&path, &[]).await,
                method => browser.ask(method, &path).await,
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
            || path.ends_with("/as-question")
            || path.ends_with("/take-back")
            || path.ends_with("/earlier")
            || path.ends_with("/later")
            || path.ends_with("/visits/{visit}/read")
            || path.ends_with("/papers/{paper}/read-again")
            || path.ends_with("/papers/tray/sending")
            || path.starts_with("/p/{person}/visits/typed")
            || path.starts_with("/p/{person}/papers/{paper}/pages/{page}/")
            || path.ends_with("/today/read");
        assert!(method == "GET" || shown || button, "{path} takes a form but shows none");
    }
}
