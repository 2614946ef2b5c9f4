//! A death is entered by a steward, asked twice, said everywhere in plain words, and can be taken
//! back.

use crate::support::{Browser, Family};

async fn told(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("")).await.press("When Ottoline Varga has died").await.answers(200);
    ines.fill("Died on", "3 March 2026").fill("Who told you", "Runa Holm, the hospice nurse");
    ines
}

async fn entered(family: &Family) -> Browser {
    let mut ines = told(family).await;
    ines.press("Go on").await.answers(200).press("Yes, enter it").await.answers(200);
    ines
}

#[tokio::test]
async fn nothing_is_kept_before_the_second_press() {
    let family = Family::new().await;
    let mut ines = told(&family).await;
    ines.press("Go on").await.answers(200);
    ines.sees("Ottoline Varga died on 3 March 2026").sees("You were told so by Runa Holm");
    ines.sees("Nothing in this record reminds anyone of anything any more.");
    ines.sees("The record stays whole.").sees("It can be taken back.");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("")).await.sees("born 9 March 1944, age 82").does_not_see("died");
    bram.open(&family.at("/history")).await.does_not_see("died");

    ines.press("Yes, enter it").await.answers(200);
    ines.sees("The record now says that Ottoline Varga has died");
    bram.open(&family.at("")).await.sees("born 9 March 1944, died 3 March 2026, aged 81");
    family.house.is_sound().await;
}

#[tokio::test]
async fn every_page_and_the_sheet_say_it_and_the_age_stands_still() {
    let family = Family::new().await;
    let mut ines = entered(&family).await;
    ines.sees("told of the death by Runa Holm, the hospice nurse");
    ines.sees("The death was entered by Ines.");
    family.house.pass(time::Duration::days(800));
    // Signed out by then.
    let mut ines = family.browser("Ines").await;
    ines.open("/").await.sees("born 9 March 1944, died 3 March 2026");
    for page in ["", "/medicines", "/contacts", "/history", "/sheets/emergency"] {
        ines.open(&family.at(page)).await;
        ines.sees("born 9 March 1944, died 3 March 2026, aged 81").does_not_see("age 8");
    }
    ines.open(&family.at("/sheets/emergency")).await;
    let text = ines.text();
    let [died, phone] = ["Ottoline Varga died on 3 March 2026.", "In an emergency call"]
        .map(|it| text.find(it).unwrap_or_else(|| panic!("no {it}: {text}")));
    assert!(died < phone, "it stands at the top");
    ines.press("Print or save").await.answers(200);
    assert!(ines.body.starts_with(b"%PDF-"));
    ines.open(&family.at("/history")).await;
    ines.sees("Ines wrote down that Ottoline Varga died on 3 March 2026, told by Runa Holm");
    family.house.is_sound().await;
}

#[tokio::test]
async fn nothing_reminds_any_more() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("Allergies: not asked yet").sees("longest ago");
    let mut ines = entered(&family).await;
    ines.open(&family.at("/today")).await.does_not_see("not asked").does_not_see("longest ago");
    ines.does_not_see("Needs someone").sees("Nothing here reminds anyone of anything any more.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_day_to_come_or_before_the_birth_is_refused_and_the_typing_kept() {
    let family = Family::new().await;
    let mut ines = told(&family).await;
    for (typed, says) in [
        ("26 Nov 2026", "This day has not come yet."),
        ("8 March 1944", "This is before the birth, 9 March 1944."),
        ("", "Enter the day, like 3 Mar 2026."),
    ] {
        ines.fill("Died on", typed).fill("Who told you", "Runa").press("Go on").await;
        ines.answers(422).sees(says);
        assert_eq!(
            (ines.value("Died on").as_str(), ines.value("Who told you").as_str()),
            (typed, "Runa")
        );
    }
    ines.fill("Died on", "25 Nov 2026").fill("Who told you", "").press("Go on").await;
    ines.answers(422).sees("Enter who told you, and how.");
    // A birth is not moved past the death either.
    let mut ines = entered(&family).await;
    ines.press("Edit").await.fill("Born", "4 March 2026").press("Save").await.answers(422);
    ines.sees("This is after the death, 3 March 2026.");
    ines.fill("Born", "9 April 1944").press("Save").await.answers(200).sees("aged 81");
    family.house.is_sound().await;
}

#[tokio::test]
async fn only_a_steward_enters_it_and_the_person_can_take_it_back() {
    let family = Family::new().await;
    for name in ["Ottoline", "Bram", "Delia"] {
        let mut browser = family.browser(name).await;
        browser.open(&family.at("")).await.does_not_see("has died");
        browser.get(&family.at("/died")).await.answers(403);
    }
    entered(&family).await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("")).await.does_not_see("Take the death back");
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("")).await.press("Take the death back").await;
    ottoline.press("Take it back").await.answers(422).sees("Enter why it is taken back.");
    ottoline
        .fill("Why it is taken back", "meant for her cousin's record")
        .press("Take it back")
        .await;
    ottoline.answers(200).sees("born 9 March 1944, age 82").does_not_see("died 3 March");
    ottoline.open(&family.at("/history")).await;
    ottoline.sees("Ottoline took back that Ottoline Varga died on 3 March 2026");
    ottoline.sees("meant for her cousin's record");
    ottoline.open(&family.at("/sheets/emergency")).await.does_not_see("died");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_second_press_on_a_page_that_has_grown_old_keeps_nothing() {
    let family = Family::new().await;
    let mut ines = told(&family).await;
    ines.press("Go on").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/edit")).await.fill("Vision", "reading glasses").press("Save").await;
    ines.press("Yes, enter it").await.answers(409);
    assert_eq!(ines.value("Died on"), "3 March 2026");
    bram.open(&family.at("")).await.does_not_see("died");
    ines.press("Go on").await.answers(200).press("Yes, enter it").await.answers(200);
    bram.open(&family.at("")).await.sees("died 3 March 2026");
    family.house.is_sound().await;
}
