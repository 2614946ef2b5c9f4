//! A family writes down which directive stands, where its original is and whom to phone; an older one
//! is superseded, and exactly those who have a copy of it are to be told. Two that disagree are both
//! named, and nothing says which is right.

use crate::support::{Browser, Family, html};

/// Each with a number that tells her from the others.
async fn contacts(ines: &mut Browser, family: &Family) {
    for (name, phone) in [
        ("Ines Varga", "218-555-0101"),
        ("Juno Varga", "617-555-0103"),
        ("Dr Lind", "218-555-0120"),
    ] {
        ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Phone", phone);
        ines.press("Add this contact").await.answers(200);
    }
}

/// A power of attorney for health care with this agent.
async fn power(ines: &mut Browser, family: &Family, agent: &str, on: &str) {
    ines.open(&family.at("/directives/add")).await.tick("power of attorney for health care");
    ines.fill("Whose form it is", "Minnesota").fill("Signed on", on).fill("Agent", agent);
    ines.fill("Where the original is", "the blue folder in the hall");
}

/// What the block of the directives on the emergency sheet says.
async fn on_the_sheet(browser: &mut Browser, family: &Family) -> String {
    browser.open(&family.at("/sheets/emergency")).await.answers(200);
    let page = browser.page();
    let mut found = html::select(&page, "main section").into_iter().map(html::text);
    found.find(|it| it.starts_with("Directives")).unwrap_or_default()
}

