//! From the set-up link to a record shared by three in three zones: each reads the person's time,
//! and beside it her own; the history is told in the person's days, whoever reads it.

use crate::support::{Browser, TestHouse, family::PASSWORD, html};
use kinsheaf::across::setup::pages::link;
use time::Duration;

async fn set_up(house: &TestHouse) -> Browser {
    let link = link(&house.house.db, house.house.config.base()).await.expect("a link");
    let mut ines = Browser::new(&house.app);
    let link = link.expect("nobody signs in yet");
    ines.open(link.strip_prefix("http://127.0.0.1:8317").expect("our address")).await;
    ines.fill("Your name", "Ines").fill("Your e-mail", "ines@example.org");
    ines.fill("A password", PASSWORD).fill("Your time zone", "America/Chicago");
    ines.fill("Name", "Ottoline Varga").fill("Born on", "9 Mar 1944");
    ines.press("Start the record").await.answers(200);
    ines
}

async fn joined(house: &TestHouse, by: &mut Browser, (name, zone): (&str, &str)) -> Browser {
    by.open("/p/1/family/invite").await.fill("Name", name).tick("relative");
    by.press("Make the invitation").await.answers(200);
    let page = by.page();
    let link = html::select(&page, "main code").into_iter().map(html::text).collect::<String>();
    let mut browser = Browser::new(&house.app);
    browser.open(link.strip_prefix("http://127.0.0.1:8317").expect("our address")).await;
    browser.fill("Your name", name).fill("Your e-mail", &format!("{name}@example.org"));
    browser.fill("A password", "cellar violin eleven rain").fill("Your time zone", zone);
    browser.press("Join").await.answers(200).sees("You share the record of Ottoline Varga now");
    browser
}

async fn adds(browser: &mut Browser, medicine: &str) {
    browser.open("/p/1/medicines/add").await.fill("Name", medicine);
    browser.press("Add this medicine").await.answers(200);
}

/// A device that is not her own is signed out after twelve hours.
async fn comes_back(browser: &mut Browser, name: &str, password: &str) {
    browser.open("/p/1").await.fill("E-mail", &format!("{name}@example.org"));
    browser.fill("Password", password).press("Sign in").await.answers(200);
}

#[tokio::test]
async fn each_reads_the_persons_time_and_her_own() {
    let house = TestHouse::new().await;
    let mut ines = set_up(&house).await;
    let mut bram = joined(&house, &mut ines, ("Bram", "America/Los_Angeles")).await;
    let mut juno = joined(&house, &mut ines, ("Juno", "America/New_York")).await;

    // 9:12 in the morning in Duluth.
    ines.open("/p/1").await.sees("Wednesday 25 November, 9:12 am, Chicago time");
    ines.does_not_see("for you");
    bram.open("/p/1").await.sees("9:12 am, Chicago time").sees("7:12 am for you");
    juno.open("/p/1").await.sees("9:12 am, Chicago time").sees("10:12 am for you");
    adds(&mut ines, "Warfarin").await;

    // Half past eleven at night in Duluth: for Juno it is Thursday already.
    house.pass(Duration::hours(14) + Duration::minutes(18));
    for (browser, name) in [(&mut bram, "bram"), (&mut juno, "juno")] {
        comes_back(browser, name, "cellar violin eleven rain").await;
    }
    comes_back(&mut ines, "ines", PASSWORD).await;
    adds(&mut juno, "Iron").await;
    juno.open("/p/1").await.sees("Wednesday 25 November, 11:30 pm, Chicago time");
    juno.sees("12:30 am for you");
    house.pass(Duration::hours(1));
    adds(&mut bram, "Furosemide").await;
    bram.open("/p/1").await.sees("Thursday 26 November, 12:30 am").sees("10:30 pm for you");

    for browser in [&mut ines, &mut bram, &mut juno] {
        browser.open("/p/1/medicines").await.sees("Warfarin").sees("Iron").sees("Furosemide");
        browser.open("/p/1/history").await.sees("Times are those of Chicago");
        browser.sees("Thu 26 Nov 2026, today 12:30 am Bram added the medicine Furosemide");
        browser.sees("Wed 25 Nov 2026, yesterday 11:30 pm Juno added the medicine Iron");
        browser.sees("9:12 am Ines added the medicine Warfarin");
        browser.open("/p/1/family").await.sees("10:30 pm in Los Angeles");
        browser.sees("1:30 am in New York").sees("12:30 am in Chicago");
    }

    // Juno moves: her own clock changes, the person's and the history's do not.
    juno.open("/me").await.press("Edit").await.fill("Your time zone", "America/Denver");
    juno.press("Save").await.answers(200).sees("Denver (America/Denver)");
    juno.open("/p/1").await.sees("12:30 am, Chicago time").sees("11:30 pm for you");
    juno.open("/p/1/history").await.sees("11:30 pm Juno added the medicine Iron");
    ines.open("/p/1/family").await.sees("11:30 pm in Denver").does_not_see("New York");
    house.is_sound().await;
}

/// A zone that an update took away: plain words, no failure, and nothing changed unasked.
#[tokio::test]
async fn a_zone_that_is_not_known_any_more_is_said_to_be_so() {
    let house = TestHouse::new().await;
    let mut ines = set_up(&house).await;
    let mut bram = joined(&house, &mut ines, ("Bram", "America/Los_Angeles")).await;
    let mut db = house.outside().await;
    let lose = "update member set zone = 'America/Atlantis' where name = 'Bram'";
    sqlx::query(lose).execute(&mut db).await.expect("changed");
    let lost = "UTC (America/Atlantis is not known here any more)";
    bram.open("/p/1").await.answers(200).sees("9:12 am, Chicago time").sees("3:12 pm for you");
    bram.open("/me").await.answers(200).sees(lost);
    ines.open("/p/1/family").await.answers(200).sees(&format!("3:12 pm in {lost}"));
    bram.open("/me/edit").await.answers(200);
    assert_eq!(bram.value("Your time zone"), "America/Atlantis");
    bram.press("Save").await.answers(422).sees("Choose a time zone from the list");
    bram.fill("Your time zone", "America/Denver").press("Save").await.answers(200).sees("Denver");

    sqlx::query("update person set zone = 'America/Atlantis'").execute(&mut db).await.expect("ok");
    for page in ["", "/medicines", "/history", "/sheets/emergency", "/sheets/kept", "/edit"] {
        ines.open(&format!("/p/1{page}")).await.answers(200).sees(lost);
    }
    ines.press("Save").await.answers(422).sees("Choose a time zone from the list");
}
