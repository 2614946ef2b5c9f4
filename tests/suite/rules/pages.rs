//! Every page: whose record it is, that it is not stored or framed, that it loads nothing from
//! elsewhere and runs nothing of its own; and a page for whatever cannot be answered.

use crate::support::{Browser, Family, crawl::everywhere, html};
use axum::{
    body::Body,
    http::{HeaderMap, Request, Response, StatusCode},
};
use tower::ServiceExt;

async fn written_down() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (page, label, press) in [
        ("/medicines/add", "Name", "Add this medicine"),
        ("/allergies/add", "To what", "Add to the list"),
        ("/contacts/add", "Name", "Add this contact"),
    ] {
        ines.open(&family.at(page)).await.fill(label, "Something");
        match page {
            "/allergies/add" => ines.tick("allergy"),
            "/contacts/add" => ines.fill("Phone", "218-555-0111"),
            _ => &mut ines,
        };
        ines.press(press).await.answers(200);
    }
    (family, ines)
}

#[tokio::test]
async fn every_page_of_a_record_says_whose_it_is() {
    let (family, mut ines) = written_down().await;
    let mut seen = 0;
    for visit in everywhere(&mut ines, "/").await {
        if !visit.address.starts_with(&family.at("")) || !visit.is_html() {
            continue;
        }
        let text = html::page_text(&visit.page());
        for mark in ["Ottoline Varga", "born 9 March 1944, age 82"] {
            assert!(text.contains(mark), "{} does not say {mark}", visit.address);
        }
        let page = visit.page();
        let title = html::select(&page, "title").into_iter().map(html::text).collect::<String>();
        assert!(title.ends_with(" · Ottoline Varga"), "{}: {title}", visit.address);
        seen += 1;
    }
    assert!(seen > 30, "only {seen} pages were seen");
}

/// What every answer carries that a person reads.
#[track_caller]
fn is_guarded(headers: &HeaderMap, at: &str) {
    let text = |name: &str| headers.get(name).map_or("", |it| it.to_str().expect("text"));
    let policy = text("content-security-policy");
    for part in ["default-src 'none'", "frame-ancestors 'none'", "base-uri 'none'"] {
        assert!(policy.contains(part), "{at}: {part} is not in {policy:?}");
    }
    assert!(!policy.contains("unsafe"), "{at}: {policy}");
    assert_eq!(text("cache-control"), "no-store", "{at}");
    assert_eq!(text("x-content-type-options"), "nosniff", "{at}");
    assert_eq!(text("referrer-policy"), "same-origin", "{at}");
}

#[tokio::test]
async fn pages_are_not_stored_framed_or_guessed_at() {
    let (family, mut ines) = written_down().await;
    for visit in everywhere(&mut ines, "/").await {
        if visit.is_html() {
            is_guarded(&visit.headers, &visit.address);
        }
    }
    for (address, status) in [
        ("/nothing", 404),
        ("/p/99", 404),
        ("/static/nothing.css", 404),
        ("/setup/0000", 410),
        ("/healthz", 200),
    ] {
        ines.get(address).await.answers(status);
        is_guarded(&ines.headers, address);
    }
    ines.send(&family.at("/medicines/add"), &[]).await.answers(422);
    is_guarded(&ines.headers, "a form shown again");
    ines.press("Emergency sheet").await.press("Print or save").await.answers(200);
    is_guarded(&ines.headers, "a paper");
    let mut delia = family.browser("Delia").await;
    delia.get(&family.at("/edit")).await.answers(403);
    is_guarded(&delia.headers, "a refusal");
    let mut nobody = Browser::new(&family.house.app);
    nobody.get(&family.at("")).await.answers(303);
    is_guarded(&nobody.headers, "the way to sign in");
}

#[tokio::test]
async fn no_page_has_a_script_or_a_style_of_its_own_or_loads_from_elsewhere() {
    let (_family, mut ines) = written_down().await;
    for visit in everywhere(&mut ines, "/").await.iter().filter(|it| it.is_html()) {
        let page = visit.page();
        let own = html::select(&page, "style, [style], script:not([src]), iframe, object, embed");
        let own: Vec<_> = own.into_iter().map(|it| it.html()).collect();
        assert_eq!(own, [""; 0], "{}", visit.address);
        let attributes = page.tree.nodes().filter_map(|it| it.value().as_element());
        let runs = attributes.flat_map(|it| it.attrs()).find(|(name, _)| name.starts_with("on"));
        assert_eq!(runs, None, "{}", visit.address);
        for to in visit.leads_to() {
            let ours = to.starts_with('/') && !to.starts_with("//");
            let here = to.starts_with('#') || to.starts_with("tel:") || to.starts_with("mailto:");
            assert!(ours || here, "{} leads to {to}", visit.address);
        }
    }
}

