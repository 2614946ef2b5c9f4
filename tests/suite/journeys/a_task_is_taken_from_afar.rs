//! A task from hand to hand: one writes it down, another takes it from another city, hands it over
//! with the other's yes, and it is done with what shows it; the next of a repeating one appears.

use crate::support::{Browser, Family};
use time::Duration;

const PLACARD: &str = "Renew the parking placard";

/// The first bytes of a PNG of 640 by 480 (ISO/IEC 15948, 5.2 and 11.2.2): enough to be a photo.
fn photo() -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    bytes.extend([0, 0, 2, 128, 0, 0, 1, 224, 8, 2, 0, 0, 0, 0, 0, 0, 0]);
    bytes
}

async fn placard(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/tasks")).await.sees("What is to be done belongs here");
    ines.press("Write down a task").await.press("Keep the task").await.answers(422);
    ines.sees("Write what is to be done.");
    ines.fill("What is to be done", PLACARD).fill("By which day", "5 Dec 2026");
    ines.tick("It must be done by then").tick("It can be done from afar");
    ines.press("Keep the task").await.answers(200).sees("Kept. Who takes it?");
    ines.sees("nobody has it").sees("must be done by Sat 5 Dec 2026").sees("from afar");
}

async fn asks(browser: &mut Browser, family: &Family, (task, whom): (i64, &str)) {
    let page = family.at(&format!("/tasks/{task}"));
    browser.open(&page).await.press("Ask someone to take it").await;
    browser.fill("Whom do you ask", whom).press("Ask someone to take it").await.answers(200);
}

#[tokio::test]
async fn one_makes_it_another_takes_it_and_hands_it_over_with_the_others_yes() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    placard(&mut ines, &family).await;
    bram.open(&family.at("/today")).await.sees("Nobody has it: Renew the parking placard");
    bram.open(&family.at("/tasks")).await.press("From afar").await.sees(PLACARD);
    bram.press("I take it : Renew the parking placard").await.answers(200);
    bram.sees("Your name stands beside it").does_not_see("nobody has it");
    ines.open(&family.at("/today")).await.does_not_see("Nobody has it");
    ines.open(&family.at("/tasks")).await.sees("with Bram");

    asks(&mut bram, &family, (1, "2")).await;
    bram.sees("Ines is asked to take it").sees("no answer yet");
    ines.open(&family.at("/today")).await;
    ines.press("Bram asks you to take: Renew the parking placard").await;
    ines.sees("Bram asks you to take it.").press("No, I can not").await;
    ines.press("No, I can not").await.answers(422).sees("Enter why, in a few words.");
    ines.fill("Why", "away that week").press("No, I can not").await.answers(200);
    ines.sees("You said no; it stays where it is");
    bram.open(&family.at("/today")).await.sees("Ines said no: Renew the parking placard");
    bram.open(&family.at("/tasks/1")).await.sees("Ines: away that week");

    asks(&mut bram, &family, (1, "1")).await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/tasks")).await.sees("You are asked");
    ottoline.press("Yes, I take it : Renew the parking placard").await.answers(200);
    ottoline.sees("You said yes; it is yours");
    bram.get(&family.at("/tasks/1/give-back")).await.answers(403);
    done_with_a_photo(&mut ottoline, &family).await;
    told(&mut ines, &family).await;
    family.house.is_sound().await;
}

async fn done_with_a_photo(ottoline: &mut Browser, family: &Family) {
    ottoline.open(&family.at("/tasks/1")).await.press("It is done").await;
    ottoline.attach("A photo", &photo()).fill("Done on which day", "26 Nov 2026");
    ottoline.press("It is done").await.answers(422).sees("This day has not come yet.");
    ottoline.sees("The photo you chose has arrived").fill("Done on which day", "25 Nov 2026");
    ottoline.fill("What shows it, in a few words", "The new one is in the glove box");
    ottoline.press("It is done").await.answers(200).sees("The new one is in the glove box");
    ottoline.get(&family.at("/tasks/1/photo")).await.answers(200);
    assert_eq!(ottoline.body, photo());
    ottoline.open(&family.at("/tasks")).await.sees("done Wed 25 Nov 2026");
    ottoline.press("Everything that was done, or let go").await.sees("in the glove box");
}

async fn told(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/history")).await;
    for says in [
        "Ines wrote down the task Renew the parking placard that must be done by 5 December 2026",
        "Bram took Renew the parking placard",
        "Bram offered Renew the parking placard to Ines",
        "Ines said no to Renew the parking placard because: away that week",
        "Ottoline said yes to Renew the parking placard asked by Bram",
        "Ottoline finished Renew the parking placard on 25 November 2026, with a photo: The new one",
    ] {
        ines.sees(says);
    }
}

