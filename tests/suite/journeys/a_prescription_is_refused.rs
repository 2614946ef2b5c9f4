//! A prescription is refused at the counter: the words are kept, Today says whose move it is and
//! since when, calls are written down, the plan's answer is due so many hours after the prescriber's
//! statement, and what comes next is by the date that is printed.

use crate::support::{Browser, Family};
use time::Duration;

/// A medicine with a supply, and a drug plan to ask.
async fn drops(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Latanoprost");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/medicines/1/steps/add")).await.fill("bedtime", "1");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/medicines/1/stock/counts/add")).await.fill("How many", "9");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/coverage/add")).await.fill("Who pays", "Brindlewood Mutual");
    ines.fill("Name of the plan", "Harbor Drug Plan").tick("a Medicare drug plan");
    ines.press("Add this cover").await.answers(200);
}

async fn refused(browser: &mut Browser, family: &Family) {
    browser.open(&family.at("/coverage/refusals/add")).await.press("Keep it").await.answers(422);
    browser.sees("Choose which medicine was refused.").sees("Choose one of these.");
    browser.fill("Which medicine", "1").fill("On which cover", "1");
    browser.fill("What the refusal says", "Prior authorization required").fill("Its code", "75");
    browser.fill("On which day", "24 Nov 2026").tick("the prescriber");
    browser.press("Keep it").await.answers(200).sees("It stands on Today until it is settled");
}

#[tokio::test]
async fn today_says_whose_move_it_is_until_someone_says_how_it_ended() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    drops(&mut ines, &family).await;
    refused(&mut bram, &family).await;
    bram.sees("runs out on Fri 4 Dec 2026").sees("Ask the plan; the notice says how.");
    let stands = "Refused at the counter: Latanoprost: the prescriber’s move since Tue 24 Nov 2026";
    ines.open(&family.at("/today")).await.press(stands).await.sees("Prior authorization required");

    // A call, and the statement: from then on it is the plan's move.
    ines.press("Write down a call").await.fill("With whom", "Mr Aldous at the plan");
    ines.fill("What was said", "They wait for the statement").press("Write it down").await;
    ines.answers(200).sees("with Mr Aldous at the plan").sees("They wait for the statement");
    ines.press("The plan has the statement")
        .await
        .fill("At what time", "late")
        .press("Write it down")
        .await;
    ines.answers(422).sees("the hours are counted from it");
    ines.fill("On which day", "26 Nov 2026").fill("At what time", "4:10 pm");
    ines.press("Write it down").await.answers(422).sees("This moment has not come yet.");
    ines.fill("On which day", "24 Nov 2026").fill("At what time", "4:10 pm");
    ines.press("Write it down").await.answers(200);
    // 72 hours: 42 CFR 423.568(b), from memory.
    ines.sees("Fri 27 Nov 2026, 4:10 pm").sees("72 hours from the statement");
    bram.open(&family.at("/today")).await;
    bram.sees("the plan’s move since Tue 24 Nov 2026; its answer is due Fri 27 Nov 2026, 4:10 pm");
    bram.open(&family.at("/coverage/refusals/1/statement")).await;
    bram.tick("The plan said that it is expedited").press("Write it down").await;
    // 24 hours: 42 CFR 423.572(a), from memory.
    bram.sees("Wed 25 Nov 2026, 4:10 pm").does_not_see("that moment has passed");
    family.house.pass(Duration::days(2));
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/coverage/refusals/1")).await.sees("that moment has passed");

    // The answer: its next date is the printed one, and none where none is typed.
    bram.press("The plan decided").await.tick("it is not covered").tick("the family");
    bram.press("Write it down").await.answers(200).does_not_see("date printed on the notice");
    bram.press("The plan decided").await.tick("it is not covered").tick("the family");
    bram.fill("The next step, as the notice says it", "ask for a redetermination");
    bram.fill("By the date as printed on the notice", "29 Jan 2027");
    bram.press("Write it down").await.answers(200).sees("Fri 29 Jan 2027");
    bram.open(&family.at("/today")).await.sees("the family’s move since Fri 27 Nov 2026");
    bram.does_not_see("its answer is due");
    bram.open(&family.at("/history")).await;
    bram.sees(
        "Ines wrote down the prescriber’s statement about Latanoprost, refused Tue 24 Nov 2026",
    );
    bram.sees("Bram wrote down the plan’s answer about").sees("which is: not covered");
    bram.sees("added a call about Latanoprost, refused Tue 24 Nov 2026");

    // Another's move, and the end.
    bram.open(&family.at("/coverage/refusals/1")).await.press("Another’s move").await;
    bram.tick("the pharmacy").press("Write it down").await.answers(200);
    bram.sees("the pharmacy’s move since Fri 27 Nov 2026");
    bram.press("Settled").await.press("Write it down").await.answers(422);
    bram.fill("How it ended", "filled with the smaller bottle").press("Write it down").await;
    bram.answers(200).sees("settled 27 November 2026");
    bram.open(&family.at("/today")).await.does_not_see("Refused at the counter");
    bram.open(&family.at("/medicines/1")).await.press("Refused at the counter").await;
    bram.sees("only what was refused of it").sees("Settled, or struck 1");
    bram.open(&family.at("/coverage/refusals?medicine=99"))
        .await
        .does_not_see("Settled, or struck");
    bram.open(&family.at("/coverage/refusals")).await.sees("Settled, or struck");
    bram.open(&family.at("/history")).await.sees("as follows: filled with the smaller bottle");
    bram.get(&family.at("/coverage/refusals/1/move")).await.answers(404);
    bram.open(&family.at("/coverage/refusals/1/bring-back")).await.press("Bring back").await;
    bram.answers(200);
    bram.open(&family.at("/today")).await.sees("the pharmacy’s move");
    family.house.is_sound().await;
}

