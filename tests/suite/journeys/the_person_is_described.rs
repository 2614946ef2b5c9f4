//! The person: who she is, whom to phone, and the paper her sheets are printed on.

use crate::support::{Browser, Family, html};

async fn editing(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("")).await.press("Edit").await;
    ines
}

#[tokio::test]
async fn everything_that_is_written_down_of_her_is_shown() {
    let family = Family::new().await;
    let mut ines = editing(&family).await;
    let facts = [
        ("Full name", "Ottoline Judit Varga"),
        ("Address", "14 Superior Street, Duluth"),
        ("Language", "English, Hungarian"),
        ("Hearing", "hearing aid on the left"),
        ("Vision", "reading glasses"),
        ("Mobility", "walks with a cane"),
        ("Emergency number", "112"),
        ("Poison line", "218-555-0119"),
        ("Whom to phone first", "the hospice nurse"),
        ("Number to phone first", "218-555-0120 ext 3"),
        ("Who said so", "Dr Oyelaran, 3 November"),
        ("Where this comes from", "her insurance card"),
    ];
    for (label, value) in facts {
        ines.fill(label, value);
    }
    ines.fill("Born", "9 April 1944").fill("Time zone", "America/Denver").tick("A4");
    ines.press("Save").await.answers(200).sees("Saved Ottoline Judit Varga");
    for (_, value) in facts {
        ines.sees(value);
    }
    ines.sees("9 April 1944, age 82").sees("America/Denver").sees("printed on A4");
    // The head of every page follows.
    ines.press("Medicines").await.sees("born 9 April 1944, age 82").sees("8:12 am, Denver time");
    ines.press("History").await.sees("Ines changed Ottoline Judit Varga");
    ines.sees("hearing after: hearing aid on the left").sees("paper before: us-letter after: a4");
    family.house.is_sound().await;
}

#[tokio::test]
async fn whom_to_phone_first_needs_all_three_or_none() {
    let family = Family::new().await;
    let mut ines = editing(&family).await;
    ines.fill("Whom to phone first", "the hospice nurse").press("Save").await.answers(422);
    ines.sees("2 things to put right");
    ines.sees("Enter the number to phone first, or leave all three empty.");
    ines.sees("Enter who told the family so, or leave all three empty.");
    ines.fill("Number to phone first", "218-555-0120").press("Save").await.answers(422);
    ines.sees("One thing to put right").fill("Who said so", "Dr Oyelaran").press("Save").await;
    ines.answers(200).sees("the hospice nurse").sees("said by Dr Oyelaran");

    ines.press("Edit").await.fill("Number to phone first", "").press("Save").await.answers(422);
    ines.fill("Whom to phone first", "").fill("Who said so", "").press("Save").await.answers(200);
    ines.does_not_see("the hospice nurse").does_not_see("phone first");
    ines.open(&family.at("/sheets/emergency")).await.does_not_see("Phone first");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_numbers_to_dial_stand_above_everything_else_on_the_sheet() {
    let family = Family::new().await;
    let mut ines = editing(&family).await;
    ines.fill("Whom to phone first", "the hospice nurse").fill("Who said so", "Dr Oyelaran");
    ines.fill("Number to phone first", "218-555-0120 ext 3").fill("Emergency number", "112");
    ines.press("Save").await.press("Emergency sheet").await.answers(200);
    let page = ines.page();
    let sheet: String = html::select(&page, "main").into_iter().map(html::text).collect();
    let at = |words: &str| sheet.find(words).unwrap_or_else(|| panic!("no {words:?}: {sheet}"));
    let order = ["Phone first", "the hospice nurse", "said by Dr Oyelaran"];
    let order = order.iter().chain(&["In an emergency call", "112", "Person", "born 9 March 1944"]);
    let places: Vec<_> = order.map(|it| at(it)).collect();
    assert!(places.is_sorted(), "{places:?} in {sheet}");
    let calls = html::select(&page, "main .calls a").into_iter();
    let calls: Vec<_> = calls.filter_map(|it| it.value().attr("href")).collect();
    assert_eq!(calls, ["tel:2185550120;ext=3", "tel:112"]);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_birth_date_is_a_day_that_has_been() {
    let family = Family::new().await;
    let mut ines = editing(&family).await;
    for (typed, says) in [
        ("26 Nov 2026", "This day has not come yet."),
        ("31 Feb 1944", "This is not a day in the calendar from 1850 to 2199."),
        ("31 Dec 1849", "This is not a day in the calendar from 1850 to 2199."),
        ("", "Enter the day of birth, like 9 Mar 1944."),
    ] {
        ines.fill("Born", typed).press("Save").await.answers(422).sees(says);
        assert_eq!(ines.value("Born"), typed);
    }
    ines.open(&family.at("")).await.sees("9 March 1944, age 82");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_check_lasts_until_the_next_change() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("")).await.sees("not checked yet").press("Check").await;
    ines.press("Check").await.answers(422).sees("Enter what you compared it with");
    ines.fill("Compared with what", "her insurance card").press("Check").await;
    ines.sees("Ottoline Varga is checked");
    ines.sees("checked today by Ines, against her insurance card");
    ines.press("Edit").await.press("Save").await.sees("checked today by Ines");
    ines.press("Edit").await.fill("Vision", "reading glasses").press("Save").await;
    ines.sees("not checked yet").open(&family.at("/history")).await;
    ines.sees("Ines checked Ottoline Varga against her insurance card");
    ines.sees("Ines changed the vision of Ottoline Varga from nothing to reading glasses");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_sheet_is_printed_on_the_paper_that_was_chosen() {
    let family = Family::new().await;
    let mut ines = editing(&family).await;
    // Widths in points: ANSI/ASME Y14.1 (Letter, 8.5 in) and ISO 216:2007 (A4, 210 mm).
    for (paper, box_of) in [("US Letter", "[0 0 612 792]"), ("A4", "[0 0 595.27")] {
        ines.open(&family.at("/edit")).await.tick(paper).press("Save").await.answers(200);
        ines.press("Emergency sheet").await.press("Print or save").await.answers(200);
        let pdf = String::from_utf8_lossy(&ines.body).into_owned();
        let found = pdf.split("/MediaBox").nth(1).unwrap_or_default().trim_start();
        assert!(found.starts_with(box_of), "{paper}: {}", &found[..found.len().min(40)]);
    }
    family.house.is_sound().await;
}
