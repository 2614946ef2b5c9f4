//! Whom to phone, and whom after that: the order is the family's own, on screen and on the sheet.

use crate::support::{Browser, Family, html};

async fn add(ines: &mut Browser, family: &Family, name: &str, phone: &str) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Phone", phone);
    ines.press("Add this contact").await.answers(200).sees(&format!("Added {name}"));
}

async fn with_three() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add(&mut ines, &family, "Dr Oyelaran", "(218) 555-0110 ext. 12").await;
    add(&mut ines, &family, "Emeric", "218-555-0111").await;
    add(&mut ines, &family, "Juno", "+1 617 555-0103").await;
    (family, ines)
}

/// The names in the order in which the page has them.
fn order(browser: &Browser) -> Vec<&'static str> {
    let (page, mut found) = (browser.page(), Vec::new());
    let text: String = html::select(&page, "main ol").into_iter().map(html::text).collect();
    for name in ["Dr Oyelaran", "Emeric", "Juno"] {
        found.extend(text.find(name).map(|at| (at, name)));
    }
    found.sort_unstable();
    found.into_iter().map(|(_, name)| name).collect()
}

async fn everywhere(ines: &mut Browser, family: &Family, names: &[&str]) {
    for page in ["/contacts", "/sheets/emergency"] {
        ines.open(&family.at(page)).await;
        assert_eq!(order(ines), names, "{page}");
    }
}

#[tokio::test]
async fn a_new_one_comes_last_and_moves_a_place_with_each_press() {
    let (family, mut ines) = with_three().await;
    everywhere(&mut ines, &family, &["Dr Oyelaran", "Emeric", "Juno"]).await;

    ines.open(&family.at("/contacts")).await.press("Change the order").await;
    ines.press("Move Juno earlier").await.answers(200).sees("Juno now comes before Emeric");
    assert_eq!(order(&ines), ["Dr Oyelaran", "Juno", "Emeric"]);
    ines.press("Move Dr Oyelaran later").await.sees("Dr Oyelaran now comes after Juno");
    everywhere(&mut ines, &family, &["Juno", "Dr Oyelaran", "Emeric"]).await;

    // The first has nowhere earlier to go, and the last nowhere later.
    ines.open(&family.at("/contacts/order")).await;
    ines.does_not_see("Move Juno earlier").does_not_see("Move Emeric later");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_press_on_a_page_that_has_grown_old_moves_nothing() {
    let (family, mut ines) = with_three().await;
    let mut bram = family.browser("Bram").await;
    ines.open(&family.at("/contacts/order")).await;
    bram.open(&family.at("/contacts/order")).await.press("Move Emeric earlier").await;
    ines.press("Move Emeric earlier").await.answers(200);
    ines.sees("Emeric was not moved: look at the order as it is now");
    assert_eq!(order(&ines), ["Emeric", "Dr Oyelaran", "Juno"]);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_press_phones_the_number_as_it_is_dialled() {
    let (family, mut ines) = with_three().await;
    ines.open(&family.at("/contacts/2/edit")).await.fill("Other phone", "218-555-0112 x7");
    ines.press("Save").await.answers(200);
    // The link's form: IETF RFC 3966 (2004), section 3.
    let whole = ["tel:2185550110;ext=12", "tel:2185550111", "tel:2185550112;ext=7"];
    for (page, tel) in [
        ("/contacts", [whole[0], whole[1]].as_slice()),
        ("/contacts/1", &[whole[0]]),
        ("/contacts/2", &[whole[1], whole[2]]),
        ("/contacts/3", &["tel:+16175550103"]),
        ("/sheets/emergency", &[whole[0], whole[1], whole[2], "tel:+16175550103"]),
    ] {
        let page_now = ines.open(&family.at(page)).await.page();
        let links = html::select(&page_now, "main a[href^='tel:']").into_iter();
        let links: Vec<_> = links.filter_map(|it| it.value().attr("href")).collect();
        for tel in tel {
            assert!(links.contains(tel), "{page}: {tel} is not among {links:?}");
        }
    }
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Bram");
    ines.fill("Phone", "555-0102 or 555-0113").press("Add this contact").await.answers(422);
    ines.sees("Enter a phone number with at least 3 digits");
    family.house.is_sound().await;
}

#[tokio::test]
async fn one_without_a_number_is_kept_and_is_not_among_those_to_phone() {
    let (family, mut ines) = with_three().await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Tamsin Reyes");
    ines.press("Add this contact").await.answers(422);
    ines.sees("Enter a phone number, an e-mail address or a postal address");
    ines.fill("E-mail", "tamsin at example").press("Add this contact").await.answers(422);
    ines.sees("Enter an e-mail address, like ines@example.org.");
    ines.fill("E-mail", "tamsin@example.org").fill("Kind", "lawyer or advisor");
    ines.fill("Organization", "Reyes and Daughter").fill("Postal address", "Suite 9\nDuluth");
    ines.press("Add this contact").await.answers(200).sees("no number").sees("Suite 9");
    ines.open(&family.at("/contacts")).await.sees("lawyer or advisor");
    ines.sees("no number , by mail tamsin@example.org");
    ines.open(&family.at("/contacts/check")).await.sees("Reyes").sees("no number");
    ines.open(&family.at("/sheets/emergency")).await.does_not_see("Tamsin");
    ines.sees("1 contact has no number: see the record.");
    // The only number is the one to try first, in whichever field it was typed.
    ines.open(&family.at("/contacts/4/edit")).await.fill("Other phone", "218 555 0147");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/sheets/emergency")).await.sees("Tamsin").does_not_see("no number");
    ines.sees("lawyer or advisor; Reyes and Daughter");
    // What cannot be seen reaches nobody.
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Nobody");
    ines.fill("Postal address", "\u{200b}").press("Add this contact").await.answers(422);
    ines.sees("one of them is enough");
    family.house.is_sound().await;
}

#[tokio::test]
async fn one_that_is_struck_leaves_the_list_and_comes_back_to_its_place() {
    let (family, mut ines) = with_three().await;
    ines.open(&family.at("/contacts/2")).await.press("Strike").await.press("Strike").await;
    ines.answers(422).sees("Enter why it leaves the list.");
    ines.fill("Why it leaves the list", "he has a new number").press("Strike").await.answers(200);
    ines.sees("struck: not on the list").sees("he has a new number");
    everywhere(&mut ines, &family, &["Dr Oyelaran", "Juno"]).await;

    ines.open(&family.at("/history")).await;
    ines.sees("Ines struck Emeric with the reason: he has a new number").press("Emeric").await;
    ines.press("Bring back").await.press("Bring back").await.does_not_see("he has a new number");
    everywhere(&mut ines, &family, &["Dr Oyelaran", "Emeric", "Juno"]).await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_edit_takes_the_check_off_and_a_move_does_not() {
    let (family, mut ines) = with_three().await;
    ines.open(&family.at("/contacts/check")).await.fill("Compared with what", "phoned each one");
    ines.press("All 3 agree").await.answers(200).sees("Checked 3 contacts");
    ines.sees("checked today by Ines, against phoned each one");
    ines.open(&family.at("/contacts/order")).await.press("Move Juno earlier").await;
    ines.open(&family.at("/contacts/3")).await.sees("checked today by Ines");
    ines.press("Edit").await.fill("Phone", "617-555-0104").press("Save").await.answers(200);
    ines.sees("The number 617-555-0103 was taken away from Juno");
    ines.open(&family.at("/contacts/3")).await.sees("not checked yet");
    ines.open(&family.at("/contacts")).await.sees("not checked yet");
    family.house.is_sound().await;
}
