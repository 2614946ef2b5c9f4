//! A server that shares its host with others: every address stays below the house's own path.
//! And one behind https, whose cookies go nowhere else.

use crate::support::{
    Browser, Family, TestHouse,
    crawl::everywhere,
    family::{PASSWORD, address},
};

async fn family_at(base: &str) -> Family {
    let family = Family::in_house(TestHouse::at(base).await).await;
    let mut ines = family.browser("Ines").await;
    for (page, label, press) in [
        ("/medicines/add", "Name", "Add this medicine"),
        ("/allergies/add", "To what", "Add to the list"),
    ] {
        ines.open(&family.at(page)).await.fill(label, "Something");
        if label == "To what" {
            ines.tick("allergy");
        }
        ines.press(press).await.answers(200);
    }
    for phone in ["218-555-0110", "218-555-0111"] {
        ines.open(&family.at("/contacts/add")).await.fill("Name", "Emeric").fill("Phone", phone);
        ines.press("Add this contact").await.answers(200);
    }
    family
}

#[tokio::test]
async fn every_address_on_every_page_stays_below_it() {
    // The last two are also beginnings of our own addresses.
    for base in ["/care", "/our/care", "/p", "/me"] {
        let family = family_at(&format!("http://127.0.0.1:8317{base}")).await;
        let mut ines = family.browser("Ines").await;
        assert_eq!(ines.at, format!("{base}/"));
        let visits = everywhere(&mut ines, &format!("{base}/")).await;
        assert!(visits.len() > 30, "only {} pages", visits.len());
        for visit in visits {
            assert_eq!(visit.status, 200, "{}", visit.address);
            if !visit.is_html() {
                continue;
            }
            for to in visit.leads_to() {
                let ours = to.starts_with(&format!("{base}/"));
                let here = ["#", "tel:"].iter().any(|it| to.starts_with(it));
                assert!(ours || here, "{} leads to {to}", visit.address);
                let twice = base.ends_with("care") && to.starts_with(&format!("{base}{base}"));
                assert!(!twice, "{} leads to {to}", visit.address);
            }
        }
        family.house.is_sound().await;
    }
}

#[tokio::test]
async fn signing_in_leads_to_where_she_was_going_and_out_again() {
    let family = family_at("http://127.0.0.1:8317/care").await;
    let mut ines = Browser::new(&family.house.app);
    ines.open(&family.at("/medicines")).await.sees("Sign in");
    assert!(ines.at.starts_with("/care/sign-in"), "{}", ines.at);
    ines.fill("E-mail", &address("Ines")).fill("Password", "a wrong guess of mine");
    ines.press("Sign in").await.answers(422).fill("Password", PASSWORD);
    ines.press("Sign in").await.answers(200).sees("Medicines");
    assert_eq!(ines.at, "/care/p/1/medicines");

    ines.press("Add a medicine").await.press("Add this medicine").await.answers(422);
    ines.fill("Name", "Warfarin").press("Add this medicine").await.answers(200);
    assert_eq!(ines.at, "/care/p/1/medicines/2");
    ines.sees("Added Warfarin").press("Sign out").await.sees("You are signed out");
    assert_eq!(ines.at, "/care/sign-in");
    ines.open(&family.at("/medicines")).await.sees("Sign in").does_not_see("Warfarin");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_not_below_it_is_not_ours() {
    let family = family_at("http://127.0.0.1:8317/care").await;
    let mut ines = family.browser("Ines").await;
    for outside in
        ["/", "/p/1", "/sign-in", "/healthz", "/carer", "/care/care/", "/static/style.css"]
    {
        ines.get(outside).await.answers(404);
        let page = ines.page();
        let links = crate::support::html::select(&page, "a.press").into_iter();
        let links: Vec<_> = links.filter_map(|it| it.value().attr("href")).collect();
        assert_eq!(links, ["/care/"], "{outside}");
    }
    ines.get("/care").await.answers(200).sees("Records you share");
    family.house.is_sound().await;
}

#[tokio::test]
async fn over_https_the_cookies_are_bound_to_this_host() {
    let house = TestHouse::at("https://care.example.org").await;
    let family = Family::in_house(house).await;
    let mut ines = Browser::new(&family.house.app);
    ines.open("/sign-in").await.fill("E-mail", &address("Ines")).fill("Password", PASSWORD);
    let (_, to, form) = ines.pressed("Sign in");
    ines.send(&to, &form).await.answers(303);
    let cookies = ines.headers.get_all("set-cookie").iter();
    let cookies: Vec<_> = cookies.map(|it| it.to_str().expect("text").to_owned()).collect();
    assert!(cookies.iter().any(|it| it.starts_with("__Host-kinsheaf=")), "{cookies:?}");
    for cookie in &cookies {
        let parts: Vec<_> = cookie.split("; ").skip(1).collect();
        for part in ["HttpOnly", "SameSite=Lax", "Secure", "Path=/"] {
            assert!(parts.contains(&part), "{part} is not in {cookie}");
        }
        assert!(!parts.iter().any(|it| it.starts_with("Domain")), "{cookie}");
    }
    ines.open(&family.at("/medicines")).await.answers(200);
    assert_eq!(ines.headers["strict-transport-security"], "max-age=31536000");
    ines.press("Sign out").await.sees("You are signed out");
    ines.open(&family.at("")).await.sees("Sign in");

    let plain = Family::new().await;
    let mut ines = plain.browser("Ines").await;
    assert!(ines.cookie("kinsheaf").is_some());
    ines.open("/").await;
    assert!(!ines.headers.contains_key("strict-transport-security"));
    family.house.is_sound().await;
}
