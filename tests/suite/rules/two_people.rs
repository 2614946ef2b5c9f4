//! Two parents never mix. For someone who keeps both records, each page of a record says whose it
//! is by two identifiers, name and birth date, says neither of the other person, and leads and
//! posts nowhere else. (Two identifiers: common practice, no source; Joint Commission
//! NPSG.01.01.01 asks for at least two, from memory.)

use super::access::TABLE;
use crate::support::{Browser, Family, html};

const OTTOLINE: [&str; 2] = ["Ottoline Varga", "born 9 March 1944"];
const EMERIC: [&str; 2] = ["Emeric Varga", "born 2 November 1941"];

/// A route in one of the two records, with something real in its place: in the first everything
/// has the id 1, in the second 2.
fn filled(route: &str, person: &str) -> String {
    let place = if person == "1" { "5" } else { "6" };
    let route = route.replace("{person}", person).replace("{membership}", place);
    let route = route.replace("/questions/{question}", &format!("/questions/{person}"));
    let route = route.replace("{question}", "blood-thinner").replace("{kind}", "medicine");
    let route = route.replace("{about}", "own").replace("{expected}", "funeral-contract");
    let route = route.replace("{day}", "2026-11-25").replace("{time}", "morning");
    let parts = route.split('/').map(|it| if it.starts_with('{') { person } else { it });
    parts.collect::<Vec<_>>().join("/")
}

#[tokio::test]
async fn each_page_says_whose_it_is_and_nothing_of_the_other() {
    let (family, mut ines) = Family::with_two_records().await;
    let mut seen = 0;
    // A photo, a page of a paper and a card for a phone are no pages.
    let page =
        |route: &str| !["/photo", ".vcf", "/pages/{page}"].iter().any(|it| route.ends_with(it));
    // Where the person signs in, a steward does not speak for her.
    let hers = |columns: &str| columns.chars().nth(1) == Some('y');
    let routes = TABLE.iter().filter(|it| it.0 == "GET" && it.1.starts_with("/p/"));
    let routes = routes.filter(|it| page(it.1) && hers(it.2));
    for (_, route, _) in routes {
        for (person, own, other) in [("1", OTTOLINE, EMERIC), ("2", EMERIC, OTTOLINE)] {
            let path = filled(route, person);
            ines.get(&path).await.answers(200);
            for mark in own {
                ines.sees(mark);
            }
            for mark in other {
                ines.does_not_see(mark);
            }
            stays(&ines, &path, person);
            seen += 1;
        }
    }
    assert!(seen > 130, "only {seen} pages were seen");
    family.house.is_sound().await;
}

/// Every form and every link of the page stays in the record, or leaves it for the house.
#[track_caller]
fn stays(browser: &Browser, path: &str, person: &str) {
    let page = browser.page();
    let forms = html::select(&page, "form").into_iter().filter_map(|it| it.value().attr("action"));
    let links = html::select(&page, "a[href]").into_iter().filter_map(|it| it.value().attr("href"));
    let record = format!("/p/{person}");
    let (mut own, mut count) = (0, 0);
    for to in forms.chain(links) {
        let rest = to.strip_prefix(&record);
        let here = rest.is_some_and(|it| it.is_empty() || it.starts_with(['/', '?']));
        assert!(here || !to.starts_with("/p/"), "{path} leads to {to}");
        own += usize::from(here);
        count += 1;
    }
    assert!(own > 5 && count > own, "{path}: its links were not read");
}

#[tokio::test]
async fn what_is_of_one_record_is_not_there_under_the_other() {
    let (family, mut ines) = Family::with_two_records().await;
    for (method, route, _) in TABLE.iter().filter(|it| it.1.starts_with("/p/")) {
        let own = filled(route, "1");
        let crossed = own.replacen("/p/1", "/p/2", 1);
        if filled(route, "2") == crossed {
            continue;
        }
        match *method {
            "POST" => ines.send(&crossed, &[]).await,
            method => ines.ask(method, &crossed).await,
        };
        let status = ines.status.as_u16();
        assert!(matches!(status, 404 | 422), "{method} {crossed}: {status}");
        ines.does_not_see("Ottoline Varga");
    }
    family.house.is_sound().await;
}
