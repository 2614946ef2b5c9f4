//! Ottoline does not sign in. She is asked, with a sheet in large print; her answers are written
//! down by whoever asked; what is decided for her says so.

use crate::support::{Browser, Family};
use axum::http::StatusCode;

/// A family in which the person's place has ended: she does not sign in.
async fn silent() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/family")).await.does_not_see("does not sign in");
    ines.sees("What is kept, and who sees it");
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/family/1/remove")).await.press("End this place").await.answers(200);
    (family, ines)
}

#[tokio::test]
async fn she_is_asked_and_what_she_answered_leads_to_where_it_is_done() {
    let (family, mut ines) = silent().await;
    for page in ["/family", "", "/family/answers"] {
        ines.open(&family.at(page)).await.sees("Ottoline Varga does not sign in.");
        ines.sees("what the answers are, is entered by Ines.");
    }
    ines.open(&family.at("/medicines/1")).await.press("Who sees this").await;
    ines.press("Write down what was answered about this").await;
    assert_eq!(ines.value("The question"), "Who should not see Sertraline?");
    ines.tick("hide").fill("In own words", "Not the boy.").press("Keep this answer").await;
    ines.answers(422).sees("from whom it is to be hidden").sees("Choose one of these.");
    ines.fill("Hide from whom", "Bram").tick("by phone").fill("On which day", "3 Nov 2027");
    ines.press("Keep this answer").await.answers(422).sees("This day has not come yet.");
    ines.fill("On which day", "3 Nov 2026").press("Keep this answer").await.answers(200);
    ines.sees("hide Sertraline from Bram").sees("asked by Ines, by phone, on 3 November 2026");
    ines.sees("Not the boy.").sees("Nothing was changed by this.");

    // It was not done by itself: Bram still sees it until someone decides, which says for whom.
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/medicines")).await.sees("Sertraline");
    // Nor does he read that she was asked: answers are for her and for those who decide.
    bram.open(&family.at("/history")).await.sees("added the medicine Sertraline");
    bram.does_not_see("answer").does_not_see("hide");
    ines.press("Decide who sees this").await.sees("Who should not see Sertraline?");
    ines.sees("Ottoline Varga, asked by Ines, by phone, on 3 November 2026");
    ines.tick("Bram").press("Save").await.answers(200);
    bram.open(&family.at("/medicines")).await.does_not_see("Sertraline");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines hid Sertraline from Bram, on Ottoline Varga's behalf");
    ines.sees("Ines wrote down the answer to Who should not see Sertraline? (hide Sertraline from Bram, asked by Ines by phone on 3 November 2026)");
    bram.open(&family.at("/history")).await.does_not_see("Sertraline").does_not_see("answer");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_decided_while_she_does_not_sign_in_is_told_as_decided_for_her() {
    let (family, mut ines) = silent().await;
    for level in ["see only", "nothing"] {
        ines.open(&family.at("/family/3/areas")).await.fill("clinical", level).press("Save").await;
        ines.answers(200);
    }
    ines.open(&family.at("/family/4/role")).await.tick("reader").press("Save").await.answers(200);
    ines.open(&family.at("/family/5/pause")).await.press("Pause this place").await.answers(200);
    ines.open(&family.at("/family/invite")).await.fill("Name", "Juno").tick("relative");
    ines.press("Make the invitation").await.answers(200).open(&family.at("/history")).await;
    for told in [
        "lowered clinical for Bram to see only, on Ottoline Varga's behalf",
        "lowered clinical for Bram to nothing, on Ottoline Varga's behalf",
        "changed the role of Delia from aide to reader, on Ottoline Varga's behalf",
        "paused Rosalind's place on Ottoline Varga's behalf",
        "invited Juno as relative, on Ottoline Varga's behalf",
    ] {
        ines.sees(told);
    }
    // Leaving is nobody's decision for her; and what she decided herself was not for her.
    ines.sees("Ottoline ended Ottoline's place").does_not_see("Ottoline's place on");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_sheet_says_what_stands_and_the_paper_says_the_same() {
    let (family, mut ines) = silent().await;
    ines.open(&family.at("/family/3/areas")).await.fill("history", "nothing").press("Save").await;
    ines.open(&family.at("/family/4/pause")).await.press("Pause this place").await.answers(200);
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    ines.open(&family.at("/family/3/asked"))
        .await
        .fill("The question", "May Bram see the history?");
    ines.tick("no").tick("in person").press("Keep this answer").await.answers(200);
    ines.press("Open this member’s place").await.sees("May Bram see the history?");
    ines.open(&family.at("/family")).await.press("What is kept, and who sees it").await;
    for line in [
        "What is kept about Ottoline Varga, and who sees it",
        "You may ask for a change at any time.",
        "You do not sign in yourself. Ines can write down what you are asked",
        "1 medicine: Sertraline.",
        "Bram relative: one of your family or friends",
        "Does not see: the history: who wrote or changed what.",
        "This is less than the role would have. It was set so for Bram.",
        "Sees nothing now: the place is paused since 25 November 2026.",
        "Sertraline is hidden from Bram. Ines decided this for you on 25 November 2026.",
        "If something is hidden from Ines, it is not on it.",
        "asked by Ines, in person, on 25 November 2026",
    ] {
        ines.sees(line);
    }
    ines.press("Print or save").await.answers(200);
    assert_eq!(ines.headers["content-type"], "application/pdf");
    let name = ines.headers["content-disposition"].to_str().expect("a name");
    assert_eq!(name, "inline; filename=\"sheet-of-what-is-kept-2026-11-25.pdf\"");
    ines.open(&family.at("/sheets")).await.sees("sheet of what is kept").sees("the same as now");
    ines.open(&family.at("/medicines/add"))
        .await
        .fill("Name", "Iron")
        .press("Add this medicine")
        .await;
    ines.open(&family.at("/sheets")).await.does_not_see("the same as now");
    ines.open(&family.at("/history")).await.sees("Ines printed the sheet of what is kept");
    let mut rosalind = family.browser("Rosalind").await;
    rosalind.open(&family.at("/sheets")).await.does_not_see("What is kept");
    rosalind.open(&family.at("/sheets/kept")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_answer_is_asked_again_struck_and_brought_back() {
    let (family, mut ines) = silent().await;
    let question = "May Bram see the history?";
    for answer in ["ask again", "yes"] {
        ines.open(&family.at("/family/answers/add")).await.fill("The question", question);
        ines.tick(answer).tick("by video").press("Keep this answer").await.answers(200);
    }
    ines.open(&family.at("/family/answers")).await.sees("Answers that no longer stand 1");
    ines.open(&family.at("/family/answers/2")).await.press("Asked again").await;
    ines.tick("would not say").tick("in person").press("Keep this answer").await.answers(200);
    ines.open(&family.at("/family/answers")).await.sees("Answers that no longer stand 2");
    ines.open(&family.at("/family/answers/3")).await.press("Strike").await;
    ines.fill("What was mistaken", "it was about Juno").press("Strike").await.answers(200);
    ines.sees("Struck: it was about Juno").press("Bring back").await.press("Bring back").await;
    ines.sees("The answer stands again");
    ines.open(&family.at("/family/answers/2/bring-back")).await.press("Bring back").await;
    ines.answers(422).sees("that answer stands. Strike it first.");
    ines.open(&family.at("/history/answer/3")).await.sees("Ines struck as a mistake the answer to");
    ines.sees("Ines brought back the answer to").sees("(would not say, asked by Ines in person");
    family.house.is_sound().await;
}

#[tokio::test]
async fn she_writes_down_her_own_answers_and_others_about_what_is_hidden_from_them_are_not_there() {
    let family = Family::new().await;
    let (mut ines, mut ottoline) = (family.browser("Ines").await, family.browser("Ottoline").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    ottoline.open(&family.at("/visibility/medicine/1/asked")).await.does_not_see("Asked by");
    ottoline
        .tick("hide")
        .fill("Hide from whom", "Ines")
        .press("Keep this answer")
        .await
        .answers(200);
    ottoline.sees("written down by the person, not asked");
    ines.open(&family.at("/family/answers")).await.sees("Who should not see Sertraline?");
    ottoline.press("Decide who sees this").await.tick("Ines").press("Save").await.answers(200);
    // Now neither the item nor the answer is there for Ines, on no page, sheet or line of history.
    ines.open(&family.at("/family/answers/1")).await;
    assert_eq!(ines.status, StatusCode::NOT_FOUND);
    for page in ["/family/answers", "/sheets/kept", "/history", "/family"] {
        ines.open(&family.at(page)).await.answers(200).does_not_see("Sertraline");
    }
    ottoline.open(&family.at("/sheets/kept")).await.sees("Sertraline is hidden from Ines.");
    ottoline.sees("You decided this yourself").does_not_see("shows you this sheet");
    family.house.is_sound().await;
}

#[tokio::test]
async fn after_a_death_nothing_is_asked_and_what_was_answered_stays() {
    let (family, mut ines) = silent().await;
    ines.open(&family.at("/family/answers/add")).await.fill("The question", "May we keep this?");
    ines.tick("yes").tick("in person").press("Keep this answer").await.answers(200);
    ines.open(&family.at("/died")).await.fill("Died on", "24 Nov 2026");
    ines.fill("Who told you", "Runa Holm").press("Go on").await.press("Yes, enter it").await;
    for page in ["", "/family", "/sheets", "/family/answers"] {
        ines.open(&family.at(page)).await.answers(200).does_not_see("does not sign in");
        ines.does_not_see("What is kept, and who sees it").does_not_see("Write down an answer");
    }
    ines.sees("May we keep this?").open(&family.at("/sheets/kept")).await.answers(404);
    ines.open(&family.at("/family/3/role")).await.tick("reader").press("Save").await.answers(200);
    ines.open(&family.at("/history")).await.does_not_see("behalf");
    family.house.is_sound().await;
}