#[tokio::test]
async fn for_a_cover_whose_hours_are_not_known_none_are_reckoned() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    drops(&mut ines, &family).await;
    ines.open(&family.at("/coverage/1/edit"))
        .await
        .tick("Medicaid")
        .press("Save")
        .await
        .answers(200);
    refused(&mut ines, &family).await;
    ines.press("The plan has the statement").await.fill("On which day", "24 Nov 2026");
    ines.fill("At what time", "4:10 pm").press("Write it down").await.answers(200);
    ines.sees("the notice says how long the plan may take").does_not_see("72 hours");
    ines.open(&family.at("/today")).await.does_not_see("its answer is due");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_made_a_task_and_hidden_with_its_medicine() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    drops(&mut ines, &family).await;
    refused(&mut ines, &family).await;
    ines.press("Make it a task").await.fill("What is to be done", "Phone the prescriber’s office");
    assert_eq!(ines.value("What it is about"), "refusal/1");
    ines.press("Keep the task").await.answers(200).sees("Latanoprost, refused Tue 24 Nov 2026");
    ines.open(&family.at("/coverage/refusals/1")).await.press("Tasks about it").await;
    ines.sees("Phone the prescriber’s office");
    // An aide has no papers: the task is not hers to be asked.
    ines.open(&family.at("/tasks/1/offer")).await.sees("Bram").does_not_see("Delia");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/tasks")).await.sees("Phone the prescriber’s office");
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    ines.answers(200);
    for page in ["/today", "/coverage", "/coverage/refusals", "/history", "/tasks"] {
        let bram = bram.open(&family.at(page)).await.answers(200).does_not_see("Latanoprost");
        bram.does_not_see("Prior authorization").does_not_see("Phone the prescriber");
    }
    for page in ["/coverage/refusals/1", "/history/refusal/1", "/tasks/1"] {
        bram.get(&family.at(page)).await.answers(404);
    }
    ines.open(&family.at("/tasks/1/offer")).await.does_not_see("Bram");
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_does_not_see_the_medicines_sees_no_refusal() {
    let family = Family::new().await;
    let (mut ines, mut ottoline) = (family.browser("Ines").await, family.browser("Ottoline").await);
    drops(&mut ines, &family).await;
    refused(&mut ines, &family).await;
    ottoline.open(&family.at("/family/3/areas")).await.fill("clinical", "nothing");
    ottoline.press("Save").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/coverage")).await.answers(200).sees("Harbor Drug Plan");
    bram.does_not_see("Latanoprost").does_not_see("Refused at the counter");
    for page in ["/coverage/refusals", "/coverage/refusals/1", "/coverage/refusals/add"] {
        bram.get(&family.at(page)).await.answers(404);
    }
    for page in ["/today", "/history"] {
        bram.open(&family.at(page)).await.does_not_see("Latanoprost").does_not_see("Refused");
    }
    for who in ["Delia", "Rosalind"] {
        let mut browser = family.browser(who).await;
        browser.get(&family.at("/coverage/refusals/1")).await.answers(404);
        browser.open(&family.at("/today")).await.does_not_see("Refused at the counter");
    }
    family.house.is_sound().await;
}
