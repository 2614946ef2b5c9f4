//! The questions for one clinician: for a contact and not only a name, in an order that is moved by
//! presses, with questions to start from that are never there twice.

use crate::support::{Browser, Family, html};

async fn contact(ines: &mut Browser, family: &Family, name: &str, kind: &str) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Phone", "218-555-0101");
    ines.fill("Kind", kind).press("Add this contact").await.answers(200);
}

/// Dr Lind is the contact 1 with two questions; a third is for whoever prescribes.
async fn three_for_dr_lind(ines: &mut Browser, family: &Family) {
    contact(ines, family, "Dr Lind", "doctor").await;
    for words in ["May she swim?", "Is the pulse too slow?"] {
        ines.open(&family.at("/questions/with/1")).await.press("Write down a question").await;
        assert_eq!(ines.value("Which clinician"), "1");
        ines.fill("The question", words).press("Keep the question").await.answers(200);
        ines.sees("Dr Lind");
    }
    ines.open(&family.at("/questions/add")).await.fill("The question", "With food?");
    ines.tick("the prescriber").press("Keep the question").await.answers(200);
}

fn order(browser: &Browser) -> Vec<String> {
    html::select(&browser.page(), "ol.rows h2").into_iter().map(html::text).collect()
}

#[tokio::test]
async fn a_press_moves_a_question_and_both_places_are_told() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    three_for_dr_lind(&mut ines, &family).await;
    ines.open(&family.at("/questions/with/1")).await.sees("Questions for Dr Lind");
    assert_eq!(order(&ines), ["1. May she swim?", "2. Is the pulse too slow?", "3. With food?"]);
    bram.open(&family.at("/questions/with/1")).await;
    ines.press("Move “With food?” earlier").await.answers(200);
    ines.sees("“With food?” is now asked before “Is the pulse too slow?”");
    assert_eq!(order(&ines), ["1. May she swim?", "2. With food?", "3. Is the pulse too slow?"]);
    // Bram's page is older than the order: nothing moves by it.
    bram.press("Move “With food?” earlier").await.answers(200).sees("Not moved: With food?");
    assert_eq!(order(&bram), order(&ines));
    ines.press("Move “May she swim?” later").await;
    assert_eq!(order(&ines), ["1. With food?", "2. May she swim?", "3. Is the pulse too slow?"]);
    ines.does_not_see("Move “With food?” earlier")
        .does_not_see("Move “Is the pulse too slow?” later");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines moved in the order of asking: With food?");
    // A reader sees the order and moves nothing.
    let mut rosalind = family.browser("Rosalind").await;
    rosalind.open(&family.at("/questions/with/1")).await.sees("2. May she swim?");
    rosalind.does_not_see("Move").does_not_see("Questions to start from");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_ticked_becomes_a_question_and_never_twice() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    contact(&mut ines, &family, "Dr Lind", "doctor").await;
    for it in [&mut ines, &mut bram] {
        it.open(&family.at("/questions/with/1")).await.press("Questions to start from").await;
        it.sees("AHRQ Pub. 01-0040d").sees("In our own words");
    }
    ines.press("Write these down").await.answers(422).sees("Tick one question at least.");
    let (experience, second) = (
        "How often have you done this operation, and how did it turn out?",
        "Who else could look at this and give an opinion?",
    );
    ines.tick(experience).tick(second).press("Write these down").await.answers(200);
    ines.sees("2 questions are written down").sees(experience).sees("nobody will ask it yet");
    // Bram's page still offers both; one of them is a question already.
    let cost = "Which kind of anesthesia is planned, and who gives it?";
    bram.tick(second).tick(cost).press("Write these down").await.answers(200);
    bram.sees("One question is written down");
    assert_eq!(order(&bram).len(), 3, "{:?}", order(&bram));
    bram.press("Questions to start from").await.sees("(waits already)");
    // Answered, it may be asked again at another time.
    ines.open(&family.at("/questions/1")).await.press("Write the answer").await;
    ines.fill("What was answered", "Some 400, with two infections.")
        .press("Save")
        .await
        .answers(200);
    ines.open(&family.at("/questions/with/1/starters")).await.tick(second);
    let form = ines.pressed("Write these down").2;
    assert!(!form.iter().any(|it| it.1 == "surgery-experience"), "it is ticked by itself");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_question_goes_with_its_contact() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    three_for_dr_lind(&mut ines, &family).await;
    let page = family.at("/visibility/contact/1");
    ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
    bram.get(&family.at("/questions/with/1")).await.answers(404);
    bram.get(&family.at("/questions/1")).await.answers(404);
    for page in ["/questions", "/today", "/history"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("May she swim?");
    }
    bram.open(&family.at("/questions")).await.sees("With food?");
    ines.open(&page).await.untick("Bram").press("Save").await.answers(200);
    bram.open(&family.at("/questions/1")).await.sees("May she swim?");
    // Struck, the contact leaves the list; the question stays for the one it was for.
    ines.open(&family.at("/contacts/1")).await.press("Strike").await;
    ines.fill("Why it leaves the list", "retired").press("Strike").await.answers(200);
    ines.open(&family.at("/questions/1")).await.sees("Dr Lind").press("Edit").await;
    ines.fill("The question", "May she swim in the lake?").press("Save").await.answers(200);
    ines.sees("May she swim in the lake?").sees("Dr Lind");
    family.house.is_sound().await;
}

async fn appointment(ines: &mut Browser, family: &Family, (what, day): (&str, &str)) {
    ines.open(&family.at("/appointments/add")).await.fill("What it is", what).fill("Day", day);
    ines.fill("Time", "10 am").fill("Clinician or service", "1");
    ines.press("Keep this appointment").await.answers(200);
}

#[tokio::test]
async fn it_goes_to_the_next_visit_with_the_one_it_is_for() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    three_for_dr_lind(&mut ines, &family).await;
    ines.open(&family.at("/questions/1")).await.does_not_see("next visit with them");
    for (what, day) in [("Heart check", "24 Nov 2026"), ("Heart again", "3 Dec 2026")] {
        appointment(&mut ines, &family, (what, day)).await;
    }
    ines.open(&family.at("/questions/1"))
        .await
        .sees("next visit with them")
        .press("Heart again")
        .await;
    ines.sees("Questions for Dr Lind").sees("For Heart again");
    assert_eq!(order(&ines), ["1. May she swim?", "2. Is the pulse too slow?", "3. With food?"]);
    ines.press("Move “With food?” earlier")
        .await
        .sees("is now asked before")
        .sees("For Heart again");
    ines.press("Questions to start from")
        .await
        .tick("When is the next visit, and what should bring us here sooner?");
    ines.press("Write these down").await.answers(200).sees("4. When is the next visit");
    // The one of yesterday is noted: it was kept, and what was not answered stands at the next.
    ines.open(&family.at("/visits")).await.press("Write the note: Heart check").await;
    assert_eq!(ines.value("On which day"), "24 November 2026");
    assert_eq!(ines.value("With whom"), "1");
    ines.fill("What was said May she swim?", "Yes.").press("Save the note").await.answers(200);
    ines.sees("kept").sees("not reached: it stands at the next visit");
    ines.open(&family.at("/appointments/1/on/2026-11-24")).await.sees("kept");
    ines.open(&family.at("/visits")).await.does_not_see("Without a note yet");
    ines.open(&family.at("/questions/for/2/2026-12-03")).await.does_not_see("May she swim?");
    ines.sees("With food?").sees("stood at one visit already");
    family.house.is_sound().await;
}
