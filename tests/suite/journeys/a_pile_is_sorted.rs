//! From the pile to the filed paper: several files at once, one after the other filed, pages joined and
//! turned, every paper found again; what is replaced or struck stays.

use crate::support::{
    Browser, Family,
    paper::{pdf, picture},
};
use time::Duration;

const FIELD: &str = "Photos or PDFs";

/// Puts these files in the tray, in this order.
pub async fn put_in(browser: &mut Browser, family: &Family, files: &[(&str, Vec<u8>)]) {
    browser.open(&family.at("/papers/tray/add")).await;
    for (name, bytes) in files {
        browser.attach_named(FIELD, name, bytes);
    }
    browser.press("Put them in the tray").await.answers(200);
}

async fn file(browser: &mut Browser, family: &Family, (id, kind, title): (u32, &str, &str)) {
    browser.open(&family.at(&format!("/papers/{id}/file"))).await;
    browser.fill("Kind", kind).fill("Title", title).press("File it").await.answers(200);
}

#[tokio::test]
async fn a_pile_arrives_at_once_and_is_filed_one_after_the_other() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/papers"))
        .await
        .sees("What is on paper belongs here")
        .press("Tray")
        .await;
    ines.sees("Nothing waits here").press("Put papers in the tray").await;
    ines.press("Put them in the tray")
        .await
        .answers(422)
        .sees("Choose one or more photos or PDFs.");
    let pile = [
        ("card front.png", picture(1)),
        ("card back.png", picture(2)),
        ("scan0001.pdf", pdf("first", "")),
    ];
    put_in(&mut ines, &family, &pile).await;
    ines.sees("3 of 3 put in the tray").sees("card front.png").sees("scan0001.pdf");
    ines.sees("3 papers wait in the tray.").does_not_see("Not kept");

    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.press("3 papers wait in the tray").await;
    bram.sees("In the order they came").sees("from Ines").does_not_see("the last one is filed");
    assert_eq!(bram.value("Papers a day"), "15");
    bram.press("When is it done?")
        .await
        .sees("At 15 a day the last one is filed on Wed 25 Nov 2026");
    bram.fill("Papers a day", "2").press("When is it done?").await;
    bram.sees("At 2 a day the last one is filed on Thu 26 Nov 2026");
    bram.fill("Papers a day", "none").press("When is it done?").await.sees("“none” was not read.");

    // The card has two sides: one paper, in an order, the back turned the right way up.
    bram.press("File the first").await.sees("It is one of 3 in the tray.");
    bram.press("Turn, order or join its pages").await.press("Join further pages").await;
    bram.does_not_see("scan0001.pdf").press("Join them").await.answers(422);
    bram.sees("Tick what belongs to this paper.").tick("card back.png").press("Join them").await;
    bram.answers(200).sees("Joined; it has 2 pages now").sees("Page 2 of 2");
    bram.press("Turn page 2").await.sees("Turned a quarter");
    assert!(String::from_utf8_lossy(&bram.body).contains("scan turned-90"));
    bram.press("Earlier page 2").await.sees("The pages are in another order");
    bram.get(&family.at("/papers/1/pages/2")).await.answers(200);
    assert_eq!(bram.headers["content-disposition"], "inline; filename=\"paper-1-page-1.png\"");
    assert_eq!(bram.body, picture(2), "turned, and still as it was sent");
    bram.open(&family.at("/papers/2")).await.sees("Its pages are part of card front.png now.");

    // One decision, and the next is offered.
    bram.open(&family.at("/papers/1")).await.press("File it").await;
    bram.press("File it").await.answers(422).sees("Choose one of these.");
    bram.sees("Enter a title by which the others find it.");
    bram.fill("Kind", "insurance card").fill("Title", "Medicare card").fill("Note", "both sides");
    bram.fill("Where the original is", "elsewhere").press("File it").await.answers(422);
    bram.sees("Say where the original is.").fill("In words", "the brown purse");
    bram.press("File it").await.answers(200).sees("Filed Medicare card. 1 more waits");
    bram.sees("What is this paper?").sees("It is the only one in the tray.");
    bram.fill("Kind", "letter").fill("Title", "Letter of the clinic");
    bram.fill("Date on the paper", "3 Mar 2026").fill("Or a name", "Lakeshore Hospital");
    bram.press("File it").await.answers(200).sees("Filed Letter of the clinic. The tray is empty");
    ines.open(&family.at("/today")).await.does_not_see("in the tray");

    ines.open(&family.at("/papers")).await.sees("Insurance card").sees("Medicare card");
    ines.sees("original elsewhere: the brown purse")
        .sees("from Lakeshore Hospital · dated 3 March 2026");
    ines.press("By date").await.sees("2026").sees("letter · from Lakeshore Hospital");
    ines.press("Medicare card").await.sees("both sides").sees("by Bram").sees("Page 2 of 2");

    // Half a card again: the page waits as a paper of its own.
    ines.press("Split off page 2").await.sees("waits in the tray").does_not_see("Page 2 of 2");
    ines.open(&family.at("/papers/tray")).await.sees("1 paper waits");
    ines.open(&family.at("/history")).await.sees("Bram filed Medicare card as insurance card");
    ines.sees("Bram joined card back.png to another paper, as pages of that");
    ines.sees("Ines put in the tray card front.png").sees("Bram opened");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_newer_version_takes_the_place_and_the_old_one_says_by_which() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    put_in(
        &mut ines,
        &family,
        &[("a.pdf", pdf("a", "")), ("b.pdf", pdf("b", "")), ("c.pdf", pdf("c", ""))],
    )
    .await;
    file(&mut ines, &family, (1, "insurance card", "Card of 2025")).await;
    ines.open(&family.at("/papers/2/file")).await.fill("Kind", "insurance card");
    ines.fill("Title", "Card of 2026").fill("It is a newer version of", "1").press("File it").await;
    ines.answers(200).open(&family.at("/papers/1")).await;
    ines.sees("A newer version is in its place: Card of 2026").press("Card of 2026").await;
    ines.sees("in the place of").sees("Card of 2025");
    ines.open(&family.at("/papers")).await.sees("Older versions").sees("Card of 2025");
    ines.open(&family.at("/history/paper/1")).await;
    ines.sees("Ines said that a newer version is in the place of Card of 2025");

    // It was a mistake: both stand, and the other way is said later.
    ines.open(&family.at("/papers/1")).await.press("It stands again").await;
    ines.press("It stands again")
        .await
        .answers(200)
        .does_not_see("A newer version is in its place");
    ines.press("A newer version came").await.press("Replace by a newer version").await.answers(422);
    ines.sees("Choose the newer version.").fill("By which paper", "2");
    ines.press("Replace by a newer version").await.answers(200).sees("it stays, and says by which");
    // Nothing stands in the place of what does not stand itself.
    ines.open(&family.at("/papers/2/replace")).await;
    let (_, address, mut form) = ines.pressed("Replace by a newer version");
    form.iter_mut().filter(|it| it.0 == "replaced_by").for_each(|it| it.1 = "1".into());
    ines.send(&address, &form).await.answers(422).sees("Choose the newer version.");

    // A photo of the table is struck out of the tray, and comes back.
    ines.open(&family.at("/papers/3")).await.press("Entered by mistake").await;
    ines.fill("What was wrong with it", "the table").press("Strike").await.answers(200);
    ines.sees("Struck; its history keeps it").sees("Nothing waits here");
    ines.get(&family.at("/papers/3/file")).await.answers(404);
    ines.open(&family.at("/history/paper/3")).await.sees("struck as a mistake");
    ines.open(&family.at("/papers/3")).await.sees("the table").press("Bring back").await;
    ines.press("Bring back").await.answers(200).sees("waits in the tray");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_paper_that_lapses_stands_on_today_and_two_who_put_it_right_lose_nothing() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    put_in(&mut ines, &family, &[("a.png", picture(1))]).await;
    ines.open(&family.at("/papers/1/file")).await.fill("Kind", "identity card");
    ines.fill("Title", "Placard").fill("Date on the paper", "26 Nov 2026").press("File it").await;
    ines.answers(422).sees("This day has not come yet.").fill("Date on the paper", "2 Dec 2022");
    ines.fill("Holds until", "1 Dec 2022").press("File it").await.answers(422);
    ines.sees("This is before the date on the paper.").fill("Holds until", "2 Dec 2026");
    ines.press("File it").await.answers(200);
    bram.open(&family.at("/today")).await.press("Placard lapses in 7 days").await;
    bram.sees("holds until 2 December 2026: lapses in 7 days");
    bram.open(&family.at("/papers")).await.sees("Lapsed, or soon").sees("lapses in 7 days");

    bram.open(&family.at("/papers/1/file")).await;
    ines.open(&family.at("/papers/1/file")).await.fill("Holds until", "2 Dec 2030");
    ines.press("Save").await.answers(200);
    bram.fill("Title", "Parking placard").press("Save").await.answers(409);
    bram.sees("Someone changed this meanwhile").sees("2 December 2030");
    bram.press("Save").await.answers(200).sees("Parking placard").sees("2 December 2026");
    family.house.pass(Duration::days(8));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("Parking placard lapsed yesterday");
    ines.open(&family.at("/papers")).await.sees("lapsed yesterday");
    family.house.pass(Duration::days(30));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.does_not_see("Parking placard lapsed");
    ines.open(&family.at("/papers")).await.sees("lapsed 4 weeks ago");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_opening_is_told_once_an_hour_and_stays_told() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    put_in(&mut ines, &family, &[("a.png", picture(1))]).await;
    let opened = |browser: &mut Browser| browser.text().matches("Bram opened a.png").count();
    for _ in 0..3 {
        bram.get(&family.at("/papers/1/pages/1")).await.answers(200);
    }
    ines.open(&family.at("/history")).await;
    assert_eq!(opened(&mut ines), 1);
    family.house.pass(Duration::minutes(61));
    bram.get(&family.at("/papers/1/pages/1")).await.answers(200);
    ines.open(&family.at("/history")).await;
    assert_eq!(opened(&mut ines), 2);
    // To have opened is no change for the others to read.
    ines.open(&family.at("/today")).await.does_not_see("Bram opened");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_same_file_is_kept_once_also_when_two_send_it_at_once() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    for browser in [&mut ines, &mut bram] {
        browser.open(&family.at("/papers/tray/add")).await;
        browser.attach_named(FIELD, "card.png", &picture(1));
        browser.attach_named(FIELD, "card (1).png", &picture(1));
    }
    tokio::join!(ines.press("Put them in the tray"), bram.press("Put them in the tray"));
    let told = format!("{} {}", ines.text(), bram.text());
    assert_eq!(told.matches("1 of 2 put in the tray").count(), 1, "{told}");
    assert_eq!(told.matches("0 of 2 put in the tray").count(), 1, "{told}");
    assert_eq!(told.matches("is the same file, byte for byte. It waits in the tray.").count(), 3);
    ines.open(&family.at("/papers/tray")).await.sees("1 paper waits in the tray.");
    file(&mut ines, &family, (1, "other", "Card")).await;
    put_in(&mut bram, &family, &[("again.png", picture(1))]).await;
    bram.sees("again.png is the same file, byte for byte. It is filed.").press("Card").await;
    bram.answers(200).sees("kind other");
    // What became of a pile is for the one who sent it.
    ines.get(&family.at("/papers/tray/arrived/3")).await.answers(404);
    family.house.is_sound().await;
}