#[tokio::test]
async fn a_newer_one_takes_the_place_and_exactly_the_copy_holders_are_to_be_told() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    contacts(&mut ines, &family).await;
    power(&mut ines, &family, "2", "3 May 2019").await;
    ines.press("Add this directive").await.answers(200);
    ines.sees("Power of attorney for health care of 3 May 2019").sees("617-555-0103");
    for (contact, words, on) in [("3", "", "4 May 2019"), ("", "the glove box", "")] {
        ines.open(&family.at("/directives/1/copies/add")).await.fill("Who has it", contact);
        ines.fill("Or in words", words).fill("Given on", on);
        ines.press("Write it down").await.answers(200);
    }
    ines.open(&family.at("/directives")).await.does_not_see("To be told");

    power(&mut ines, &family, "1", "12 Apr 2022").await;
    ines.fill("Alternate agent", "1").press("Add this directive").await.answers(422);
    ines.sees("This one is named twice.").fill("Alternate agent", "2");
    ines.tick("as the paper says, in these words");
    ines.press("Add this directive").await.answers(422).sees("Enter what the paper says");
    ines.tick("when a clinician finds that the person cannot decide");
    ines.fill("It takes the place of", "1").press("Add this directive").await.answers(200);
    ines.open(&family.at("/directives/2/copies/add")).await.fill("Who has it", "1");
    ines.press("Write it down").await.answers(200);

    ines.open(&family.at("/directives")).await.sees("1 in force, as far as the family knows");
    ines.sees("To be told that it does not hold any more 2");
    ines.sees("Dr Lind: has a copy of Power of attorney for health care of 3 May 2019");
    ines.sees("the glove box: has a copy of").does_not_see("Ines Varga: has a copy");
    ines.does_not_see("Two papers disagree");
    ines.open(&family.at("/today"))
        .await
        .sees("To be told that it does not hold any more: Dr Lind");
    ines.open(&family.at("/directives/copies/1/told")).await;
    ines.fill("How, and what becomes of the copy", "by phone; it comes back");
    ines.press("Was told").await.answers(200).sees("told on 25 November 2026: by phone");
    ines.open(&family.at("/directives")).await.does_not_see("Dr Lind: has a copy");
    ines.sees("the glove box: has a copy of");

    let sheet = on_the_sheet(&mut ines, &family).await;
    for words in [
        "signed 12 April 2022",
        "form of Minnesota",
        "Copy for information, not an order.",
        "the blue folder in the hall",
        "agent: Ines Varga",
        "218-555-0101",
        "alternate agent: Juno Varga",
        "617-555-0103",
    ] {
        assert!(sheet.contains(words), "{words:?} is not in {sheet}");
    }
    assert!(!sheet.contains("2019"), "what is superseded is on no sheet: {sheet}");
    ines.open(&family.at("/sheets/directives")).await.sees("218-555-0101");
    ines.sees("Copies given: Ines Varga").does_not_see("2019");
    ines.press("Print or save").await.answers(200);
    assert!(ines.body.starts_with(b"%PDF-1."));
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/history")).await.sees("wrote down as superseded by another:");
    bram.sees("Ines wrote down a copy given:");
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_that_disagree_are_both_named_until_one_does_not_hold() {
    let family = Family::new().await;
    let (mut ines, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    contacts(&mut ines, &family).await;
    power(&mut ines, &family, "2", "3 May 2019").await;
    ines.press("Add this directive").await.answers(200);
    power(&mut ines, &family, "1", "12 Apr 2022").await;
    ines.press("Add this directive").await.answers(200);
    let says = "Two papers disagree: show both to the clinician.";
    ines.open(&family.at("/directives")).await.sees(says).sees("they name different agents");
    // The aide has no such pages, and the lines of the sheet.
    delia.get(&family.at("/directives")).await.answers(404);
    let sheet = on_the_sheet(&mut delia, &family).await;
    assert!(sheet.contains(says) && sheet.contains("of 12 April 2022 and"), "{sheet}");
    assert!(sheet.contains("Ines Varga") && sheet.contains("Juno Varga"), "{sheet}");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.sees(says);
    bram.get(&family.at("/directives/1/void")).await.answers(403);

    ines.open(&family.at("/directives/1/void")).await.fill("Voided on", "26 Nov 2026");
    ines.fill("By whom", "Ottoline").fill("How", "torn up").press("It is voided").await;
    ines.answers(422).sees("This day has not come yet.").fill("Voided on", "1 Nov 2026");
    ines.press("It is voided").await.answers(200);
    ines.sees("voided on 1 November 2026 by Ottoline: torn up");
    let sheet = on_the_sheet(&mut ines, &family).await;
    assert!(!sheet.contains("2019") && !sheet.contains("disagree"), "{sheet}");
    ines.open(&family.at("/directives")).await.does_not_see(says);
    ines.open(&family.at("/directives/1")).await.press("It stands after all").await;
    ines.press("It stands after all").await.answers(200);
    ines.open(&family.at("/directives")).await.sees(says);

    // A mark of the family counts for papers of two kinds as well.
    ines.open(&family.at("/directives/1/strike")).await;
    ines.fill("What was wrong with the entry", "Emeric's").press("Strike").await.answers(200);
    ines.open(&family.at("/directives/add")).await.tick("living will");
    ines.press("Add this directive").await.answers(200);
    ines.open(&family.at("/directives")).await.does_not_see(says);
    ines.open(&family.at("/directives/3/differs")).await.fill("Than which other", "2");
    ines.fill("In what", "the hospital").press("Says something else than another").await;
    ines.answers(200).sees(says).sees("marked by the family: the hospital");
    ines.open(&family.at("/directives/3/differs")).await.fill("Than which other", "");
    ines.fill("In what", "").press("Says something else than another").await.answers(200);
    ines.does_not_see(says);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_draft_stands_nowhere_until_it_is_signed_and_an_agent_who_left_is_told() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    contacts(&mut ines, &family).await;
    power(&mut ines, &family, "3", "3 May 2022").await;
    ines.tick("nothing signed yet: a draft").press("Add this directive").await.answers(422);
    ines.sees("A draft has no day of signing.").fill("Signed on", "");
    ines.press("Add this directive").await.answers(200).sees("nothing signed yet: a draft");
    let none = "Directives None is in force, as far as the family knows";
    assert_eq!(on_the_sheet(&mut ines, &family).await, none);
    ines.open(&family.at("/directives/1")).await.press("It is signed").await;
    ines.fill("Signed on", "3 May 2022").fill("Witnesses", "Halvard Lind, Runa Holm");
    ines.press("It is signed").await.answers(200).sees("Halvard Lind, Runa Holm");
    ines.sees("Power of attorney for health care of 3 May 2022");
    // Named in it, and on the list no more.
    ines.open(&family.at("/contacts/3/strike")).await;
    ines.fill("Why it leaves the list", "moved away").press("Strike").await.answers(200);
    let amiss = "the agent, Dr Lind, is struck from the contacts";
    ines.open(&family.at("/directives")).await.sees(amiss);
    ines.open(&family.at("/today")).await.sees(amiss);
    assert!(on_the_sheet(&mut ines, &family).await.contains("struck from the contacts"));
    // She stays named when something else is put right.
    ines.open(&family.at("/directives/1/edit")).await.fill("Notary", "Tamsin Reyes");
    ines.press("Save").await.answers(200).sees("Tamsin Reyes").sees("Dr Lind");
    family.house.is_sound().await;
}

#[tokio::test]
async fn no_directives_is_said_by_someone_on_a_day_and_what_is_listed_wins() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let unasked = "Directives Not asked yet";
    assert_eq!(on_the_sheet(&mut ines, &family).await, unasked);
    ines.open(&family.at("/today")).await.sees("Directives: not asked yet");
    ines.open(&family.at("/directives")).await.press("Write down “no directives”").await;
    ines.press("Save").await.answers(422).sees("Enter who said that there are none.");
    ines.fill("Said by", "Ottoline").fill("On which day", "3 Mar 2026").press("Save").await;
    let said = "No directives, said by Ottoline on 3 March 2026";
    ines.answers(200).sees(said);
    assert_eq!(on_the_sheet(&mut ines, &family).await, format!("Directives {said}"));
    ines.open(&family.at("/today")).await.does_not_see("Directives: not asked yet");
    ines.open(&family.at("/directives/add")).await.tick("organ donation");
    ines.press("Add this directive").await.answers(200);
    ines.open(&family.at("/directives")).await.does_not_see(said);
    ines.open(&family.at("/directives/1/strike")).await;
    ines.fill("What was wrong with the entry", "Emeric's").press("Strike").await.answers(200);
    assert_eq!(on_the_sheet(&mut ines, &family).await, unasked);
    ines.open(&family.at("/directives/1")).await.press("Bring back").await;
    ines.press("Bring back").await.answers(200);
    assert!(on_the_sheet(&mut ines, &family).await.contains("Organ donation"));
    family.house.is_sound().await;
}

#[tokio::test]
async fn being_named_and_seeing_the_page_are_two_things() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts/add"))
        .await
        .fill("Name", "Delia")
        .fill("Phone", "218-555-0104");
    ines.press("Add this contact").await.answers(200);
    power(&mut ines, &family, "1", "12 Apr 2022").await;
    ines.press("Add this directive").await.answers(200);
    ines.open(&family.at("/directives")).await.sees("agent: Delia");
    ines.sees("Ines (steward): sees and changes these pages").sees("Bram (relative): sees these");
    ines.does_not_see("Delia (aide)").does_not_see("Rosalind (reader)");
    let mut delia = family.browser("Delia").await;
    delia.get(&family.at("/directives/1")).await.answers(404);
    family.house.is_sound().await;
}
