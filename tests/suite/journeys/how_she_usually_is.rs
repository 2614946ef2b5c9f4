//! How she usually is: nothing asked, written down, in her own words, checked, and on the sheet.

use crate::support::{Browser, Family, html};

const UNASKED: &str = "How Ottoline Varga usually is: not written down";

async fn ines_writes_it_down(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("")).await.press("Usual self").await.sees("Nothing asked yet");
    ines.press("Write it down").await;
    ines.fill("Usual thinking", "clear, knows the day").fill("Usual mood", "calm");
    ines.fill("Not the usual self: what it looks like", "speaks Hungarian only");
    ines.fill("Walking aid", "stick").fill("Voice", "from the right").fill("Names", "Otti");
    ines.fill("Light", "a small one at night").fill("Touch", "ask first");
    ines.fill("Bathing", "with help").fill("Bathing, in one line", "Delia helps with the back");
    ines.fill("Feeding", "alone").fill("Said by", "Emeric").fill("On which day", "3 Nov 2026");
    ines.press("Save").await.answers(200).sees("Saved");
    ines
}

/// The words of the sheet on the screen.
async fn sheet(browser: &mut Browser, family: &Family) -> String {
    browser.open(&family.at("/sheets/emergency")).await.answers(200);
    let page = browser.page();
    html::select(&page, "main").into_iter().map(html::text).collect()
}

#[tokio::test]
async fn nothing_asked_is_said_once_and_is_not_a_list_of_gaps() {
    let family = Family::new().await;
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/usual")).await.sees("How Ottoline Varga usually is");
    delia.sees("Nothing asked yet").sees("may take confusion for the usual state");
    delia.does_not_see("Write it down").does_not_see("not written down");
    let sheet = sheet(&mut delia, &family).await;
    assert_eq!(sheet.matches(UNASKED).count(), 1, "{sheet}");
    assert!(!sheet.contains("Daily activities"), "{sheet}");
    let mut ines = family.browser("Ines").await;
    ines.get(&family.at("/usual/check")).await.answers(404);
    ines.open(&family.at("/usual/edit")).await.fill("Said by", "Emeric").press("Save").await;
    ines.answers(422).sees("Nothing was filled in.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_written_down_stands_on_the_page_and_on_the_sheet() {
    let family = Family::new().await;
    let mut ines = ines_writes_it_down(&family).await;
    for words in ["clear, knows the day", "calm", "speaks Hungarian only", "stick", "Otti"] {
        ines.sees(words);
    }
    ines.sees("bathing with help Delia helps with the back").sees("dressing not asked");
    ines.sees("feeding alone").sees("said by Emeric on 3 November 2026").sees("JAMA 1963");
    ines.sees("No score is computed.").sees("own words not written down");
    let mut delia = family.browser("Delia").await;
    let sheet = sheet(&mut delia, &family).await;
    let activities = "with help: bathing (Delia helps with the back); alone: feeding; \
        not asked: dressing, toileting, transferring, continence";
    let at = |words: &str| sheet.find(words).unwrap_or_else(|| panic!("no {words:?}: {sheet}"));
    let before = ["Medicines", "Conditions", "Operations and implants"];
    let thinking = ["How Ottoline Varga usually is", "clear, knows the day"];
    let signs = ["speaks Hungarian only", "stick", activities];
    let with = ["from the right", "a small one at night", "ask first", "Otti"];
    let ends = ["said by Emeric on 3 November 2026 not checked yet", "Contacts"];
    let order = before.iter().chain(&thinking).chain(&signs).chain(&with).chain(&ends);
    let places: Vec<_> = order.map(|it| at(it)).collect();
    assert!(places.is_sorted(), "{places:?} in {sheet}");
    delia.press("Print or save").await.answers(200);
    assert!(delia.body.starts_with(b"%PDF"));
    family.house.is_sound().await;
}

#[tokio::test]
async fn own_words_stand_first_and_say_who_wrote_them_down() {
    let family = Family::new().await;
    let mut ines = ines_writes_it_down(&family).await;
    ines.press("Edit").await.fill("In own words", "Tell me first.\nThen wait.");
    ines.press("Save").await.answers(422).sees("Enter who wrote these words down");
    ines.fill("Who wrote these words down", "Ines").press("Save").await.answers(200);
    ines.sees("In Ottoline Varga’s own words Tell me first. Then wait. written down by Ines");
    let text = sheet(&mut ines, &family).await;
    let at = |words: &str| text.find(words).unwrap_or_else(|| panic!("no {words:?}: {text}"));
    assert!(at("own words") < at("Usual thinking"), "{text}");
    assert!(at("written down by Ines") < at("Usual thinking"), "{text}");

    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/usual/edit")).await.fill("In own words", "Wait for me.");
    ottoline.fill("Who wrote these words down", "").press("Save").await.answers(200);
    ottoline.sees("Wait for me. written by Ottoline Varga");
    // Someone else may change the rest beside them.
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/usual/edit")).await.fill("Usual mood", "cheerful").press("Save").await;
    bram.answers(200).sees("cheerful").sees("written by Ottoline Varga");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_check_lasts_until_the_next_change_and_the_history_tells_both() {
    let family = Family::new().await;
    let mut ines = ines_writes_it_down(&family).await;
    ines.sees("not checked yet").press("Check").await.press("Check").await.answers(422);
    ines.fill("Compared with what", "Emeric").press("Check").await.answers(200);
    ines.sees("checked today by Ines, against Emeric");
    ines.press("Edit").await.press("Save").await.sees("checked today by Ines");
    ines.press("Edit").await.fill("Usual mood", "low in the evening").press("Save").await;
    ines.sees("not checked yet").press("History of this page").await;
    ines.sees("Ines added the page How Ottoline Varga usually is");
    ines.sees("bathing after: with help").does_not_see("not asked");
    ines.sees("Ines checked How Ottoline Varga usually is against Emeric");
    ines.sees("Ines changed the usual mood of How Ottoline Varga usually is from calm to low");
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_who_write_at_once_see_both_versions_the_first_time_too() {
    let family = Family::new().await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/usual/edit")).await;
    let mut ines = ines_writes_it_down(&family).await;
    bram.fill("Usual mood", "cheerful").fill("Bathing", "alone").fill("Said by", "Bram");
    bram.press("Save").await.answers(409).sees("Someone changed this meanwhile");
    bram.sees("Ines saved it").sees("In the record now calm").sees("In the record now with help");
    assert_eq!(bram.value("Usual mood"), "cheerful");
    assert_eq!(bram.value("Bathing"), "alone");
    ines.open(&family.at("/usual/edit")).await.fill("On which day", "26 Nov 2026");
    ines.press("Save").await.answers(422).sees("This day has not come yet.");
    family.house.is_sound().await;
}
