//! The note of a visit: begun on one device without a script, finished on another; one press makes the
//! answers, the change of a medicine, tasks and the next appointment, or nothing at all.

use crate::support::{Browser, Family};
use kinsheaf::platform::backup::{self, Unsound};

/// Dr Lind, contact 1; two medicines; three questions for Dr Lind.
pub async fn before_the_visit(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind").fill("Kind", "doctor");
    ines.fill("Phone", "218-555-0101").press("Add this contact").await.answers(200);
    for name in ["Warfarin", "Metoprolol"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Strength", "50 mg");
        ines.fill("Dose", "1 tablet").press("Add this medicine").await.answers(200);
    }
    for words in ["May she swim?", "Is the pulse too slow?", "Who looks at the blood test?"] {
        ines.open(&family.at("/questions/add?contact=1")).await.fill("The question", words);
        ines.press("Keep the question").await.answers(200);
    }
}

/// What was typed at the clinic, on the first device.
fn typed_at_the_clinic(browser: &mut Browser) {
    browser.fill("On which day", "24 Nov 2026").fill("With whom", "1").tick("Ines");
    browser.fill("What was said May she swim?", "Yes, in warm water.");
    browser.tick("Asked; the answer is to come Is the pulse too slow?");
    browser.fill("What else was said", "The ankles are better.");
}

#[tokio::test]
async fn a_visit_is_noted_and_nothing_is_lost() {
    let family = Family::new().await;
    let (mut phone, mut laptop) = (family.browser("Ines").await, family.browser("Ines").await);
    before_the_visit(&mut phone, &family).await;
    phone.open(&family.at("/visits/add")).await.sees("not kept yet");
    typed_at_the_clinic(&mut phone);
    phone.press("Keep as a draft").await.answers(200).sees("Kept as a draft").sees("kept at");
    // Nobody else is shown it, and nothing of it is in the record.
    let mut bram = family.browser("Bram").await;
    for page in ["/visits", "/today", "/history", "/questions"] {
        bram.open(&family.at(page)).await.does_not_see("warm water").does_not_see("not saved yet");
    }
    bram.get(&family.at("/visits/drafts/1")).await.answers(404);

    laptop.open(&family.at("/today")).await;
    laptop.press("Your note is not saved yet: a visit with Dr Lind of 24 Nov 2026").await;
    assert_eq!(laptop.value("What was said May she swim?"), "Yes, in warm water.");
    laptop.fill("What was decided", "Half of the tablet until the next visit.");
    laptop
        .tick("Metoprolol 50 mg: taken differently")
        .fill("Why, as it was said Metoprolol 50 mg", "slow pulse");
    laptop.fill("New dose Metoprolol 50 mg", "half a tablet");
    laptop.fill("Which test of test 1", "Blood test").fill("Where of test 1", "Harbor Lab");
    laptop.fill("Who sees to it of test 1", "2").fill("Result by of test 1", "3 Dec 2026");
    laptop.fill("What is to be done of follow-up 1", "Fetch the new bottle");
    laptop
        .fill("Who sees to it of follow-up 1", "3")
        .fill("By which day of follow-up 1", "27 Nov 2026");
    laptop
        .fill("Next visit on", "24 Feb 2027")
        .fill("At what time", "10 am")
        .fill("What it is", "Heart check");
    laptop.tick("to be read by Bram").press("Save the note").await.answers(200);
    laptop.sees("The note is saved").sees("Dr Lind, 24 November 2026").sees("Yes, in warm water.");
    laptop.sees("asked; the answer is to come").sees("not reached: it stands at the next visit");
    laptop.sees("Metoprolol 50 mg: taken differently from 24 November 2026. slow pulse");
    laptop.sees("Test: Blood test, Harbor Lab").sees("Ines has it").sees("Bram was asked");
    laptop.sees("Heart check").sees("Bram has not said yet that it was read");
    laptop.open(&family.at("/visits")).await.does_not_see("You are writing");
    came_of_it(&mut laptop, &family).await;
    family.house.is_sound().await;
}

async fn came_of_it(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/questions/1")).await.sees("Yes, in warm water.");
    ines.sees("Dr Lind, 24 November 2026");
    ines.open(&family.at("/questions/2")).await.sees("asked 24 November 2026, no answer yet");
    ines.sees("stood at one visit already");
    ines.open(&family.at("/questions/3")).await.sees("stood at one visit already");
    ines.open(&family.at("/medicines/2")).await.sees("half a tablet").sees("said by Dr Lind");
    ines.open(&family.at("/changes/1")).await.sees("slow pulse").sees("Dr Lind");
    ines.open(&family.at("/history"))
        .await
        .sees("Ines wrote the note of the visit Dr Lind, 24 November 2026");
    ines.sees("Ines asked Bram to read the note of the visit Dr Lind, 24 November 2026");
}

