//! From set-up to a shared record: three members in three zones, each by a link of her own, and
//! a second record beside the first.

use crate::support::{
    Browser, Family, TestHouse,
    family::{PASSWORD, add_member},
    html,
};
use kinsheaf::across::setup::pages::link;

/// The link on the page after an invitation was made.
fn shown_link(browser: &Browser) -> String {
    let page = browser.page();
    let code = html::select(&page, "main code").into_iter().map(html::text).collect::<String>();
    code.strip_prefix("http://127.0.0.1:8317").expect("our address").to_owned()
}

async fn invite(by: &mut Browser, (name, email, role): (&str, &str, &str)) -> String {
    by.open("/p/1/family").await.press("Invite someone").await.fill("Name", name);
    by.fill("E-mail, if you like", email).tick(role).press("Make the invitation").await;
    by.answers(200).sees("It is shown this once");
    shown_link(by)
}

async fn join(house: &TestHouse, link: &str, (name, zone): (&str, &str)) -> Browser {
    let mut browser = Browser::new(&house.app);
    browser.open(link).await.sees("invites you to share the care record of Ottoline Varga");
    browser.fill("Your name", name).fill("Your e-mail", &format!("{name}@example.org"));
    browser.fill("A password", "cellar violin eleven rain").fill("Your time zone", zone);
    browser.press("Join").await.answers(200).sees("You share the record of Ottoline Varga now");
    browser
}

async fn set_up(house: &TestHouse) -> Browser {
    let link = link(&house.house.db, house.house.config.base()).await.expect("a link");
    let link = link.expect("nobody signs in yet");
    let mut ines = Browser::new(&house.app);
    ines.open(link.strip_prefix("http://127.0.0.1:8317").expect("our address")).await;
    ines.fill("Your name", "Ines").fill("Your e-mail", "ines@example.org");
    ines.fill("A password", PASSWORD).fill("Name", "Ottoline Varga").fill("Born on", "9 Mar 1944");
    ines.press("Start the record").await.answers(200);
    ines
}

#[tokio::test]
async fn three_members_in_three_zones_share_one_record() {
    let house = TestHouse::new().await;
    let mut ines = set_up(&house).await;
    let to_bram = invite(&mut ines, ("Bram", "", "steward")).await;
    let to_juno = invite(&mut ines, ("Juno", "juno@example.org", "relative")).await;
    ines.open("/p/1/family").await.sees("2 open").sees("Juno relative , invited by Ines");
    ines.sees("juno@example.org · the link works until Wed 2 Dec 2026, 9:12 am");

    let mut bram = join(&house, &to_bram, ("Bram", "America/Los_Angeles")).await;
    let mut juno = join(&house, &to_juno, ("Juno", "America/New_York")).await;
    ines.open("/p/1/family").await.sees("3 members share this record").does_not_see("open");
    ines.sees("7:12 am in Los Angeles").sees("10:12 am in New York");

    // They read and write the same record, each as the role has it.
    juno.open("/p/1/medicines/add").await.fill("Name", "Warfarin").press("Add this medicine").await;
    bram.open("/p/1/medicines").await.sees("Warfarin");
    juno.open("/p/1/family").await.does_not_see("Invite someone");
    juno.open("/p/1/family/invite").await.answers(403);
    ines.open("/p/1/history").await.sees("Ines invited Juno as relative");
    ines.sees("Juno accepted the invitation").sees("Juno took a place as relative");
    ines.sees("Ines took a place as steward").sees("Juno added the medicine Warfarin");

    // Each signs in again by herself.
    juno.open("/").await.press("Sign out").await.fill("E-mail", "juno@example.org");
    juno.fill("Password", "cellar violin eleven rain").press("Sign in").await;
    juno.sees("Ottoline Varga").sees("your role: relative");
    house.is_sound().await;
}

#[tokio::test]
async fn the_mail_names_the_one_who_invites_and_nothing_of_the_record() {
    let house = TestHouse::new().await;
    let mut ines = set_up(&house).await;
    let shown = invite(&mut ines, ("Juno", "juno@example.org", "relative")).await;
    ines.sees("It goes to juno@example.org by mail, too");
    invite(&mut ines, ("Bram", "", "aide")).await;
    ines.does_not_see("by mail, too");
    let mails = house.outbox().await;
    assert_eq!(mails.len(), 1);
    let (recipient, body) = &mails[0];
    assert_eq!(recipient, "juno@example.org");
    assert!(body.contains("Ines invites you") && body.contains(&shown), "{body}");
    assert!(!body.contains("Ottoline") && !body.contains("Varga"), "{body}");
    // The token itself is nowhere in the folder but in that mail.
    let token = shown.strip_prefix("/join/").expect("a token");
    let mut db = house.outside().await;
    let kept: Vec<String> =
        sqlx::query_scalar("select token from invitation").fetch_all(&mut db).await.expect("rows");
    assert!(kept.iter().all(|it| it != token && it.len() == 64));
    house.is_sound().await;
}

#[tokio::test]
async fn who_signs_in_here_already_accepts_with_one_press() {
    let family = Family::new().await;
    add_member(&family.house, "Juno", "America/New_York").await;
    let mut ines = family.browser("Ines").await;
    let link = invite(&mut ines, ("Juno", "juno@example.org", "relative")).await;

    // Her address is taken, so joining anew is no way; signing in is.
    let mut juno = Browser::new(&family.house.app);
    juno.open(&link).await.fill("A password", "cellar violin eleven rain").press("Join").await;
    juno.answers(422).sees("Someone with this address signs in here already.");
    juno.open(&link).await.press("I sign in here already").await.sees("Sign in");
    juno.fill("E-mail", "juno@example.org").fill("Password", PASSWORD).press("Sign in").await;
    juno.sees("Ines invites you to share the care record of Ottoline Varga");
    juno.press("Accept").await.answers(200).sees("You share the record of Ottoline Varga now");
    juno.open("/").await.sees("your role: relative");
    ines.open(&family.at("/history")).await.sees("Juno accepted the invitation");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_second_record_is_started_beside_the_first() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open("/").await.press("Start another record").await.fill("Name", "Emeric Varga");
    ines.fill("Born on", "2 Nov 2041").press("Start the record").await;
    ines.answers(422).sees("This day has not come yet.").fill("Born on", "2 Nov 1941");
    ines.press("Start the record").await.answers(200).sees("The record of Emeric Varga is started");
    ines.open("/p/2/history").await.sees("Ines added the person's page Emeric Varga");
    ines.sees("Ines took a place as steward").does_not_see("Ottoline");
    ines.open("/").await.sees("Emeric Varga").sees("Ottoline Varga");
    let mut bram = family.browser("Bram").await;
    bram.open("/").await.does_not_see("Emeric").does_not_see("Start another record");
    bram.open("/records/add").await.answers(403);
    bram.open("/p/2").await.answers(404);
    family.house.is_sound().await;
}