#[tokio::test]
async fn two_take_it_at_once_and_the_second_is_told_who_has_it() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    placard(&mut ines, &family).await;
    bram.open(&family.at("/tasks")).await;
    ines.open(&family.at("/tasks")).await;
    bram.press("I take it : Renew the parking placard").await.answers(200);
    ines.press("I take it : Renew the parking placard").await.answers(409);
    ines.sees("Someone was faster").sees("Bram took it.").does_not_see("Your name then stands");
    ines.press("See the task").await.answers(200).sees("Bram");
    // Whoever was not asked, or is not any more, says no yes.
    let form = [("version".to_owned(), "2".to_owned())];
    ines.send(&family.at("/tasks/1/accept"), &form).await.answers(409);
    ines.sees("You are not asked to take it any more.");
    // Done twice at once: the second reads what has become of it.
    ines.open(&family.at("/tasks/1/finish")).await;
    bram.open(&family.at("/tasks/1/finish")).await.press("It is done").await.answers(200);
    ines.fill("What shows it, in a few words", "by phone").press("It is done").await.answers(409);
    ines.sees("Bram wrote down that it was done on Wed 25 Nov 2026.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_next_of_a_repeating_one_appears_once() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/tasks/add")).await.fill("What is to be done", "Fetch the tablets");
    ines.fill("Comes again every", "1").fill("Days, weeks, months or years", "months");
    ines.press("Keep the task").await.answers(422).sees("Enter the day it is due first");
    ines.fill("By which day", "31 Oct 2026").fill("Comes again every", "0");
    ines.press("Keep the task").await.answers(422).sees("a whole number from 1 to 99");
    ines.fill("Comes again every", "1").press("Keep the task").await.answers(200);
    ines.sees("every month. In a month without a 31st it is due on the last day.");
    ines.sees("overdue").sees("best by Sat 31 Oct 2026");
    ines.open(&family.at("/today")).await;
    ines.sees("Was due on Sat 31 Oct 2026: Fetch the tablets (nobody has it)");
    ines.open(&family.at("/tasks?show=overdue")).await;
    ines.press("I take it : Fetch the tablets").await.press("It is done").await;
    ines.sees("It comes again every month");
    let (_, address, form) = ines.pressed("It is done");
    ines.press("It is done").await.answers(200);
    ines.sees("Done. The next one is due on Mon 30 Nov 2026");
    ines.send(&address, &form).await.answers(303);
    ines.open(&family.at("/tasks/2")).await.sees("best by Mon 30 Nov 2026").sees("Ines");
    ines.get(&family.at("/tasks/3")).await.answers(404);
    ines.open(&family.at("/today")).await.sees("best done · Fetch the tablets with Ines");

    // Opened again and done again: the next stands already.
    ines.open(&family.at("/tasks/1")).await.press("Open again").await.press("Open again").await;
    ines.answers(200).press("It is done").await.does_not_see("It comes again every month:");
    ines.press("It is done").await.answers(200).sees("the next one").sees("Mon 30 Nov 2026");
    ines.get(&family.at("/tasks/3")).await.answers(404);
    // The next one is not to stay with her.
    ines.open(&family.at("/tasks/2")).await.press("It is done").await;
    ines.untick("The next one stays with Ines").press("It is done").await.answers(200);
    ines.open(&family.at("/tasks/3")).await.sees("Thu 31 Dec 2026").sees("nobody has it");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines wrote down the next time of the task Fetch the tablets");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_put_off_comes_back_by_itself_and_what_waits_asks_again() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    placard(&mut ines, &family).await;
    ines.open(&family.at("/tasks/1")).await.press("Put it off").await;
    ines.fill("Until which day", "25 Nov 2026").press("Put it off").await.answers(422);
    ines.sees("Enter a day after today.").fill("Until which day", "6 Dec 2026");
    ines.press("Put it off").await.answers(422).sees("It must be done by Sat 5 Dec 2026.");
    ines.fill("Until which day", "27 Nov 2026").fill("Why, if you like", "the office is closed");
    ines.press("Put it off").await.answers(200).sees("until Fri 27 Nov 2026: the office is closed");
    ines.open(&family.at("/tasks")).await.sees("Put off, comes back by itself");
    ines.does_not_see("I take it");
    ines.open(&family.at("/today")).await.does_not_see("Nobody has it");

    ines.open(&family.at("/tasks/add")).await.fill("What is to be done", "A grab bar in the bath");
    ines.press("Keep the task").await.press("It waits").await.press("It waits").await.answers(422);
    ines.fill("On whom or what it waits", "the joiner").fill("When to ask again", "27 Nov 2026");
    ines.press("It waits").await.answers(200).sees("the joiner; ask again on Fri 27 Nov 2026");
    ines.open(&family.at("/tasks")).await.sees("waits on the joiner, until Fri 27 Nov 2026");
    ines.open(&family.at("/today")).await.does_not_see("Ask again");

    family.house.pass(Duration::days(2));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("Nobody has it: Renew the parking placard");
    ines.sees("Ask again, the joiner: A grab bar in the bath");
    ines.open(&family.at("/tasks/2")).await.sees("time to ask again");
    ines.press("It waits no longer").await.press("It waits no longer").await.answers(200);
    ines.press("Give it back").await.press("Give it back").await.answers(200).sees("nobody has it");
    ines.press("Let it go").await.fill("Why", "there is one").press("Let it go").await.answers(200);
    ines.sees("there is one").open(&family.at("/history")).await;
    ines.sees(
        "Ines put off Renew the parking placard until 27 November 2026: the office is closed",
    );
    ines.sees("Ines said of A grab bar in the bath that it waits on the joiner, until 27 November");
    ines.sees("Ines let go of the task A grab bar in the bath with the reason: there is one");
    family.house.is_sound().await;
}
