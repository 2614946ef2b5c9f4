//! A question for the pharmacist: written down by one, asked by another, answered, and not there
//! for whom the thing it is about is hidden.

use crate::support::{Browser, Family};

async fn about_sertraline(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200).press("Questions about it").await;
    ines.sees("Nobody has written down a question").press("Write down a question").await;
    assert_eq!(ines.value("What it is about"), "medicine/1");
    ines.press("Keep the question").await.answers(422).sees("Write the question.");
    assert_eq!(ines.value("What it is about"), "medicine/1");
    ines.fill("The question", "Is it taken with food?").press("Keep the question").await;
    ines.answers(200).sees("nobody will ask it yet").sees("the pharmacist").sees("Sertraline");
}

#[tokio::test]
async fn one_writes_it_down_another_asks_and_everyone_reads_the_answer() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    about_sertraline(&mut ines, &family).await;
    bram.open(&family.at("/today"))
        .await
        .press("Nobody will ask yet: Is it taken with food?")
        .await;
    bram.press("I will ask").await.press("I will ask").await.answers(200).sees("Bram will ask");
    bram.open(&family.at("/today")).await.does_not_see("Nobody will ask yet");

    ines.open(&family.at("/questions/1")).await.press("Who will ask").await;
    ines.fill("Who will ask", "1").press("Save").await.answers(200).sees("Ottoline will ask it");
    ines.press("Who will ask").await;
    let (_, address, mut form) = ines.pressed("Save");
    form.iter_mut().filter(|it| it.0 == "owner").for_each(|it| it.1 = "4".into());
    // Delia may not ask: she could not write down the answer.
    ines.send(&address, &form).await.answers(422).sees("Choose who will ask.");

    ines.open(&family.at("/questions/1")).await.press("It was asked").await;
    ines.fill("On which day", "26 Nov 2026").press("It was asked").await.answers(422);
    ines.sees("This day has not come yet.");
    ines.fill("On which day", "24 Nov 2026").press("It was asked").await.answers(200);
    ines.sees("asked 24 November 2026, no answer yet");
    bram.open(&family.at("/questions/1")).await.press("Write the answer").await;
    bram.fill("What was answered", "As the label says, with or without.");
    bram.fill("Who answered", "the pharmacist at Lakeside").press("Save").await.answers(200);
    bram.sees("As the label says").sees("the pharmacist at Lakeside, 25 November 2026");
    ines.open(&family.at("/questions")).await.sees("Answered, or let go 1");
    ines.open(&family.at("/questions/about/medicine/1")).await.sees("As the label says");
    let mut rosalind = family.browser("Rosalind").await;
    rosalind.open(&family.at("/questions/1")).await.sees("As the label says");
    rosalind.does_not_see("Bring back");

    ines.open(&family.at("/history")).await;
    ines.sees("Ines wrote down the question Is it taken with food? for the pharmacist");
    ines.sees("Bram will ask Is it taken with food?");
    ines.sees("Ines handed on Is it taken with food? to Ottoline");
    ines.sees("Ines asked Is it taken with food? on 24 November 2026");
    ines.sees("Bram wrote down the answer to Is it taken with food? on 25 November 2026, by the pharmacist at Lakeside: As the label says");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_let_go_brought_back_and_put_right() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    about_sertraline(&mut ines, &family).await;
    ines.press("Let it go").await.press("Let it go").await.answers(422);
    ines.fill("Why it need not be asked", "the label says it").press("Let it go").await;
    ines.answers(200).sees("the label says it").press("Bring back").await.press("Bring back").await;
    ines.answers(200).sees("nobody will ask it yet").press("Edit").await;
    ines.tick("a clinician by name").press("Save").await.answers(422);
    ines.sees("Choose the one it is for, or enter the name.");
    ines.fill("The clinician's name", "Dr Oyelaran").tick("a clinician by name");
    ines.press("Save").await.answers(200).sees("Dr Oyelaran");
    ines.press("Edit").await.tick("the prescriber").press("Save").await.answers(200);
    ines.does_not_see("Dr Oyelaran");
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_write_to_it_at_once_and_the_second_sees_both() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    about_sertraline(&mut ines, &family).await;
    ines.press("Edit").await.fill("The question", "With food, or before?");
    bram.open(&family.at("/questions/1/own")).await.press("I will ask").await.answers(200);
    ines.press("Save").await.answers(409).sees("Someone changed this meanwhile");
    assert_eq!(ines.value("The question"), "With food, or before?");
    ines.press("Save").await.answers(200).sees("Bram will ask");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_hidden_alone_and_with_what_it_is_about() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    about_sertraline(&mut ines, &family).await;
    bram.open(&family.at("/questions")).await.sees("with food?");
    for item in ["question/1", "medicine/1"] {
        let page = family.at(&format!("/visibility/{item}"));
        ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
        for page in ["/questions", "/today", "/history"] {
            bram.open(&family.at(page)).await.answers(200).does_not_see("with food?");
        }
        bram.get(&family.at("/questions/1")).await.answers(404);
        bram.get(&family.at("/history/question/1")).await.answers(404);
        ines.open(&page).await.untick("Bram").press("Save").await.answers(200);
        bram.open(&family.at("/questions/1")).await.answers(200);
    }
    family.house.is_sound().await;
}
