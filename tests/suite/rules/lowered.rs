//! Every route against a relative for whom one area is lowered, and against members whose place
//! is paused or has ended. What a route needs is read from the table of every role.

use super::{
    access::TABLE,
    roles::{filled, letter},
};
use crate::support::{
    Browser, Family,
    family::{add_member, place},
};
use kinsheaf::platform::auth::{
    area::{AreaName, Role},
    policy::Level,
};

use AreaName::{Clinical, Directives, Essentials, History, Log, Members, Papers, Tasks};

/// Whose area an address below `/p/{person}` is: the first that fits.
const AREAS: &[(&str, AreaName)] = &[
    ("/medicines/given/keeping", Clinical),
    ("/medicines/given", Log),
    ("/medicines/as-of", History),
    ("/medicines", Clinical),
    ("/changes", Clinical),
    ("/allergies", Essentials),
    ("/contacts", Essentials),
    ("/conditions", Clinical),
    ("/operations", Clinical),
    ("/statements", Clinical),
    ("/questions", Clinical),
    ("/appointments", Tasks),
    ("/visits", Clinical),
    ("/reconciliation", Clinical),
    ("/ingredients", Clinical),
    ("/disagreements", Clinical),
    ("/usual", Essentials),
    ("/today/read", History),
    ("/today", Essentials),
    ("/happenings", Log),
    ("/tasks", Tasks),
    ("/carried", Tasks),
    ("/renewals", Papers),
    ("/papers", Papers),
    ("/noticed", Log),
    ("/sheets/kept", Members),
    ("/sheets/directives", Directives),
    ("/directives", Directives),
    ("/sheets/medicines", Clinical),
    ("/sheets/week", Clinical),
    ("/sheets/day", Clinical),
    ("/sheets/changes", Clinical),
    ("/sheets/visit", Clinical),
    ("/sheets", Essentials),
    ("/decisions", Clinical),
    ("/coverage", Papers),
    ("/search", Essentials),
    ("/history", History),
    ("/family", Members),
    ("/visibility", Members),
    ("/edit", Essentials),
    ("/check", Essentials),
    ("/died", Essentials),
    ("/mail", Essentials),
    ("/reminders", Members),
];

fn area(route: &str) -> Option<AreaName> {
    let rest = route.strip_prefix("/p/{person}")?;
    if rest.is_empty() {
        return Some(Essentials);
    }
    let found = AREAS.iter().find(|(start, _)| rest.starts_with(start));
    Some(found.unwrap_or_else(|| panic!("whose area is {route}?")).1)
}

/// What a relative is answered, by the columns for a steward, a relative and an aide: with her
/// own area lowered to a level.
fn expected(
    columns: &str,
    (method, route): (&str, &str),
    (lowered, to): (AreaName, Level),
) -> char {
    let column = |at: usize| columns.chars().nth(at).expect("a column");
    // An aide writes in the log and has tasks of her own, so there a reader is who only sees.
    let sees_only = if matches!(lowered, Log | Tasks) { column(4) } else { column(3) };
    let relative = column(2);
    // The life of a medicine, and what was noted about it, have its name from the clinical area.
    let life = route.ends_with("/{kind}/{item}") && !route.contains("/visibility/");
    // So has a dose, and a list of the past.
    let of_medicines = route.starts_with("/p/{person}/medicines/");
    let named = of_medicines && area(route) != Some(Clinical);
    if (life || named) && (lowered, to) == (Clinical, Level::None) {
        return 'n';
    }
    // Whom to tell is one of the contacts.
    if route.contains("{contact}") && (lowered, to) == (Essentials, Level::None) {
        return 'n';
    }
    // The visit of a note or of questions is named by the calendar.
    let of_calendar = route.contains("{appointment}") && area(route) == Some(Clinical);
    if of_calendar && (lowered, to) == (Tasks, Level::None) {
        return 'n';
    }
    // What was refused is a medicine.
    if route.starts_with("/p/{person}/coverage/refusals")
        && (lowered, to) == (Clinical, Level::None)
    {
        return 'n';
    }
    if let Some(rest) = route.strip_prefix("/p/{person}/decisions") {
        // They are there only for those who also see who shares the record: no aide does.
        let changes = !matches!(rest, "" | "/meeting" | "/{decision}");
        match (lowered, to) {
            (Clinical | Members, Level::None) => return 'n',
            (Clinical, Level::See) if changes => return 'f',
            _ => return relative,
        }
    }
    if let Some(rest) = route.strip_prefix("/p/{person}/coverage") {
        let acts = ["/add", "/edit", "/photograph", "/same", "/strike", "/bring-back"];
        let more = ["/statement", "/decision", "/move", "/settle"];
        let acts = acts.iter().chain(&more).any(|it| rest.ends_with(it));
        // The numbers are shown to who may see them, and kept by who may change them.
        let changes = acts || method == "POST" && rest.ends_with("/numbers");
        match (lowered, to) {
            (Papers, Level::None) => return 'n',
            (Papers, Level::See) if changes => return 'f',
            _ => {}
        }
    }
    if let Some(rest) = route.strip_prefix("/p/{person}/renewals") {
        // No aide sees them: who may only see papers is like nobody else.
        let sees = matches!(rest, "" | "/missing" | "/{about}/{number}");
        return match (lowered, to) {
            (Papers, Level::None) => 'n',
            (Papers, Level::See) if !sees => 'f',
            _ => relative,
        };
    }
    if let Some(rest) = route.strip_prefix("/p/{person}/papers") {
        // No aide sees them, so a reader of papers is like nobody else.
        let sees = matches!(rest, "" | "/tray" | "/words" | "/tray/arrived/{arrival}" | "/{paper}")
            || method == "GET" && rest == "/{paper}/alike";
        return match (lowered, to) {
            (Papers, Level::None) => 'n',
            (Papers, Level::See) if !sees && rest != "/{paper}/pages/{page}" => 'f',
            _ => relative,
        };
    }
    match (area(route) == Some(lowered), to) {
        (false, _) => relative,
        (true, Level::None) => 'n',
        // Who may only see it is answered as an aide is, where an aide sees it at all.
        _ if sees_only == 'f' => 'f',
        // What each carries is not there for who only sees what is to be done.
        _ if route.starts_with("/p/{person}/carried") => 'n',
        _ => relative,
    }
}

