//! A card is one press away and shown large; its numbers are masked until someone asks, and each
//! opening is noted. In January the new one is asked about.

use crate::support::{Browser, Family, html};
use time::Duration;

/// Ines writes down the drug plan and photographs its card.
async fn plan_and_card(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/coverage/add")).await.fill("Who pays", "Brindlewood Mutual");
    ines.fill("Name of the plan", "Harbor Drug Plan").tick("a Medicare drug plan");
    ines.fill("Member number", "BW 7710 0042 19").fill("BIN for the pharmacy", "000042");
    ines.fill("Customer line", "218-555-0192").fill("When it answers", "every day from 8 to 8");
    ines.fill("Who may talk to them", "Ines").fill("Until when", "31 Dec 2026");
    ines.press("Add this cover").await.answers(200);
    ines.open(&family.at("/coverage/cards/add")).await;
    ines.fill("What the card is called", "Drug plan").fill("Which cover it belongs to", "1");
    ines.press("Keep the card").await.answers(422).sees("Choose a photo of the front.");
    ines.attach("Photo of the front", &html::photo()).press("Keep the card").await.answers(200);
    ines.sees("Added the card Drug plan");
}

#[tokio::test]
async fn the_numbers_are_masked_until_they_are_asked_for() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    plan_and_card(&mut ines, &family).await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/coverage")).await.press("Brindlewood Mutual, Harbor Drug Plan").await;
    bram.sees("•••• 4219").does_not_see("7710").sees("•••• 0042").does_not_see("000042");
    bram.sees("every day from 8 to 8").sees("Ines, until 31 December 2026");
    bram.sees("What is chosen is in force from 1 January 2027.").sees("ask the plan");
    ines.open(&family.at("/history")).await.does_not_see("opened the numbers");
    bram.press("Show the numbers").await.sees("BW 7710 0042 19").sees("000042");
    bram.sees("The history notes that you opened them.");
    // At one desk it is opened again, and noted once.
    bram.open(&family.at("/coverage/1/numbers")).await.answers(200);
    ines.open(&family.at("/history")).await;
    let told = "Bram opened the numbers of Brindlewood Mutual, Harbor Drug Plan";
    assert_eq!(ines.text().matches(told).count(), 1, "{}", ines.text());
    family.house.pass(Duration::minutes(10));
    bram.open(&family.at("/coverage/1/numbers")).await.answers(200);
    ines.open(&family.at("/history")).await;
    assert_eq!(ines.text().matches(told).count(), 2, "{}", ines.text());

    // Put right: the history says that it was changed, and neither the old nor the new.
    bram.open(&family.at("/coverage/1/numbers")).await.fill("BIN for the pharmacy", "42");
    bram.press("Save").await.answers(422).sees("A BIN has six digits");
    bram.fill("BIN for the pharmacy", "004336").press("Save").await.answers(200);
    bram.sees("•••• 4336");
    ines.open(&family.at("/history")).await.sees("Bram changed the pharmacy BIN of");
    ines.does_not_see("004336").does_not_see("000042").does_not_see("7710");
    ines.open(&family.at("/history/cover/1")).await.does_not_see("4336").does_not_see("7710");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_card_is_one_press_from_anywhere_and_each_opening_is_noted() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    plan_and_card(&mut ines, &family).await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today"))
        .await
        .press("Drug plan")
        .await
        .sees("There is no photo of the back");
    let front = family.at("/coverage/cards/1/front/photo");
    let page = bram.page();
    let shown = html::select(&page, "img.photo");
    assert_eq!(shown[0].value().attr("src"), Some(front.as_str()));
    bram.get(&front).await.answers(200);
    assert_eq!(bram.body, html::photo());
    assert_eq!(bram.headers["cache-control"], "no-store");
    bram.get(&family.at("/coverage/cards/1/back/photo")).await.answers(404);
    ines.open(&family.at("/history")).await;
    let told = ines.text().matches("Bram opened the card Drug plan").count();
    assert_eq!(told, 1, "the page and its picture are one opening");
    // From the emergency sheet, and from every page's list of areas.
    bram.open(&family.at("/sheets/emergency")).await.press("Cards to show at a desk").await;
    bram.sees("photographed 25 November 2026");
    bram.open(&family.at("/medicines"))
        .await
        .press("Cards")
        .await
        .press("Drug plan")
        .await
        .answers(200);
    // A photo that never came is not taken.
    ines.open(&family.at("/coverage/cards/1/photograph")).await;
    let (_, to, mut form) = ines.pressed("Keep the new card");
    form.push(("front".into(), "0".repeat(64)));
    ines.send(&to, &form).await.answers(422).sees("The photo did not arrive.");
    // A card that says who she is belongs to no plan.
    ines.open(&family.at("/coverage/cards/1/edit")).await.tick("a card of identity");
    ines.press("Save").await.answers(422).sees("Only a card of insurance belongs to a cover.");
    ines.fill("Which cover it belongs to", "").fill("Expires", "24 Nov 2026").press("Save").await;
    ines.answers(200).sees("expired");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_new_card_is_asked_about_from_the_second_of_january() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    plan_and_card(&mut ines, &family).await;
    let asks = "Photograph the new one: Drug plan";
    family.house.pass(Duration::days(37));
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.sees("1 January").does_not_see(asks);
    family.house.pass(Duration::days(1));
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.sees(asks);
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/today")).await.does_not_see("Drug plan").does_not_see("Cards");
    // Bram looks at it: the same card. Another year, and it is photographed.
    bram.open(&family.at("/coverage/cards/1")).await.press("It stays the same").await;
    bram.press("It stays the same").await.answers(200).sees("it is the same card in 2027");
    bram.open(&family.at("/today")).await.does_not_see(asks);
    bram.open(&family.at("/history"))
        .await
        .sees("Bram said that it stays the same: Drug plan in 2027");
    family.house.pass(Duration::days(365));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.press(asks).await;
    ines.attach("Photo of the front", &html::photo()).press("Keep the new card").await.answers(200);
    ines.sees("The new card is kept").sees("2 January 2028");
    ines.open(&family.at("/today")).await.does_not_see(asks);
    ines.open(&family.at("/history")).await.sees("Ines photographed anew Drug plan");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_sheet_of_cards_is_for_those_who_see_the_cards() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    plan_and_card(&mut ines, &family).await;
    ines.open(&family.at("/coverage/cards")).await.press("On paper").await.does_not_see("7710");
    // The photo has a head and no body: the sheet comes all the same.
    ines.press("Print or save").await.answers(200);
    assert!(ines.body.starts_with(b"%PDF-") && ines.headers["content-type"] == "application/pdf");
    ines.open(&family.at("/sheets")).await.sees("sheet of cards");
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/sheets")).await.does_not_see("sheet of cards").does_not_see("Cards");
    delia.get(&family.at("/coverage/cards/sheet")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_hidden_cover_takes_its_card_along_and_leaves_no_trace() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    plan_and_card(&mut ines, &family).await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/coverage/cards")).await.sees("Drug plan");
    ines.open(&family.at("/coverage/1")).await.press("Who sees this").await.tick("Bram");
    ines.press("Save").await.answers(200);
    let pages = ["/coverage", "/coverage/cards", "/today", "/history", "/sheets/emergency"];
    for page in pages.into_iter().chain(["/coverage/cards/sheet", "/coverage/refusals/add"]) {
        bram.open(&family.at(page))
            .await
            .answers(200)
            .does_not_see("Harbor")
            .does_not_see("Drug plan");
    }
    for page in
        ["/coverage/1", "/coverage/1/numbers", "/coverage/cards/1", "/coverage/cards/1/front/photo"]
    {
        bram.get(&family.at(page)).await.answers(404);
    }
    family.house.pass(Duration::days(38));
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.does_not_see("Photograph the new one");
    for who in ["Delia", "Rosalind"] {
        let mut browser = family.browser(who).await;
        for page in ["/coverage", "/coverage/1", "/coverage/cards", "/coverage/cards/1"] {
            browser.get(&family.at(page)).await.answers(404);
        }
    }
    family.house.is_sound().await;
}
