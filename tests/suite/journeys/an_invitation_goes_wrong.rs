//! Links that do not work (any more), and what the one who opens them reads.

use crate::support::{
    Browser, Family,
    family::{add_member, address},
    html,
};
use time::Duration;

async fn invite(family: &Family, name: &str, role: &str) -> String {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/family/invite")).await.fill("Name", name);
    ines.fill("E-mail, if you like", &address(name)).tick(role);
    ines.press("Make the invitation").await.answers(200);
    let page = ines.page();
    let code = html::select(&page, "main code").into_iter().map(html::text).collect::<String>();
    code.strip_prefix("http://127.0.0.1:8317").expect("our address").to_owned()
}

async fn says(family: &Family, link: &str, words: &str) {
    let mut anyone = Browser::new(&family.house.app);
    anyone.open(link).await.answers(410).sees("This invitation does not work").sees(words);
    anyone.does_not_see("Ottoline");
    anyone.send(link, &[]).await.answers(410).sees(words);
}

fn fill(browser: &mut Browser) {
    browser.fill("A password", "cellar violin eleven rain");
}

#[tokio::test]
async fn it_works_once_for_a_week_and_until_it_is_taken_back() {
    let family = Family::new().await;
    let used = invite(&family, "Juno", "relative").await;
    let mut juno = Browser::new(&family.house.app);
    juno.open(&used).await;
    fill(&mut juno);
    juno.press("Join").await.answers(200);
    says(&family, &used, "It was accepted already").await;

    let taken = invite(&family, "Halvard", "reader").await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/family")).await;
    let (_, take_back, form) = ottoline.pressed_starting("Take it back");
    ottoline.send(&take_back, &form).await.answers(303);
    ottoline
        .open(&family.at("/family"))
        .await
        .sees("its link no longer works")
        .does_not_see("open");
    says(&family, &taken, "It was taken back").await;
    ottoline.send(&take_back, &form).await.answers(303);
    ottoline.open(&family.at("/family")).await.sees("was taken back already");
    ottoline
        .open(&family.at("/history"))
        .await
        .sees("Ottoline took back the invitation for Halvard");

    let old = invite(&family, "Halvard", "reader").await;
    family.house.pass(Duration::days(7) - Duration::seconds(1));
    Browser::new(&family.house.app).open(&old).await.answers(200);
    family.house.pass(Duration::seconds(1));
    says(&family, &old, "they are over").await;
    says(&family, "/join/0000", "There is no such invitation").await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn of_two_at_once_one_has_the_place() {
    let family = Family::new().await;
    let link = invite(&family, "Juno", "relative").await;
    let (mut one, mut two) = (Browser::new(&family.house.app), Browser::new(&family.house.app));
    for (browser, email) in [(&mut one, "juno@example.org"), (&mut two, "halvard@example.org")] {
        browser.open(&link).await.fill("Your e-mail", email);
        fill(browser);
    }
    tokio::join!(one.press("Join"), two.press("Join"));
    let (lucky, late) = if one.status == 200 { (&mut one, &mut two) } else { (&mut two, &mut one) };
    lucky.sees("You share the record of Ottoline Varga now");
    late.answers(410).sees("It was accepted already");
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/family")).await.sees("6 members share this record");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_for_nobody_who_has_a_place_and_falls_with_the_one_who_invited() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/family/invite")).await.fill("Name", "Bram");
    ines.fill("E-mail, if you like", &address("Bram")).tick("aide");
    ines.press("Make the invitation").await.answers(422).sees("has a place here already");
    ines.open(&family.at("/family/3/pause")).await.press("Pause this place").await.answers(200);
    ines.open(&family.at("/family/invite")).await.fill("Name", "Bram");
    ines.fill("E-mail, if you like", &address("Bram")).tick("aide");
    ines.press("Make the invitation").await.answers(422).sees("It is paused: take the pause back.");
    ines.open(&family.at("/family/3/resume")).await.press("Take back the pause").await.answers(200);
    let link = invite(&family, "Juno", "relative").await;
    ines.open(&family.at("/family/invite")).await.fill("Name", "Juno once more");
    ines.fill("E-mail, if you like", &address("Juno"))
        .tick("aide")
        .press("Make the invitation")
        .await;
    ines.answers(422).sees("An invitation to this address is open.");
    assert_eq!(ines.value("Name"), "Juno once more");

    let mut bram = family.browser("Bram").await;
    bram.open(&link).await.answers(410).sees("You have a place in this record already");
    bram.send(&format!("{link}/accept"), &[]).await.answers(410);

    // Ines's own place is paused by another steward, then goes on.
    let mut ottoline = family.browser("Ottoline").await;
    ottoline
        .open(&family.at("/family/3/role"))
        .await
        .tick("steward")
        .press("Save")
        .await
        .answers(200);
    ottoline.open(&family.at("/family/2/pause")).await.press("Pause this place").await.answers(200);
    says(&family, &link, "does not decide in this record at the moment").await;
    ottoline.open(&family.at("/family")).await.sees("does not work: Ines does not decide here now");
    ottoline.open(&family.at("/family/2/resume")).await.press("Take back the pause").await;
    add_member(&family.house, "Juno", "America/New_York").await;
    let mut juno = family.browser("Juno").await;
    juno.open(&link).await.answers(200).press("Accept").await.answers(200);
    ottoline.open(&family.at("/family")).await.sees("6 members share this record");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_persons_place_is_offered_once() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/family/invite")).await.does_not_see("the person herself");
    let form = [("name", "Someone"), ("role", "person")].map(|(a, b)| (a.to_owned(), b.to_owned()));
    ines.send(&family.at("/family/invite"), &form).await.answers(422);
    ines.sees("The person has a place here already.");
    // She leaves; two links to her place are made; the second is one too many.
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/family/1/remove")).await.press("End this place").await;
    ottoline.open(&family.at("")).await.answers(404).sees("Your place in this record has ended");
    let (one, two) =
        (invite(&family, "Ottoline", "person").await, invite(&family, "Halvard", "person").await);
    ottoline.open(&one).await.press("Accept").await.answers(200).open("/").await;
    ottoline.sees("your role: person");
    says(&family, &two, "The person this record is about has a place in it already").await;
    ines.open(&family.at("/history")).await.sees("Ottoline took a place again");
    family.house.is_sound().await;
}
