//! A paper is found where it belongs: on the page of the visit or the appointment it is about, on the sheet
//! before the visit, with the directive whose scan it is, with the tasks about it. Who does not see one side
//! is told nothing of it on the other.

use super::a_pile_is_sorted::put_in;
use crate::support::{Browser, Family, paper::picture};

/// A paper that is filed as this, about that.
async fn filed(
    browser: &mut Browser,
    family: &Family,
    (id, kind, title, about): (u32, &str, &str, &str),
) {
    let name = format!("{id}.png");
    put_in(browser, family, &[(&name, picture(u16::try_from(id).expect("few")))]).await;
    browser.open(&family.at(&format!("/papers/{id}/file"))).await;
    browser.fill("Kind", kind).fill("Title", title).fill("What it is about", about);
    browser.press("File it").await.answers(200);
}

async fn house() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Eye test");
    ines.fill("Or a name", "Dr Quill").fill("Day", "8 Dec 2026").fill("Time", "2 pm");
    ines.press("Keep this appointment").await.answers(200);
    ines.open(&family.at("/visits/add")).await.fill("On which day", "24 Nov 2026");
    ines.fill("Or by name", "Dr Lind").fill("What else was said", "Come again in May.");
    ines.press("Save the note").await.answers(200);
    ines.open(&family.at("/directives/add")).await.tick("living will");
    ines.fill("Signed on", "3 May 2022").press("Add this directive").await.answers(200);
    (family, ines)
}

#[tokio::test]
async fn a_paper_stands_where_it_belongs_and_leads_there() {
    let (family, mut ines) = house().await;
    filed(&mut ines, &family, (1, "letter", "Referral", "appointment/1")).await;
    filed(&mut ines, &family, (2, "test result", "Blood count", "visit/1")).await;
    filed(&mut ines, &family, (3, "directive", "Living will, scanned", "directive/1")).await;
    ines.open(&family.at("/papers/1"))
        .await
        .press("Eye test")
        .await
        .sees("Papers 1")
        .sees("Referral");
    ines.open(&family.at("/papers/2")).await.sees("about").press("Dr Lind, 24 November 2026").await;
    ines.sees("Papers 1").press("Blood count").await.sees("test result");
    ines.open(&family.at("/papers/3")).await.press("Living will of 3 May 2022").await;
    ines.sees("Its scan 1").press("Living will, scanned").await.answers(200);
    let sheet = family.at("/sheets/visit?appointment=1&on=2026-12-08");
    ines.open(&sheet)
        .await
        .sees("Papers for this visit")
        .sees("Referral")
        .does_not_see("Blood count");
    ines.press("Print or save").await.answers(200);
    // It belonged elsewhere; then nowhere.
    ines.open(&family.at("/papers/1/file"))
        .await
        .fill("What it is about", "visit/1")
        .press("Save")
        .await;
    ines.answers(200).open(&family.at("/visits/1")).await.sees("Papers 2").sees("Referral");
    ines.open(&sheet).await.does_not_see("Papers for this visit");
    ines.open(&family.at("/papers/1/file")).await.fill("What it is about", "").press("Save").await;
    ines.answers(200).open(&family.at("/visits/1")).await.sees("Papers 1").does_not_see("Referral");
    ines.open(&family.at("/history/paper/1")).await;
    ines.sees("Ines said what a paper belongs to: Referral to Dr Lind, 24 November 2026");
    ines.sees("Ines said what a paper belongs to: Referral");
    // What is no choice of the page is refused.
    for odd in ["visit/99", "medicine/1", "visit/x", "directive"] {
        ines.open(&family.at("/papers/1/file"))
            .await
            .fill("What it is about", odd)
            .press("Save")
            .await;
        ines.answers(422).sees("Choose from the list, or nothing.");
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_she_does_not_see_is_not_named_and_stays_when_she_saves() {
    let (family, mut ines) = house().await;
    filed(&mut ines, &family, (1, "letter", "Of the lawyer", "directive/1")).await;
    filed(&mut ines, &family, (2, "letter", "Close to her", "visit/1")).await;
    ines.open(&family.at("/visibility/paper/2")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/papers/1")).await.sees("Living will of 3 May 2022");
    bram.open(&family.at("/visits/1")).await.does_not_see("Close to her").does_not_see("Papers 1");
    ines.open(&family.at("/family/3/areas"))
        .await
        .fill("directives", "nothing")
        .press("Save")
        .await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/papers/1")).await.sees("Of the lawyer").does_not_see("Living will");
    bram.open(&family.at("/papers/1/file"))
        .await
        .does_not_see("Directives")
        .does_not_see("Living will");
    bram.fill("Title", "Of her lawyer").press("Save").await.answers(200);
    bram.open(&family.at("/history")).await.answers(200).does_not_see("Living will");
    ines.open(&family.at("/papers/1"))
        .await
        .sees("Of her lawyer")
        .sees("Living will of 3 May 2022");
    bram.open(&family.at("/papers/1/file"))
        .await
        .fill("What it is about", "directive/1")
        .press("Save")
        .await;
    bram.answers(200);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_task_about_a_paper_is_for_those_who_see_it() {
    let (family, mut ines) = house().await;
    filed(&mut ines, &family, (1, "letter", "Claim form", "")).await;
    ines.open(&family.at("/papers/1")).await.press("Make it a task").await;
    ines.fill("What is to be done", "Send the form back").press("Keep the task").await.answers(200);
    ines.sees("about")
        .press("Claim form")
        .await
        .press("Tasks about it")
        .await
        .sees("Send the form back");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/tasks")).await.sees("Send the form back");
    bram.open(&family.at("/tasks/1"))
        .await
        .press("I take it : Send the form back")
        .await
        .answers(200);
    ines.open(&family.at("/papers/1/file")).await.tick("Only stewards and the person see it");
    ines.press("Save").await.answers(200);
    bram.open(&family.at("/tasks")).await.does_not_see("Send the form back");
    bram.get(&family.at("/tasks/1")).await.answers(404);
    bram.get(&family.at("/tasks/about/paper/1")).await.answers(404);
    bram.open(&family.at("/history"))
        .await
        .does_not_see("Claim form")
        .does_not_see("Send the form");
    bram.open(&family.at("/tasks/add?about=paper/1")).await.answers(200).does_not_see("Claim form");
    // In his hands nobody would do it.
    ines.open(&family.at("/tasks/1")).await.sees("whose place does not reach it");
    ines.open(&family.at("/tasks/1/offer")).await.does_not_see("Bram");
    family.house.is_sound().await;
}