#[tokio::test]
async fn a_note_is_read_by_whom_it_is_for_and_said_by_herself() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    before_the_visit(&mut ines, &family).await;
    ines.open(&family.at("/visits/add"))
        .await
        .fill("With whom", "1")
        .fill("What else was said", "All well.");
    ines.tick("to be read by Bram").press("Save the note").await.answers(200);
    ines.does_not_see("I have read this");
    ines.send(&family.at("/visits/1/read"), &[]).await.answers(404);
    bram.open(&family.at("/visits/1")).await.sees("All well.");
    bram.open(&family.at("/today"))
        .await
        .press("You were asked to read the note of the visit: Dr Lind, 25 November 2026")
        .await;
    bram.press("I have read this").await.answers(200).sees("Bram has read it: said so");
    bram.does_not_see("You were asked to read this");
    bram.open(&family.at("/today")).await.does_not_see("You were asked to read");
    bram.open(&family.at("/history")).await.sees("Bram has read the note of the visit Dr Lind");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_put_right_struck_brought_back_and_hidden() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    before_the_visit(&mut ines, &family).await;
    ines.open(&family.at("/visits/add")).await.fill("With whom", "1").tick("Ines");
    ines.fill("What else was said", "All well.").press("Save the note").await.answers(200);
    for it in [&mut ines, &mut bram] {
        it.open(&family.at("/visits/1/edit")).await;
        assert_eq!(it.value("What was said"), "All well.");
    }
    bram.fill("What was said", "All well but the knee.")
        .tick("Ottoline")
        .press("Save")
        .await
        .answers(200);
    ines.fill("What was said", "All well, and more.").press("Save").await.answers(409);
    ines.sees("Someone changed this meanwhile").sees("All well but the knee.");
    assert_eq!(ines.value("What was said"), "All well, and more.");
    ines.press("Save").await.answers(200).sees("All well, and more.");
    ines.press("Strike").await.press("Strike").await.answers(422);
    ines.fill("What was wrong with the note", "the other parent's")
        .press("Strike")
        .await
        .answers(200);
    ines.sees("struck: the other parent's");
    ines.open(&family.at("/visits")).await.does_not_see("Dr Lind, 25 November 2026");
    ines.open(&family.at("/visits/1")).await.press("Bring back").await.press("Bring back").await;
    ines.answers(200);
    for item in ["visit/1", "contact/1"] {
        let page = family.at(&format!("/visibility/{item}"));
        ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
        for page in ["/visits", "/history", "/today"] {
            bram.open(&family.at(page))
                .await
                .answers(200)
                .does_not_see("Dr Lind, 25 November 2026");
        }
        bram.get(&family.at("/visits/1")).await.answers(404);
        bram.get(&family.at("/history/visit/1")).await.answers(404);
        ines.open(&page).await.untick("Bram").press("Save").await.answers(200);
        bram.open(&family.at("/visits/1")).await.answers(200);
    }
    family.house.is_sound().await;
}

/// The newest reader of a note is exchanged for another, and back: the history stays sound, names
/// each press, and a backup of it is restored.
#[tokio::test]
async fn its_readers_are_exchanged() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    before_the_visit(&mut ines, &family).await;
    ines.open(&family.at("/visits/add")).await.fill("With whom", "1");
    ines.fill("What else was said", "All well.").tick("to be read by Rosalind");
    ines.press("Save the note").await.answers(200);
    for (off, on) in [("Rosalind", "Bram"), ("Bram", "Rosalind")] {
        ines.open(&family.at("/visits/1/edit")).await.untick(&format!("to be read by {off}"));
        ines.tick(&format!("to be read by {on}")).press("Save").await.answers(200);
        ines.sees(&format!("{on} has not said yet that it was read"));
        ines.does_not_see(&format!("{off} has not said yet"));
        family.house.is_sound().await;
    }
    ines.open(&family.at("/history")).await.sees("Ines asked Bram to read the note of the visit");
    ines.sees("Ines took someone off the readers of the note of the visit Dr Lind");
    ines.sees("Ines asked someone again to read the note of the visit Dr Lind");
    let place = tempfile::TempDir::new().expect("a folder");
    let (file, folder) = (place.path().join("backup.zip"), place.path().join("restored"));
    backup::make(family.house.folder(), &file, family.house.now()).await.expect("made");
    backup::restore(&file, &folder, Unsound::Refused).await.expect("restored");
}
