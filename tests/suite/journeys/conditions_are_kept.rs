//! Conditions and operations: kept, checked, over, struck and brought back; with who may know and
//! how much of it the person wants to be told; and traceless for whom they are hidden from.

use crate::support::{Browser, Family};

async fn add_condition(ines: &mut Browser, family: &Family, name: &str, wish: &str) {
    ines.open(&family.at("/conditions")).await.press("Add a condition").await;
    ines.fill("Name", name).fill("Since when", "2019").fill("Who follows it", "Dr Oyelaran");
    ines.fill("Who may know, as Ottoline Varga says it", "not the neighbours").tick(wish);
    ines.press("Add this condition").await.answers(200).sees(&format!("Added {name}"));
}

async fn add_hip(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/operations")).await.press("Add an operation").await;
    ines.fill("What was done", "Left hip replaced").fill("When", "2017");
    ines.fill("What was put in", "hip joint").fill("Number on its card", "H-2017-0042");
    ines.press("Add this operation").await.answers(200).sees("Added Left hip replaced");
}

#[tokio::test]
async fn a_condition_is_kept_with_who_may_know_and_what_she_wants_to_be_told() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/conditions")).await.sees("What Ottoline Varga lives with belongs here");
    ines.does_not_see("patient").press("Add a condition").await;
    ines.press("Add this condition").await.answers(422).sees("Enter what it is called");
    ines.fill("Name", "Osteoporosis").fill("Told on which day", "26 Nov 2026");
    ines.press("Add this condition").await.answers(422).sees("This day has not come yet.");
    ines.fill("Told on which day", "3 Mar 2026").fill("Told by whom", "Dr Oyelaran");
    ines.fill("Note", "one line\nand another").tick("nothing for now");
    ines.press("Add this condition").await.answers(200).sees("Added Osteoporosis");
    ines.sees("what Ottoline Varga wants to be told nothing for now");
    ines.sees("told 3 March 2026 by Dr Oyelaran").sees("followed by not written down");

    ines.press("Check").await.fill("Compared with what", "the clinic's letter");
    ines.press("Check").await.sees("checked today by Ines, against the clinic's letter");
    ines.press("Edit").await.tick("everything").press("Save").await;
    ines.sees("not checked yet").sees("wants to be told everything");
    ines.open(&family.at("/history")).await.sees("Ines added the condition Osteoporosis");
    ines.sees("changed the wish to be told of Osteoporosis from nothing for now to everything");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_over_stays_listed_and_what_was_struck_does_not() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add_condition(&mut ines, &family, "Anaemia", "everything").await;
    ines.press("Over").await.fill("From which day", "26 Nov 2026").press("Over").await;
    ines.answers(422).sees("Enter who said that it is over.");
    ines.fill("Who said so", "Dr Oyelaran").press("Over").await.sees("This day has not come yet.");
    ines.fill("From which day", "20 Nov 2026").press("Over").await.answers(200);
    ines.sees("over since 20 November 2026").sees("said by Dr Oyelaran");
    ines.open(&family.at("/conditions")).await.sees("Standing 0 Over 1 Anaemia");
    ines.open(&family.at("/sheets/emergency")).await.does_not_see("Anaemia");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines marked as over Anaemia from 20 November 2026: Dr Oyelaran");
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/conditions")).await.answers(200).does_not_see("Anaemia");
    delia.open(&family.at("/conditions/1")).await.answers(404);

    ines.open(&family.at("/conditions/1")).await.press("Bring back").await;
    ines.press("Bring back").await.sees("Anaemia is on the list again");
    ines.open(&family.at("/conditions")).await.sees("Standing 1 Anaemia").does_not_see("Over");
    ines.open(&family.at("/conditions/1")).await.press("Entered by mistake").await;
    ines.fill("What was wrong with the entry", "it is Emeric's").press("Strike").await;
    ines.open(&family.at("/conditions")).await.does_not_see("Anaemia");
    ines.open(&family.at("/history")).await.sees("struck as a mistake Anaemia");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_operation_is_kept_with_what_was_put_in() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/operations/add")).await.fill("Number on its card", "H-1");
    ines.press("Add this operation").await.answers(422).sees("Enter what was put in");
    add_hip(&mut ines, &family).await;
    ines.sees("what was put in hip joint").sees("number on its card H-2017-0042");
    ines.press("Entered by mistake").await.fill("What was wrong with the entry", "right, not left");
    ines.press("Strike").await.press("Bring back").await.press("Bring back").await;
    ines.sees("Left hip replaced is on the list again");
    ines.open(&family.at("/operations")).await.press("Check the list").await;
    ines.fill("Compared with what", "the card").press("All 1 agree").await;
    ines.sees("Checked 1 on the list").sees("checked today by Ines, against the card");
    ines.open(&family.at("/conditions")).await.press("Operations and implants").await;
    ines.sees("put in: hip joint, card H-2017-0042");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_hidden_condition_is_traceless() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    add_condition(&mut ines, &family, "Depression", "nothing for now").await;
    add_condition(&mut ines, &family, "Osteoporosis", "everything").await;
    add_hip(&mut ines, &family).await;
    for item in ["/conditions/1", "/operations/1"] {
        ines.open(&family.at(item)).await.press("Who sees this").await;
        ines.tick("Bram").press("Save").await.answers(200);
    }
    let care = "Ask the family before you tell Ottoline Varga of a diagnosis.";
    let put_in = "an operation with an implant is listed";
    ines.open(&family.at("/sheets/emergency")).await.sees("Depression").sees(care).sees(put_in);

    bram.open(&family.at("/conditions")).await.sees("Standing 1").does_not_see("Depression");
    bram.open(&family.at("/conditions/check")).await.does_not_see("Depression");
    bram.open(&family.at("/operations")).await.does_not_see("hip");
    bram.open(&family.at("/statements")).await.does_not_see(put_in);
    for gone in ["/conditions/1", "/conditions/1/edit", "/operations/1", "/operations/1/edit"] {
        bram.open(&family.at(gone)).await.answers(404);
    }
    bram.open(&family.at("/history/condition/1")).await.answers(404);
    bram.open(&family.at("/history")).await.does_not_see("Depression").does_not_see("hip");
    bram.open(&family.at("/sheets/emergency")).await.sees("Osteoporosis").sees("1 condition");
    bram.does_not_see("Depression").does_not_see(care).does_not_see(put_in).does_not_see("hip");
    family.house.is_sound().await;
}
