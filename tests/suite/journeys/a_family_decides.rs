//! Something is put up, a meeting goes through it, it is decided with the person's own words and by
//! a stated right, and it comes back on its day. Who sees no members sees no decisions.

use crate::support::{Browser, Family};
use time::Duration;

async fn put_up(browser: &mut Browser, family: &Family, matter: &str) {
    browser.open(&family.at("/decisions/add")).await.fill("What is to be decided", matter);
    browser.press("Put it up").await.answers(200).sees("It stands among the open ones");
}

/// With all that is needed but what the person said.
fn decided(browser: &mut Browser, what: &str) {
    browser.fill("What was decided", what).fill("Why", "The stairs are steep");
    browser.fill("Who decides", "Ines").tick("by power of attorney for health care");
}

#[tokio::test]
async fn what_is_put_up_is_decided_after_a_meeting_and_looked_at_again() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    bram.open(&family.at("/decisions")).await.sees("What the family has to decide belongs here");
    put_up(&mut ines, &family, "Whether the bedroom moves downstairs").await;
    put_up(&mut bram, &family, "Who comes on Sundays").await;

    // The meeting has both, in an order that is set with buttons, or by day.
    bram.open(&family.at("/decisions/meeting")).await.sees("1. Whether the bedroom");
    let (_, to, form) = bram.pressed("Move Who comes on Sundays earlier");
    bram.send(&to, &form).await;
    bram.open(&family.at("/decisions/meeting")).await.sees("1. Who comes on Sundays");
    bram.send(&to, &form).await;
    bram.open(&family.at("/decisions/meeting")).await.sees("1. Who comes on Sundays");
    ines.open(&family.at("/decisions/meeting?by=day")).await.does_not_see("Move");

    // Decided from there: nothing goes without what she said, or why she was not asked.
    ines.open(&family.at("/decisions/meeting")).await;
    ines.press("Decide : Whether the bedroom moves downstairs").await.press("Write it down").await;
    ines.answers(422).sees("Write what was decided.").sees("Enter who decides.");
    ines.sees("Write what the person said of it, or below why there was no asking.");
    decided(&mut ines, "It moves in spring");
    ines.fill("What the person said of it", "Leave me my window.");
    ines.fill("The person was not asked, because", "asleep").tick("Bram");
    ines.press("Write it down").await.answers(422).sees("Leave this empty, or the other.");
    assert_eq!(ines.value("What was decided"), "It moves in spring");
    ines.fill("The person was not asked, because", "").fill("Look again on", "1 Dec 2026");
    ines.press("Write it down").await.answers(200);
    ines.sees("Ottoline Varga said").sees("Leave me my window.").sees("Bram");
    ines.sees("Ines, by power of attorney for health care (as it was stated)");
    ines.sees("Who may decide what differs by state");
    bram.open(&family.at("/history")).await;
    bram.sees("Ines wrote down the decision on Whether the bedroom moves downstairs");
    bram.sees("decided by Ines, by power of attorney for health care").sees("It moves in spring");

    // On its day it stands on Today and in the meeting; after a word on it no more.
    bram.open(&family.at("/today")).await.does_not_see("Look again:");
    bram.open(&family.at("/decisions/meeting")).await.does_not_see("bedroom");
    family.house.pass(Duration::days(6));
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today"))
        .await
        .press("Look again: Whether the bedroom moves downstairs")
        .await;
    bram.sees("the day to look again has come");
    bram.open(&family.at("/decisions/meeting"))
        .await
        .sees("look again: the day was 1 December 2026");
    bram.open(&family.at("/decisions/1/look-again")).await.fill("Look again on", "1 Dec 2026");
    bram.press("It stays as it is").await.answers(422).sees("This day is not ahead.");
    bram.fill("Look again on", "").press("It stays as it is").await.answers(200).sees("no set day");
    bram.open(&family.at("/today")).await.does_not_see("Look again:");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_decision_is_replaced_or_withdrawn_and_comes_back_as_it_stood() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (at, matter) in [(1, "Where the papers lie"), (2, "Where the keys lie")] {
        put_up(&mut ines, &family, matter).await;
        ines.press("Decide").await;
        decided(&mut ines, "At the neighbor's");
        ines.fill("The person was not asked, because", "she was in hospital");
        ines.press("Write it down").await.answers(200);
        ines.open(&family.at(&format!("/decisions/{at}"))).await.sees("was not asked, because");
    }
    put_up(&mut ines, &family, "Whether the dog stays").await;
    ines.open(&family.at("/decisions/3/replace")).await.answers(404);
    ines.open(&family.at("/decisions/1/replace")).await.press("Replace by another").await;
    ines.answers(422).fill("By which decision", "2").press("Replace by another").await;
    ines.answers(200).sees("replaced by another").press("Where the keys lie").await;
    ines.open(&family.at("/decisions/1")).await.press("Bring back").await.press("Bring back").await;
    ines.answers(200).sees("decided 25 November 2026").does_not_see("replaced");
    ines.open(&family.at("/decisions/3")).await.press("Withdraw").await.press("Withdraw").await;
    ines.answers(422).fill("Why it is withdrawn", "there is no dog").press("Withdraw").await;
    ines.answers(200).sees("there is no dog");
    ines.open(&family.at("/decisions/meeting")).await.sees("Nothing is to be decided");
    ines.open(&family.at("/decisions/3")).await.press("Bring back").await.press("Bring back").await;
    ines.answers(200).sees("to be decided");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_decision_is_not_there_for_an_aide_nor_for_whom_it_is_hidden_from() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    put_up(&mut ines, &family, "Whether Delia comes less").await;
    let mut bram = family.browser("Bram").await;
    for who in ["Delia", "Rosalind"] {
        let mut browser = family.browser(who).await;
        for page in ["/decisions", "/decisions/1", "/decisions/add", "/decisions/meeting"] {
            browser.get(&family.at(page)).await.answers(404);
        }
        browser.open(&family.at("/today")).await.does_not_see("comes less");
    }
    bram.open(&family.at("/history")).await.sees("Whether Delia comes less");
    ines.open(&family.at("/decisions/1")).await.press("Who sees this").await.tick("Bram");
    ines.press("Save").await.answers(200);
    for page in ["/decisions", "/decisions/meeting", "/history", "/today"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Whether Delia comes less");
    }
    bram.get(&family.at("/decisions/1")).await.answers(404);
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/decisions")).await.sees("Whether Delia comes less");
    family.house.is_sound().await;
}