#[tokio::test]
async fn files_are_kept_for_a_year_under_the_name_of_their_content() {
    let (_family, mut ines) = written_down().await;
    let page = ines.open("/").await.page();
    let style = html::select(&page, "link[rel='stylesheet']");
    let style = style[0].value().attr("href").expect("a stylesheet").to_owned();
    assert_eq!(style.split('.').count(), 3, "{style} has no mark of its content");
    ines.get(&style).await.answers(200);
    assert_eq!(ines.headers["cache-control"], "public, max-age=31536000, immutable");
    assert_eq!(ines.headers["content-type"], "text/css; charset=utf-8");
    assert_eq!(ines.headers["x-content-type-options"], "nosniff");
    // What it names is there, and it names nothing of another host.
    let css = String::from_utf8_lossy(&ines.body).into_owned();
    let named: Vec<_> = css.split("url(\"").skip(1).filter_map(|it| it.split('"').next()).collect();
    assert_eq!(named.len(), 2);
    for name in named {
        assert!(!name.contains(':') && !name.starts_with('/'), "{name}");
        ines.get(&format!("/static/{name}")).await.answers(200);
    }
}

#[tokio::test]
async fn only_the_head_is_given_where_only_the_head_is_asked() {
    let (family, mut ines) = written_down().await;
    for address in ["/", &family.at(""), &family.at("/medicines/1"), "/healthz"] {
        ines.get(address).await;
        let whole = ines.status;
        ines.ask("HEAD", address).await;
        assert_eq!((ines.status, ines.body.len()), (whole, 0), "{address}");
        is_guarded(&ines.headers, address);
    }
    ines.ask("HEAD", "/nothing").await.answers(404);
}

#[tokio::test]
async fn a_method_that_an_address_does_not_know_gets_a_page() {
    let (family, mut ines) = written_down().await;
    for method in ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND"] {
        for address in ["/", "/sign-in", &family.at("/medicines/1"), &family.at("/edit")] {
            ines.ask(method, address).await.answers(405).sees("Not like this");
            is_guarded(&ines.headers, address);
            // RFC 9110 (2022), section 15.5.6: such an answer says what is allowed.
            let allowed = ines.headers.get("allow").map(|it| it.to_str().expect("text"));
            assert!(
                allowed.is_some_and(|it| it.contains("GET")),
                "{method} {address}: {allowed:?}"
            );
        }
    }
    ines.ask("POST", "/healthz").await.answers(405).sees("Nothing was changed.");
    ines.ask("GET", "/sign-out").await.answers(405).sees("Nothing was changed.");
    ines.open("/").await.sees("Ottoline Varga");
}

/// An answer to a request that no browser would send.
async fn answered(family: &Family, request: Request<Body>) -> Response<Body> {
    family.house.app.clone().oneshot(request).await.expect("an answer")
}

#[tokio::test]
async fn odd_bytes_in_an_address_lead_nowhere_but_to_a_page() {
    let (_family, mut ines) = written_down().await;
    for odd in [
        "/%ff",
        "/p/%ff",
        "/p/1%00",
        "/p/1/medicines/%f0%28%8c%28",
        "/p/1/history/%ff/1",
        "/p/1/history/medicine/x",
        "/p/1/history/medicine/99999999999999999999",
        "/p/1/visibility/medicine/1%0a",
        "/setup/%ff",
        "/sign-in/reset/%c0%ae",
        "/static/%2e%2e/Cargo.toml",
        "/static/..%2f..%2fCargo.toml",
        "/static/%ff",
        "//",
        "/p//medicines",
        "/p/1/history?member=1&member=2",
        "/sign-in?next=a&next=b",
    ] {
        ines.get(odd).await;
        let status = ines.status;
        assert!(matches!(status.as_u16(), 404 | 410), "{odd}: {status} {}", ines.text());
        assert!(ines.headers["content-type"].to_str().expect("text").starts_with("text/html"));
        ines.sees("Records you share");
        is_guarded(&ines.headers, odd);
    }
}

#[tokio::test]
async fn odd_and_huge_headers_break_nothing() {
    let (family, _ines) = written_down().await;
    for name in ["cookie", "user-agent", "x-forwarded-for", "origin", "sec-fetch-site", "accept"] {
        for value in [
            vec![b'a'; 200_000],
            vec![0xff, 0xfe],
            b"kinsheaf=\xff".to_vec(),
            b"said=%ff%00".to_vec(),
        ] {
            for method in ["GET", "POST"] {
                let request = Request::builder().method(method).uri("/sign-in");
                let request = request.header(name, value.as_slice()).body(Body::empty());
                let answer = answered(&family, request.expect("a request")).await;
                let fine = !answer.status().is_server_error();
                assert!(fine, "{method} with an odd {name}: {}", answer.status());
                is_guarded(answer.headers(), name);
            }
        }
    }
    let request = Request::builder().uri("/").header("cookie", "kinsheaf=").body(Body::empty());
    let answer = answered(&family, request.expect("a request")).await;
    assert_eq!(answer.status(), StatusCode::SEE_OTHER);
    family.house.is_sound().await;
}
