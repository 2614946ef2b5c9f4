//! Before a visit: what changed since the last one there, the questions with room, what is still
//! open; and only what the one who prints may see.

use crate::support::{Browser, Family};

async fn written_down() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind");
    ines.fill("Phone", "218-555-0144").press("Add this contact").await.answers(200);
    for name in ["Warfarin", "Sertraline"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200);
    }
    for (medicine, on) in [("1", "20 Nov 2026"), ("2", "1 Oct 2026")] {
        ines.open(&family.at(&format!("/medicines/{medicine}/stop"))).await;
        ines.fill("From which day", on).fill("Why", "a bleed").fill("Who said so", "Dr Lind");
        ines.press("Stop").await.answers(200);
    }
    ines.open(&family.at("/conditions/add")).await.fill("Name", "Osteoporosis");
    ines.press("Add this condition").await.answers(200);
    ines.open(&family.at("/operations/add")).await.fill("What was done", "Hip replaced");
    ines.press("Add this operation").await.answers(200);
    for words in ["Is the scan needed?", "Who reads the blood test?"] {
        ines.open(&family.at("/questions/add")).await.fill("The question", words);
        ines.tick("a clinician by name").fill("The clinician's name", "Dr Lind");
        ines.press("Keep the question").await.answers(200);
    }
    ines.open(&family.at("/questions/2/ask")).await.press("It was asked").await.answers(200);
    (family, ines)
}

#[tokio::test]
async fn the_sheet_has_what_changed_what_is_asked_and_what_is_still_open() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/sheets")).await.press("Before a visit").await.answers(200);
    ines.open(&family.at("/sheets/visit?contact=1")).await.sees("With Dr Lind");
    ines.sees("Warfarin").sees("said Dr Lind: a bleed").does_not_see("Sertraline");
    ines.sees("Osteoporosis").sees("Hip replaced (operation)").sees("Is the scan needed?");
    ines.sees("asked 25 November 2026, no answer is written down");
    ines.sees("Nothing that was noticed is ticked for this visit.");
    ines.sees("Allergies: not asked").sees("The medicine list has each of them");
    ines.fill("Changes since", "1 Sep 2026").press("Show").await;
    ines.sees("Since 1 September 2026").sees("Sertraline").sees("With Dr Lind");
    ines.press("Print or save").await.answers(200);
    assert!(ines.body.starts_with(b"%PDF-"), "{}", ines.text());
    ines.open(&family.at("/sheets/visit?contact=1&since=sometime")).await.answers(200);
    ines.sees("“sometime” was not read.");
    ines.get(&family.at("/sheets/visit?contact=99")).await.answers(404);
    ines.get(&family.at("/sheets/visit?contact=x")).await.answers(404);
    ines.open(&family.at("/sheets")).await.sees("sheet before a visit");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_hidden_is_not_on_the_sheet_that_he_prints() {
    let (family, mut ines) = written_down().await;
    for (kind, item) in [("medicine", 1), ("condition", 1), ("operation", 1), ("question", 2)] {
        let page = family.at(&format!("/visibility/{kind}/{item}"));
        ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
    }
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/sheets/visit?contact=1&since=2026-01-01")).await.answers(200);
    for hidden in ["Warfarin", "Osteoporosis", "Hip replaced", "blood test"] {
        bram.does_not_see(hidden);
    }
    bram.sees("Sertraline").sees("No new condition and no new operation is written down.");
    ines.open(&family.at("/family/3/areas")).await.fill("log", "nothing").press("Save").await;
    bram.open(&family.at("/sheets/visit?contact=1")).await;
    bram.sees("Not listed here: Bram does not see this.");
    ines.open(&family.at("/family/3/areas"))
        .await
        .fill("essentials", "nothing")
        .press("Save")
        .await;
    bram.get(&family.at("/sheets/visit?contact=1")).await.answers(404);
    // An aide is shown what is taken now, and what was stopped before is not hers.
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/sheets/visit?contact=1")).await.answers(200).does_not_see("Warfarin");
    family.house.is_sound().await;
}
