//! A nurse at 2 a.m.: the sheet on screen in one press, on paper in two, and what the paper is
//! worth later.

use crate::support::{Browser, Family, html};
use kinsheaf::platform::audit::mark;
use sqlx::{Connection, SqliteConnection};

async fn written_down() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.fill("Dose", "1 tablet").press("Add this medicine").await.answers(200);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Furosemide");
    ines.press("Add this medicine").await.press("Hold").await;
    ines.fill("Why", "low pulse").fill("Who said so", "the clinic");
    ines.press("Hold").await.answers(200);
    ines.open(&family.at("/allergies/add")).await.fill("To what", "Penicillin").tick("allergy");
    ines.press("Add to the list").await.answers(200);
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Emeric");
    ines.fill("Phone", "218-555-0111").press("Add this contact").await.answers(200);
    (family, ines)
}

#[track_caller]
fn is_paper(browser: &mut Browser) {
    browser.answers(200);
    assert_eq!(browser.headers["content-type"], "application/pdf");
    assert!(browser.body.starts_with(b"%PDF"), "no PDF at {}", browser.at);
}

#[tokio::test]
async fn from_the_list_of_records_the_paper_is_two_presses_away() {
    let (family, mut ines) = written_down().await;
    ines.open("/").await.press("Emergency sheet of Ottoline Varga").await.sees("Penicillin");
    ines.press("Print or save").await;
    is_paper(&mut ines);
    let name = ines.headers["content-disposition"].to_str().expect("a name");
    assert_eq!(name, "inline; filename=\"emergency-sheet-2026-11-25.pdf\"");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_says_things_in_the_order_in_which_they_are_needed() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/sheets/emergency")).await;
    let page = ines.page();
    let heads: Vec<_> = html::select(&page, "main h2").into_iter().map(html::text).collect();
    assert_eq!(
        heads,
        [
            "In an emergency call",
            "Person",
            "Allergies",
            "Blood thinner",
            "Implant or device",
            "Directives",
            "Medicines",
            "On hold",
            "Conditions",
            "Operations and implants",
            "Contacts, in calling order",
            "Poison line"
        ]
    );
    let sheet: String = html::select(&page, "main").into_iter().map(html::text).collect();
    let order = ["911", "Ottoline Varga", "Penicillin", "Warfarin", "Furosemide", "Emeric"];
    let places: Vec<_> = order.iter().map(|it| sheet.find(it).expect(it)).collect();
    assert!(places.is_sorted(), "{places:?} in {sheet}");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_nobody_has_written_down_is_shown_as_missing() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/sheets/emergency")).await;
    ines.sees("what for: not written down").sees("reaction: not written down");
    ines.sees("address: not written down").sees("how taken: not written down");
    ines.open(&family.at("/medicines/1/edit")).await.fill("What for", "heart rhythm");
    ines.press("Save").await.open(&family.at("/sheets/emergency")).await.sees("for heart rhythm");
    let empty = Family::new().await;
    let mut ines = empty.browser("Ines").await;
    ines.open(&empty.at("/sheets/emergency")).await.sees("No medicine is written down.");
    ines.sees("Not asked yet").sees("No contact is written down.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn whoever_sees_the_record_prints_it_and_the_print_is_told() {
    let (family, mut ottoline) = (written_down().await.0, None);
    for name in ["Ottoline", "Ines", "Bram", "Delia", "Rosalind"] {
        let mut browser = family.browser(name).await;
        browser.open(&family.at("/sheets/emergency")).await.press("Print or save").await;
        is_paper(&mut browser);
        ottoline.get_or_insert(browser);
    }
    let mut ottoline = ottoline.expect("the person");
    ottoline.open(&family.at("/sheets")).await;
    let page = ottoline.page();
    let codes: Vec<_> = html::select(&page, "main h3").into_iter().map(html::text).collect();
    assert_eq!(codes.len(), 5);
    ottoline.sees("emergency sheet, Wed 25 Nov 2026, 9:12 am, by Delia");
    ottoline.open(&family.at("/history")).await;
    for (name, code) in ["Rosalind", "Delia", "Bram", "Ines", "Ottoline"].iter().zip(&codes) {
        ottoline.sees(&format!("{name} printed the emergency sheet {code}"));
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_older_paper_is_told_from_a_newer_one() {
    let (family, mut ines) = written_down().await;
    ines.press("Emergency sheet").await.press("Print or save").await;
    ines.open(&family.at("/sheets")).await.sees("says the same as now");
    ines.does_not_see("the record has changed since");
    ines.open(&family.at("/medicines/1/edit"))
        .await
        .fill("Dose", "half a tablet")
        .press("Save")
        .await;
    ines.open(&family.at("/sheets")).await.sees("the record has changed since");
    ines.does_not_see("says the same as now");
    ines.press("Emergency sheet").await.press("Print or save").await;
    ines.open(&family.at("/sheets")).await.sees("the record has changed since");
    ines.sees("says the same as now");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_mark_on_the_paper_is_found_in_the_history_years_later() {
    let (family, mut ines) = written_down().await;
    ines.press("Emergency sheet").await.press("Print or save").await;
    let head = sqlx::query_scalar::<_, String>("select head from print where id = 1");
    let head = head.fetch_one(&mut family.house.outside().await).await.expect("a print");
    ines.open(&family.at("/medicines/1/edit"))
        .await
        .fill("Dose", "half a tablet")
        .press("Save")
        .await;
    // As it stands on the paper, without the blanks between its groups.
    let printed = mark(&head).replace(' ', "");
    assert_eq!(printed.len(), 16);
    let operator = family.house.operator();
    let verified = |mark: String| async move {
        operator.verify(family.person, Some(&mark)).await.expect("a report").sound()
    };
    assert!(verified(printed).await);
    family.house.is_sound().await;
}

/// Another program holds the database, so nothing can be written.
async fn hold_the_writer(family: &Family) -> SqliteConnection {
    let mut other = family.house.outside().await;
    sqlx::raw_sql("begin immediate").execute(&mut other).await.expect("held");
    other
}

#[tokio::test]
async fn a_print_that_cannot_be_noted_is_given_all_the_same() {
    let (family, _ines) = written_down().await;
    let mut delia = family.browser("Delia").await;
    let other = hold_the_writer(&family).await;
    delia.open(&family.at("/sheets/emergency")).await.sees("Penicillin");
    delia.press("Print or save").await;
    is_paper(&mut delia);
    other.close().await.expect("let go");
    delia.open(&family.at("/sheets")).await.sees("Every print is written down here");
    family.house.is_sound().await;
}