const LOWERED: [(&str, AreaName, Level); 13] = [
    ("clinical", Clinical, Level::See),
    ("clinical", Clinical, Level::None),
    ("essentials", Essentials, Level::See),
    ("essentials", Essentials, Level::None),
    ("tasks", Tasks, Level::See),
    ("tasks", Tasks, Level::None),
    ("papers", Papers, Level::See),
    ("papers", Papers, Level::None),
    ("log", Log, Level::See),
    ("log", Log, Level::None),
    ("directives", Directives, Level::None),
    ("history", History, Level::None),
    ("members", Members, Level::None),
];

#[tokio::test]
async fn every_route_answers_a_relative_as_her_lowered_areas_say() {
    let family = Family::with_one_of_everything().await;
    let mut ottoline = family.browser("Ottoline").await;
    for (name, lowered, to) in LOWERED {
        let words = if to == Level::See { "see only" } else { "nothing" };
        ottoline.open(&family.at("/family/3/areas")).await.fill(name, words);
        ottoline.press("Save").await.answers(200);
        let mut bram = family.browser("Bram").await;
        for (method, route, columns) in TABLE.iter().filter(|it| it.1.starts_with("/p/")) {
            let path = filled(&family, route);
            match *method {
                "POST" => bram.send(&path, &[]).await,
                method => bram.ask(method, &path).await,
            };
            let found = letter(&bram);
            let expected = expected(columns, (method, route), (lowered, to));
            assert_eq!(found, expected, "{method} {route} with {name} lowered to {words}");
        }
        ottoline.open(&family.at("/family/3/areas")).await.fill(name, "as the role has it");
        ottoline.press("Save").await.answers(200);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_paused_and_an_ended_place_are_not_there_on_any_route_from_that_moment() {
    let family = Family::with_one_of_everything().await;
    let halvard = add_member(&family.house, "Halvard", "UTC").await;
    place(&family.house, family.person, halvard, Role::Steward).await;
    let mut gone = [family.browser("Ines").await, family.browser("Halvard").await];
    let mut ottoline = family.browser("Ottoline").await;
    for browser in &mut gone {
        browser.get(&family.at("/family")).await.answers(200);
    }
    let halvards = family.at("/family/6");
    ottoline.open(&format!("{halvards}/remove")).await.press("End this place").await.answers(200);
    let bram = family.at("/family/3/role");
    ottoline.open(&bram).await.tick("steward").press("Save").await.answers(200);
    ottoline.open(&family.at("/family/2/pause")).await.press("Pause this place").await.answers(200);
    for (method, route, _) in TABLE.iter().filter(|it| it.1.starts_with("/p/")) {
        for browser in &mut gone {
            nothing_at(browser, method, &filled(&family, route)).await;
        }
    }
    family.house.is_sound().await;
}

async fn nothing_at(browser: &mut Browser, method: &str, path: &str) {
    match method {
        "POST" => browser.send(path, &[]).await,
        method => browser.ask(method, path).await,
    };
    browser.answers(404).sees("Your place in this record").does_not_see("Ottoline");
}
