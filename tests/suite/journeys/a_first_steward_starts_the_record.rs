//! From an empty folder: the one-time link, the first steward, the first person.

use crate::support::{Browser, TestHouse};
use kinsheaf::across::setup::pages::link;
use time::Duration;

async fn path(house: &TestHouse) -> String {
    let link = link(&house.house.db, house.house.config.base()).await.expect("a link");
    let link = link.expect("nobody signs in yet");
    link.strip_prefix("http://127.0.0.1:8317").expect("our address").to_owned()
}

fn fill(browser: &mut Browser) {
    browser.fill("Your name", "Ines").fill("Your e-mail", "ines@example.org");
    browser.fill("A password", "maple bridge lantern oats");
    browser.fill("Name", "Ottoline Varga").fill("Born on", "9 Mar 1944");
}

#[tokio::test]
async fn she_opens_the_link_and_is_in_her_mothers_record() {
    let house = TestHouse::new().await;
    let path = path(&house).await;
    let mut ines = Browser::new(&house.app);
    ines.open(&path).await.sees("Start the care record");
    fill(&mut ines);
    ines.press("Start the record").await.answers(200);
    ines.sees("The record of Ottoline Varga is started").sees("born 9 March 1944, age 82");
    ines.press("History").await.sees("Ines added the person's page Ottoline Varga");

    // It works once, and registration is closed.
    Browser::new(&house.app).open(&path).await.answers(410).sees("This link no longer works");
    let again = link(&house.house.db, house.house.config.base()).await.expect("an answer");
    assert_eq!(again, None);
    house.is_sound().await;
}

#[tokio::test]
async fn the_link_lasts_a_day_and_a_newer_one_replaces_it() {
    let house = TestHouse::new().await;
    let first = path(&house).await;
    let second = path(&house).await;
    Browser::new(&house.app).open(&first).await.answers(410);
    house.pass(Duration::hours(23));
    Browser::new(&house.app).open(&second).await.answers(200);
    house.pass(Duration::hours(2));
    Browser::new(&house.app).open(&second).await.answers(410);
}

#[tokio::test]
async fn of_two_who_send_it_at_once_one_is_the_first_steward() {
    let house = TestHouse::new().await;
    let path = path(&house).await;
    let (mut one, mut two) = (Browser::new(&house.app), Browser::new(&house.app));
    for browser in [&mut one, &mut two] {
        browser.open(&path).await;
        fill(browser);
    }
    tokio::join!(one.press("Start the record"), two.press("Start the record"));
    let mut statuses = [one.status.as_u16(), two.status.as_u16()];
    statuses.sort();
    assert_eq!(statuses, [200, 410]);
    house.is_sound().await;
}

#[tokio::test]
async fn what_is_wrong_stands_beside_the_field_and_nothing_typed_is_lost() {
    let house = TestHouse::new().await;
    let path = path(&house).await;
    let mut ines = Browser::new(&house.app);
    ines.open(&path).await;
    fill(&mut ines);
    ines.fill("A password", "password1").fill("Born on", "31 Feb 1944");
    ines.press("Start the record").await.answers(422);
    ines.sees("One thing to put right").sees("This is not a day in the calendar");
    assert_eq!(ines.value("Born on"), "31 Feb 1944");
    assert_eq!(ines.value("Your name"), "Ines");
    ines.fill("Born on", "9 Mar 2044").fill("A password", "maple bridge lantern oats");
    ines.press("Start the record").await.answers(422).sees("This day has not come yet");
    ines.fill("Born on", "9 Mar 1944").fill("A password", "password1");
    ines.press("Start the record").await.answers(422);
    ines.fill("A password", "maple bridge lantern oats");
    ines.press("Start the record").await.answers(200);
}
