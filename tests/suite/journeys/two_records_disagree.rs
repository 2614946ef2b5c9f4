//! What is written down in one place and not so in another: said at the moment of saving, laid side
//! by side with where both come from, asked about, and without a trace of what is hidden.

use crate::support::{Browser, Family};

const AT_ONCE: &str = "What was just saved does not go with what is written elsewhere";

async fn allergy(ines: &mut Browser, family: &Family, substance: &str) {
    ines.open(&family.at("/allergies/add")).await.fill("To what", substance).tick("allergy");
    ines.fill("Where this comes from", "told by Emeric").press("Add to the list").await;
    ines.answers(200);
}

async fn medicine(ines: &mut Browser, family: &Family, name: &str, what_for: &str) {
    ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("What for", what_for);
    ines.fill("Where this comes from", "read off the bottle").press("Add this medicine").await;
    ines.answers(200);
}

#[tokio::test]
async fn what_is_not_borne_and_taken_is_said_when_it_is_saved() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    allergy(&mut ines, &family, "Penicillin").await;
    ines.does_not_see(AT_ONCE);
    medicine(&mut ines, &family, "Penicillin V potassium", "a tooth").await;
    ines.sees("Added Penicillin V potassium").sees(AT_ONCE).sees("known from: told by Emeric");
    ines.sees("known from: read off the bottle")
        .sees("entered by Ines")
        .sees("Penicillin is listed as an allergy");
    // What stood already is not said again by another save.
    medicine(&mut ines, &family, "Night rest", "sleep").await;
    ines.does_not_see(AT_ONCE).press("Ingredients").await;
    ines.fill("Ingredient", "Codeine phosphate").press("Save").await.answers(200);
    ines.does_not_see(AT_ONCE);
    allergy(&mut ines, &family, "CODEINE").await;
    ines.sees(AT_ONCE).sees("with Codeine phosphate in it").sees("Also 1");

    bram.open(&family.at("/today")).await.press("Two records disagree, in 2 places").await;
    bram.does_not_see(AT_ONCE).sees("Not settled 2");
    for _ in 0..2 {
        bram.open(&family.at("/disagreements")).await;
        let (_, address, form) = bram.pressed_starting("Make it a question");
        let to = bram.send(&address, &form).await.answers(303).at.clone();
        bram.open(&to).await.sees("Two things in the family's record do not go together");
        bram.sees("the pharmacist")
            .sees("is listed as an allergy")
            .sees("is on the list of medicines (taking)");
    }
    bram.open(&family.at("/today")).await.does_not_see("Two records disagree");
    ines.open(&family.at("/disagreements")).await.sees("Asked about:").does_not_see("Make it a");
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/today")).await.does_not_see("disagree");
    delia.get(&family.at("/disagreements")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_medicine_for_what_is_over_and_one_for_nothing() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/conditions/add")).await.fill("Name", "Pneumonia");
    ines.press("Add this condition").await.answers(200);
    medicine(&mut ines, &family, "Doxycycline", "pneumonia").await;
    medicine(&mut ines, &family, "Melatonin", "").await;
    ines.open(&family.at("/disagreements")).await.does_not_see("Doxycycline is");
    ines.sees("Taken, and what for is not written down 1").sees("Melatonin is on the list");
    ines.open(&family.at("/conditions/1/over")).await.fill("Who said so", "Dr Oyelaran");
    ines.press("Over").await.answers(200);
    ines.open(&family.at("/today")).await;
    ines.sees("Two records disagree: Doxycycline is on the list of medicines, for Pneumonia;");
    ines.open(&family.at("/disagreements")).await.sees("said by Dr Oyelaran");
    let (_, address, form) = ines.pressed_starting("Make it a question");
    let to = ines.send(&address, &form).await.answers(303).at.clone();
    ines.open(&to).await.sees("the prescriber").sees("Pneumonia is marked as over");
    ines.open(&family.at("/today")).await.does_not_see("Two records disagree");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_paper_with_another_birth_date_is_asked_about() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/reconciliation/add")).await.tick("a clinic's printout");
    ines.fill("Whose list it is", "Lakeside clinic").fill("The list", "Warfarin 5 mg tablet");
    ines.fill("Born, as the paper says", "31 Feb 1944").press("Take it in").await.answers(422);
    ines.fill("Born, as the paper says", "9 March 1941").press("Take it in").await.answers(200);
    ines.open(&family.at("/reconciliation/1")).await.sees("Is this Ottoline Varga's paper?");
    ines.sees("born 9 March 1941 on it, and 9 March 1944 in the record");
    ines.open(&family.at("/today")).await.sees("Two records disagree: Born 9 March 1941, as the");
    ines.open(&family.at("/disagreements")).await.sees("Born 9 March 1944, as the record says");
    let (_, address, form) = ines.pressed_starting("Make it a question");
    let to = ines.send(&address, &form).await.answers(303).at.clone();
    ines.open(&to).await.sees("is this the right paper?").sees("Lakeside clinic");
    ines.open(&family.at("/today")).await.does_not_see("Two records disagree");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_hidden_leaves_no_trace() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    allergy(&mut ines, &family, "Penicillin").await;
    medicine(&mut ines, &family, "Penicillin", "a tooth").await;
    for hidden in ["medicine", "allergy"] {
        let page = family.at(&format!("/visibility/{hidden}/1"));
        ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
        bram.open(&family.at("/today")).await.answers(200).does_not_see("Two records disagree");
        bram.open(&family.at("/disagreements")).await.answers(200).does_not_see("Penicillin");
        // Not even when he saves what would make it so.
        let twin = if hidden == "medicine" { "allergies" } else { "medicines" };
        match twin {
            "allergies" => allergy(&mut bram, &family, "Penicillin").await,
            _ => medicine(&mut bram, &family, "Penicillin", "a tooth").await,
        }
        bram.does_not_see(AT_ONCE);
        let struck = family.at(&format!("/{twin}/2/strike"));
        bram.open(&struck).await.fill("What was wrong with the entry", "twice");
        bram.press("Strike").await.answers(200);
        ines.open(&page).await.untick("Bram").press("Save").await.answers(200);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_abbreviation_is_told_and_left_as_it_was_typed() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Insulin").fill("Dose", "10 U QD");
    ines.press("Add this medicine").await.answers(200).sees("10 U QD");
    let says = "typed \"QD\": usually means daily; write it out after asking whoever wrote it";
    ines.sees(says).sees("typed \"U\": usually means units").press("Edit").await.sees(says);
    assert_eq!(ines.value("Dose"), "10 U QD");
    ines.fill("Dose", "10 units daily").press("Save").await.answers(200).does_not_see("usually");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_question_that_names_what_is_hidden_is_hidden_with_it() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    allergy(&mut ines, &family, "Penicillin").await;
    medicine(&mut ines, &family, "Penicillin V potassium", "a tooth").await;
    ines.open(&family.at("/disagreements")).await;
    let (_, address, form) = ines.pressed_starting("Make it a question");
    ines.send(&address, &form).await.answers(303);
    bram.open(&family.at("/questions/1")).await.sees("Penicillin is listed as an allergy");
    // It is about the medicine, which Bram goes on seeing; its words name the allergy too.
    ines.open(&family.at("/visibility/allergy/1")).await.tick("Bram").press("Save").await;
    bram.get(&family.at("/questions/1")).await.answers(404);
    for page in ["/questions", "/questions/about/medicine/1", "/history", "/today"] {
        bram.open(&family.at(page)).await.does_not_see("is listed as an allergy");
        bram.does_not_see("do not go together");
    }
    ines.open(&family.at("/questions/1")).await.sees("Penicillin is listed as an allergy");
    family.house.is_sound().await;
}
