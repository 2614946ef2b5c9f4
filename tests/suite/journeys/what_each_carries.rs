//! What each carries: each writes down her own, the sums stand by the names in their order, and who
//! does not wish to be shown is given away by no page, no sum and no line of the history.

use crate::support::{Browser, Family};

/// Kind, hours, words.
async fn carries(browser: &mut Browser, family: &Family, (kind, hours, words): (&str, &str, &str)) {
    browser.open(&family.at("/carried/add")).await.tick(kind).fill("How many hours", hours);
    browser.fill("In a few words", words).press("Keep it").await.answers(200).sees("Kept:");
}

#[tokio::test]
async fn each_writes_her_own_and_the_names_stand_in_their_order() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/tasks")).await.press("What each carries").await.answers(200);
    ines.sees("Nothing is written down from Thu 29 Oct 2026 to Wed 25 Nov 2026.");
    carries(&mut ines, &family, ("hours", "9", "the clinic and back")).await;
    carries(&mut bram, &family, ("hours", "1", "the insurer on the phone")).await;
    bram.open(&family.at("/carried/add")).await.tick("travel").press("Keep it").await.answers(422);
    bram.sees("Enter how long it took").fill("How many hours", "25").press("Keep it").await;
    bram.answers(422).sees("Enter a whole number up to 24").fill("How many hours", "4");
    bram.fill("and minutes", "30")
        .fill("How many miles", "1700")
        .press("Keep it")
        .await
        .answers(200);
    bram.sees("Travel Bram 1 way, 4 hours 30 minutes; 1700 miles where miles were noted");
    bram.sees("Hours Bram 1 hour on 1 day Ines 9 hours on 1 day together 10 hours on 1 day");
    // His own alone: nobody else puts it right.
    ines.open(&family.at("/carried/2")).await.sees("the insurer").does_not_see("Put it right");
    ines.get(&family.at("/carried/2/edit")).await.answers(403);
    bram.open(&family.at("/carried/2")).await.press("Put it right").await;
    assert_eq!(bram.value("How many hours"), "1");
    bram.fill("On which day", "26 Nov 2026").press("Save").await.answers(422);
    bram.sees("This day has not come yet.").fill("On which day", "1 Oct 2026").press("Save").await;
    bram.open(&family.at("/carried")).await.does_not_see("Bram 1 hour");
    bram.open(&family.at("/carried?from=1+Oct+2026&to=2+Oct+2026"))
        .await
        .sees("Bram 1 hour on 1 day");
    bram.open(&family.at("/carried?from=soon&to=")).await.sees("“soon” was not read.");
    bram.open(&family.at("/carried/2/strike")).await.fill("What was mistaken", "twice");
    bram.press("Strike").await.answers(200).sees("struck").press("Bring back").await;
    bram.press("Bring back").await.answers(200).sees("It counts again");
    ines.open(&family.at("/history")).await;
    ines.sees("Bram wrote down travel: 4 hours 30 minutes, 1700 miles on Wed 25 Nov 2026");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_steward_writes_for_one_who_does_not_sign_in_and_it_says_so() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/carried/add")).await.tick("a night");
    ines.fill("Who did it, if not you", "Emeric").press("Keep it").await.answers(200);
    bram.open(&family.at("/carried")).await.sees("Emeric 1 night").sees("who does not sign in");
    bram.open(&family.at("/carried/1")).await.sees("by Ines").does_not_see("Put it right");
    bram.open(&family.at("/history")).await;
    bram.sees("Ines wrote down a night on Wed 25 Nov 2026 of Emeric, who does not sign in");
    bram.open(&family.at("/carried/add")).await.does_not_see("Who did it, if not you");
    let (_, address, mut form) = bram.pressed("Keep it");
    form.retain(|it| it.0 != "kind");
    form.extend([("kind".into(), "a night".into()), ("name".into(), "Juno".into())]);
    bram.send(&address, &form).await.answers(422);
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_does_not_wish_to_be_shown_is_given_away_by_nothing() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    carries(&mut ines, &family, ("hours", "9", "the clinic")).await;
    carries(&mut bram, &family, ("hours", "1", "the insurer")).await;
    let mut ottoline = family.browser("Ottoline").await;
    carries(&mut ottoline, &family, ("hours", "2", "my own papers")).await;
    bram.open(&family.at("/carried/wish")).await.tick("it is not to be shown");
    bram.press("Save").await.answers(200).sees("Your entries are there for you alone");
    bram.sees("Bram 1 hour").sees("as you said on Wed 25 Nov 2026").does_not_see("together 1");
    for browser in [&mut ines, &mut ottoline] {
        browser.open(&family.at("/carried")).await.sees("Ines 9 hours").does_not_see("Bram");
        browser.sees("because not everyone wishes to be shown").does_not_see("together 1");
        browser.get(&family.at("/carried/2")).await.answers(404);
        browser.get(&family.at("/history/carried/2")).await.answers(404);
        browser.open(&family.at("/history")).await.does_not_see("1 hour on");
        browser.does_not_see("Bram wrote down");
        browser.open(&family.at("/today")).await.does_not_see("1 hour on");
    }
    bram.open(&family.at("/history")).await.sees("Bram wrote down about what each carries that it");

    // The person wishes that none of it is shown; a steward enters it with who said so.
    ines.open(&family.at("/carried/wish-of-all")).await.tick("it is not to be shown");
    ines.press("Save").await.answers(422).sees("Enter who said so, and how.");
    ines.fill("Who said so, and how", "Ottoline, at the kitchen table");
    ines.press("Save").await.answers(200).sees("None of it is shown");
    ines.sees("Ottoline, at the kitchen table said on Wed 25 Nov 2026 that none of this is to be");
    ines.sees("Ines 9 hours").does_not_see("Ottoline 2 hours").does_not_see("together");
    ottoline.open(&family.at("/carried")).await.does_not_see("Ines 9").sees("Ottoline 2 hours");
    ottoline.get(&family.at("/carried/1")).await.answers(404);
    bram.get(&family.at("/carried/wish-of-all")).await.answers(403);
    ottoline.open(&family.at("/carried/wish-of-all")).await.tick("it may be shown");
    ottoline.press("Save").await.answers(200).sees("Ines 9 hours");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_aide_sees_her_own_and_a_reader_nothing() {
    let family = Family::new().await;
    let (mut ines, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    carries(&mut ines, &family, ("hours", "9", "the clinic")).await;
    carries(&mut delia, &family, ("hours", "3", "Tuesday morning")).await;
    delia.sees("You see here what you wrote down yourself.").sees("Delia 3 hours");
    delia.does_not_see("Ines 9 hours").does_not_see("together");
    delia.get(&family.at("/carried/1")).await.answers(404);
    ines.open(&family.at("/carried")).await.sees("Delia 3 hours").sees("together 12 hours");
    let mut rosalind = family.browser("Rosalind").await;
    rosalind.get(&family.at("/carried")).await.answers(404);
    rosalind.open(&family.at("/tasks")).await.does_not_see("What each carries");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_page_names_what_can_be_taken_and_whom_to_phone() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/carried")).await.sees("No number for respite care or a crisis line");
    ines.sees("In an emergency call 911");
    for (name, kind) in [("Harbor House", "respite care"), ("The night line", "crisis line")] {
        ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Kind", kind);
        ines.fill("Phone", "218-555-0166").press("Add this contact").await.answers(200);
    }
    ines.open(&family.at("/tasks/add")).await.fill("What is to be done", "Phone the insurer");
    ines.tick("It can be done from afar").press("Keep the task").await.answers(200);
    ines.open(&family.at("/tasks/add")).await.fill("What is to be done", "Clear the gutters");
    ines.press("Keep the task").await.answers(200);
    ines.open(&family.at("/edit")).await.fill("Emergency number", "112").press("Save").await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/carried")).await.sees("respite care Harbor House 218-555-0166");
    bram.sees("crisis line The night line").sees("In an emergency call 112");
    bram.does_not_see("Clear the gutters")
        .press("I take it : Phone the insurer")
        .await
        .answers(200);
    bram.open(&family.at("/carried")).await.does_not_see("Phone the insurer");
    // One that is hidden from him is not there either.
    ines.open(&family.at("/visibility/contact/1")).await.tick("Bram").press("Save").await;
    bram.open(&family.at("/carried")).await.does_not_see("Harbor House");
    family.house.is_sound().await;
}
