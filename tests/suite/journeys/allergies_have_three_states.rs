//! Not asked, none known, listed: an empty list never says "none", and what is listed wins.

use crate::support::{Browser, Family, html};

const UNASKED: &str = "Not asked yet";
const NONE: &str = "No known allergies";

async fn emeric_says_none(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/allergies")).await.press("Write down “no known allergies”").await;
    ines.fill("Said by", "Emeric").fill("On which day", "12 Mar 2026").press("Save").await;
    ines.answers(200).sees("Written down: no known allergies");
}

async fn add_penicillin(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/allergies")).await.press("Add an allergy").await;
    ines.fill("To what", "Penicillin").tick("allergy").fill("What happened", "hives");
    ines.fill("Since when", "1971").fill("Where this comes from", "Emeric saw it");
    ines.press("Add to the list").await.answers(200).sees("Added Penicillin");
}

async fn strike_penicillin(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/allergies/1")).await.press("Entered by mistake").await;
    ines.fill("What was wrong with the entry", "it is Emeric's").press("Strike").await;
    ines.answers(200).sees("Penicillin was struck");
}

/// What is said of allergies on the list, or in their block of the sheet.
fn of_allergies(browser: &Browser) -> String {
    let page = browser.page();
    let mut blocks = html::select(&page, "main section").into_iter().map(html::text);
    blocks.find(|it| it.starts_with("Allergies")).unwrap_or_else(|| browser.text())
}

/// The list and the sheet say this, and not the other two.
async fn both_say(browser: &mut Browser, family: &Family, words: &str, not: [&str; 2]) {
    for page in ["/allergies", "/sheets/emergency"] {
        browser.open(&family.at(page)).await;
        let said = of_allergies(browser);
        assert!(said.contains(words), "{words:?} is not at {page}: {said}");
        assert!(not.iter().all(|it| !said.contains(it)), "one of {not:?} is at {page}: {said}");
    }
}

#[tokio::test]
async fn it_goes_from_not_asked_to_none_known_to_listed_to_not_asked_but_never_back_to_none() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    both_say(&mut ines, &family, UNASKED, [NONE, "Penicillin"]).await;

    emeric_says_none(&mut ines, &family).await;
    ines.sees("said by Emeric on 12 March 2026, written down by Ines today");
    let none = "No known allergies";
    both_say(&mut ines, &family, none, [UNASKED, "Penicillin"]).await;
    ines.sees("No known allergies, said by Emeric on 12 March 2026");

    add_penicillin(&mut ines, &family).await;
    both_say(&mut ines, &family, "Penicillin", [UNASKED, NONE]).await;
    ines.sees("1 allergy or intolerance").sees("hives").sees("since 1971");

    strike_penicillin(&mut ines, &family).await;
    both_say(&mut ines, &family, UNASKED, [NONE, "Penicillin"]).await;

    ines.open(&family.at("/allergies/1")).await.press("Bring back").await.press("Bring back").await;
    ines.sees("Penicillin is on the list again");
    both_say(&mut ines, &family, "Penicillin", [UNASKED, NONE]).await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_history_tells_that_the_statement_fell_away() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    emeric_says_none(&mut ines, &family).await;
    ines.open(&family.at("/history")).await.sees("Ines added the answer about allergies");
    ines.sees("said by after: Emeric").sees("said on after: 12 March 2026");
    add_penicillin(&mut ines, &family).await;
    strike_penicillin(&mut ines, &family).await;
    ines.open(&family.at("/history")).await;
    ines.sees("Ines changed the answer about allergies");
    ines.sees("answer before: none known after: not asked");
    ines.sees("said by before: Emeric after: nothing");
    ines.sees("Ines added the allergy or intolerance Penicillin");
    ines.sees("Ines struck as a mistake Penicillin with the reason: it is Emeric's");
    family.house.is_sound().await;
}

#[tokio::test]
async fn none_known_is_refused_beside_a_list_and_without_who_said_so_on_which_day() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/allergies/answer")).await.press("Save").await.answers(422);
    ines.sees("Enter who said that none are known.").sees("Enter the day on which it was said");
    ines.fill("Said by", "Emeric").fill("On which day", "26 Nov 2026").press("Save").await;
    ines.answers(422).sees("This day has not come yet.");
    assert_eq!(ines.value("Said by"), "Emeric");

    add_penicillin(&mut ines, &family).await;
    ines.open(&family.at("/allergies/answer")).await.sees("There is something on the list");
    ines.fill("Said by", "Emeric").fill("On which day", "12 Mar 2026").press("Save").await;
    ines.answers(422).sees("An allergy or intolerance is listed.");
    both_say(&mut ines, &family, "Penicillin", [UNASKED, NONE]).await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_was_said_can_be_taken_back() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    emeric_says_none(&mut ines, &family).await;
    ines.press("Asked again, or take it back").await.tick("not asked yet").press("Save").await;
    ines.answers(200).sees("Written down: not asked yet");
    both_say(&mut ines, &family, UNASKED, [NONE, "Emeric"]).await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_check_is_of_one_or_of_the_list_and_an_edit_takes_it_off() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add_penicillin(&mut ines, &family).await;
    ines.sees("not checked yet").press("Check").await;
    ines.fill("Compared with what", "the clinic's letter").press("Check").await;
    ines.sees("checked today by Ines, against the clinic's letter");
    ines.press("Edit").await.fill("What happened", "hives and swollen lips").press("Save").await;
    ines.sees("hives and swollen lips").sees("not checked yet").does_not_see("checked today");

    ines.open(&family.at("/allergies/add")).await.fill("To what", "Codeine").tick("intolerance");
    ines.press("Add to the list").await.answers(200);
    ines.press("Allergies").await.press("Check the list").await.sees("Penicillin").sees("Codeine");
    ines.fill("Compared with what", "Emeric").press("All 2 agree").await;
    ines.answers(200).sees("Checked 2 on the list").does_not_see("not checked yet");
    ines.open(&family.at("/sheets/emergency")).await.sees("2 allergies or intolerances");
    ines.sees("checked Wed 25 Nov 2026 by Ines, against Emeric");
    family.house.is_sound().await;
}
