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
    ines.sees("Warfarin")
        .sees("taken until then:")
        .sees("said Dr Lind: a bleed")
        .does_not_see("Sertraline");
    ines.sees("Osteoporosis").sees("Hip replaced (operation)").sees("Is the scan needed?");
    ines.sees("asked 25 November 2026, no answer is written down");
    ines.sees("Nothing that was noticed is ticked for this visit.");
    ines.sees("Allergies Not asked yet").sees("The medicine list has each of them");
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

async fn booked(ines: &mut Browser, family: &Family, day: &str) {
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Heart check");
    ines.fill("Clinician or service", "1").fill("Day", day).fill("Time", "9:30 am");
    ines.press("Keep this appointment").await.answers(200);
}

#[tokio::test]
async fn changes_are_told_since_the_last_visit_that_was_kept_with_this_clinician() {
    let (family, mut ines) = written_down().await;
    booked(&mut ines, &family, "2 Sep 2026").await;
    booked(&mut ines, &family, "1 Dec 2026").await;
    let sheet = family.at("/sheets/visit?appointment=2&on=2026-12-01");
    ines.open(&sheet).await.sees("no earlier visit with Dr Lind was kept");
    ines.does_not_see("Sertraline").sees("Tue 1 Dec 2026, 9:30 am, Chicago time: Heart check");
    ines.sees("Nobody has said that she will go along");
    ines.open(&family.at("/appointments/1")).await.press("How it stands").await.tick("kept");
    ines.press("Save").await.answers(200);
    ines.open(&sheet).await.sees("Since the visit with Dr Lind on 2 September 2026");
    ines.sees("Sertraline").sees("Warfarin");
    ines.open(&family.at("/sheets/visit"))
        .await
        .press("Tue 1 Dec 2026, 9:30 am: Heart check")
        .await;
    ines.sees("With Dr Lind");
    ines.get(&family.at("/sheets/visit?appointment=99&on=2026-12-01")).await.answers(404);
    ines.get(&family.at("/sheets/visit?appointment=2&on=then")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn only_what_is_ticked_stands_on_the_sheet_and_the_person_takes_it_off() {
    let (family, mut ines) = written_down().await;
    booked(&mut ines, &family, "1 Dec 2026").await;
    let sheet = family.at("/sheets/visit?appointment=1&on=2026-12-01");
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/noticed/add")).await.tick("walking and getting up");
    delia.fill("What you saw", "Held on to the wall").press("Keep it").await.answers(200);
    ines.open(&sheet).await.does_not_see("Held on to the wall");
    delia.press("On the sheet of a visit").await.fill("For which visit", "1/2026-12-01");
    delia.press("Save").await.answers(200).sees("It stands on the sheet").sees("Heart check");
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/noticed/1/answer")).await.fill("In own words", "The floor was wet.");
    ottoline.press("Keep this answer").await.answers(200);
    ines.open(&sheet).await.sees("Held on to the wall").sees("noticed by Delia");
    ines.sees("Ottoline Varga says: The floor was wet.");

    // For the clinician only: on her sheet and on Delia's, on nobody else's.
    ottoline.open(&family.at("/noticed/1/clinician")).await;
    ottoline.press("Keep for the clinician only").await.answers(200);
    for (who, has) in [("Ottoline", true), ("Delia", true), ("Ines", false), ("Rosalind", false)] {
        let mut browser = family.browser(who).await;
        browser.open(&sheet).await.answers(200);
        assert_eq!(browser.text().contains("Held on to the wall"), has, "for {who}");
    }
    ottoline.open(&family.at("/noticed/1/family")).await.press("Show the family again").await;
    ottoline.answers(200).press("On the sheet of a visit").await.fill("For which visit", "");
    ottoline.press("Save").await.answers(200).sees("It stands on no sheet");
    ines.open(&sheet).await.does_not_see("Held on to the wall");
    ines.open(&family.at("/noticed/1/visit")).await.sees("took this off the sheets");
    ines.fill("For which visit", "1/2026-12-01").press("Save").await.answers(422);
    ines.sees("only she puts it on one again");
    ines.open(&family.at("/history")).await.sees("off the sheets, as Ottoline Varga wishes");

    // A visit that is hidden from Bram leaves no trace, and his saving takes nothing off.
    ottoline.open(&family.at("/noticed/1/visit")).await.fill("For which visit", "1/2026-12-01");
    ottoline.press("Save").await.answers(200);
    ottoline.open(&family.at("/visibility/appointment/1")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/noticed/1")).await.does_not_see("Heart check");
    bram.open(&family.at("/noticed/1/visit")).await.does_not_see("Heart check");
    bram.press("Save").await.answers(200);
    bram.get(&sheet).await.answers(404);
    ines.open(&sheet).await.sees("Held on to the wall");
    family.house.is_sound().await;
}
