//! The medicines on paper: the whole list, the card for a wallet, a week for the pill box, a day.

use crate::support::{Browser, Family, html};

const OFTEN: &str = "every day, or every so many days";

async fn add(ines: &mut Browser, family: &Family, name: &str) {
    ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Strength", "5 mg");
    ines.fill("Dose", "1 tablet").fill("When", "twice a day");
    ines.press("Add this medicine").await.answers(200);
}

/// Warfarin in steps, Prednisone that changes in two days, Furosemide on hold, Amlodipine and
/// Digoxin stopped (one of them long ago), Penicillin that is not borne, Emeric to phone.
async fn written_down() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for name in ["Warfarin", "Prednisone", "Furosemide", "Amlodipine", "Digoxin"] {
        add(&mut ines, &family, name).await;
    }
    for (medicine, from, until, morning) in [
        ("1", "1 Nov 2026", "", "1"),
        ("2", "20 Nov 2026", "26 Nov 2026", "4"),
        ("2", "27 Nov 2026", "", "2"),
    ] {
        ines.open(&family.at(&format!("/medicines/{medicine}/steps/add"))).await.tick(OFTEN);
        ines.fill("From which day", from).fill("Until which day, this one too", until);
        ines.fill("morning", morning).fill("Counted in", "tablet");
        ines.press("Save").await.answers(200);
    }
    ines.open(&family.at("/medicines/3/hold")).await;
    ines.fill("Why", "low pulse").fill("Who said so", "the clinic");
    ines.press("Hold").await.answers(200);
    for (medicine, on) in [("4", "2 Oct 2026"), ("5", "2 Jan 2026")] {
        ines.open(&family.at(&format!("/medicines/{medicine}/stop"))).await;
        ines.fill("From which day", on).fill("Why", "swollen ankles");
        ines.fill("Who said so", "the clinic");
        ines.press("Stop").await.answers(200);
    }
    ines.open(&family.at("/allergies/add")).await.fill("To what", "Penicillin").tick("allergy");
    ines.press("Add to the list").await.answers(200);
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Emeric");
    ines.fill("Phone", "218-555-0111").press("Add this contact").await.answers(200);
    (family, ines)
}

/// Presses print, and looks at the paper's kind and name.
async fn prints(browser: &mut Browser, name: &str) {
    browser.press("Print or save").await.answers(200);
    assert!(browser.body.starts_with(b"%PDF"), "no PDF at {}", browser.at);
    let given = browser.headers["content-disposition"].to_str().expect("a name");
    assert_eq!(given, format!("inline; filename=\"{name}-2026-11-25.pdf\""));
}

#[tokio::test]
async fn the_list_holds_every_medicine_with_what_is_missing_and_what_was_stopped() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/medicines")).await.press("The list on paper").await;
    ines.sees("Ottoline Varga , born 9 March 1944").sees("In an emergency call 911");
    ines.sees("1 allergy or intolerance").sees("Penicillin").sees("2 medicines, 1 on hold");
    ines.sees("1 tablet in the morning Label: 1 tablet, twice a day, route not written down");
    ines.sees("4 tablets in the morning, from 20 November 2026 to 26 November 2026");
    ines.sees("2 tablets in the morning, from 27 November 2026").sees("what for: not written down");
    ines.sees("low pulse").sees("on hold, said the clinic; no day to resume is given");
    ines.sees("prescriber: not written down").sees("not checked yet");
    ines.sees("Amlodipine 5 mg stopped 2 October 2026 swollen ankles").does_not_see("Digoxin");
    let page = ines.page();
    let heads: Vec<_> = html::select(&page, "main h2").into_iter().map(html::text).collect();
    let stopped = "Stopped in the last 90 days, so that it is not started again by mistake";
    assert_eq!(heads, ["Allergies", "Taken now", "On hold, not taken now", stopped]);
    prints(&mut ines, "medicine-list").await;
    ines.open(&family.at("/sheets")).await.sees("medicine list, Wed 25 Nov 2026");
    ines.sees("says the same as now");
    ines.open(&family.at("/medicines/1/edit")).await.fill("What for", "clots").press("Save").await;
    ines.open(&family.at("/sheets")).await.sees("the record has changed since");
    ines.open(&family.at("/history")).await.sees("Ines printed the medicine list");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_card_says_in_a_few_words_what_is_taken_and_whom_to_phone() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/sheets")).await.press("Wallet card").await;
    ines.sees("born 9 March 1944").sees("Penicillin").sees("Emeric, 218-555-0111");
    ines.sees("Blood thinner Not asked yet").sees("Warfarin 5 mg: morning");
    ines.sees("Prednisone 5 mg: morning until 26 November 2026").sees("On hold: Furosemide 5 mg");
    ines.sees("First contact: not checked yet").does_not_see("Amlodipine");
    prints(&mut ines, "wallet-card").await;
    let empty = Family::new().await;
    let mut ines = empty.browser("Ines").await;
    ines.open(&empty.at("/sheets/wallet")).await.sees("No medicine is written down.");
    ines.sees("Not asked yet").sees("No contact is written down.");
    prints(&mut ines, "wallet-card").await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_week_shows_a_change_on_its_day_and_what_is_not_in_the_box() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/medicines")).await.press("A week for the pill box").await;
    ines.press("This week on paper").await.sees("Wed 25 Nov 2026 to Tue 1 Dec 2026");
    ines.sees("Wed 25 4 Thu 26 4 Fri 27 2 new Sat 28 2 Sun 29 2 Mon 30 2 Tue 1 2");
    ines.sees("from Fri 27 Nov 2026 2 tablets in the morning");
    ines.sees("Furosemide 5 mg on hold: low pulse");
    prints(&mut ines, "week-for-the-pill-box").await;
    ines.open(&family.at("/sheets/week")).await.fill("Which day first", "27 Nov 2026");
    ines.press("Show").await.sees("Fri 27 Nov 2026 to Thu 3 Dec 2026");
    ines.does_not_see("is the last day of");
    // What is printed is the week that was chosen, not the one that begins today.
    let (_, address, _) = ines.pressed("Print or save");
    assert!(address.ends_with("/sheets/week/print?on=2026-11-27"), "{address}");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_planned_stands_on_each_of_them() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/medicines/1/stop")).await.fill("From which day", "30 Nov 2026");
    ines.fill("Why", "before the operation").fill("Who said so", "Dr Oyelaran");
    ines.press("Stop").await.answers(200);
    for page in ["/sheets/medicines", "/sheets/week", "/sheets/day?on=2026-12-01"] {
        ines.open(&family.at(page)).await.sees("30 November 2026").sees("said Dr Oyelaran");
    }
    ines.open(&family.at("/sheets/wallet")).await;
    ines.sees("Warfarin 5 mg: morning (a change is planned: see the list)");
    ines.open(&family.at("/sheets/day?on=2026-11-29")).await.does_not_see("Dr Oyelaran");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_day_has_a_line_for_each_dose() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/medicines/day?on=2026-11-27")).await.press("This day on paper").await;
    ines.sees("Fri 27 Nov 2026").sees("morning 6–9 am 2 tablets Prednisone 5 mg");
    ines.sees("morning 6–9 am 1 tablet Warfarin 5 mg").sees("Not laid out here");
    prints(&mut ines, "sheet-of-a-day").await;
    ines.open(&family.at("/sheets/day?on=2026-10-01")).await.sees("Nothing is laid out");
    family.house.is_sound().await;
}

const SHEETS: [&str; 4] = ["/sheets/medicines", "/sheets/wallet", "/sheets/week", "/sheets/day"];

#[tokio::test]
async fn where_nothing_is_marked_what_was_not_checked_is_named() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/medicines/1/check")).await.fill("Compared with what", "the bottle");
    ines.press("Check").await.answers(200);
    let naming = "checked Wed 25 Nov 2026 by Ines, against the bottle";
    for sheet in &SHEETS[1..] {
        ines.open(&family.at(sheet)).await.sees("2 of 3 not checked yet");
        ines.sees(&format!("Warfarin 5 mg: {naming}")).does_not_see("the others are marked");
    }
    ines.open(&family.at(SHEETS[0])).await.sees("the others are marked").sees(naming);
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_hidden_is_on_none_of_them_and_an_aide_sees_what_is_taken_now() {
    let (family, mut ines) = written_down().await;
    for medicine in ["1", "4"] {
        ines.open(&family.at(&format!("/visibility/medicine/{medicine}"))).await.tick("Bram");
        ines.press("Save").await.answers(200);
    }
    let (mut bram, mut delia) = (family.browser("Bram").await, family.browser("Delia").await);
    for sheet in SHEETS {
        ines.open(&family.at(sheet)).await.sees("Warfarin");
        bram.open(&family.at(sheet)).await.sees("Prednisone").does_not_see("Warfarin");
        bram.does_not_see("Amlodipine").does_not_see("hidden");
        delia.open(&family.at(sheet)).await.sees("Warfarin").does_not_see("Amlodipine");
        delia.press("Print or save").await.answers(200);
    }
    bram.open(&family.at("/sheets/medicines")).await.sees("1 medicine, 1 on hold");
    delia.open(&family.at("/sheets/medicines")).await.sees("an aide is shown what is taken now");
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_does_not_see_the_allergies_is_told_that_they_are_not_on_the_list() {
    let (family, _) = written_down().await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/family/3/areas")).await.fill("essentials", "nothing");
    ottoline.press("Save").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/sheets/medicines")).await.sees("Bram does not see the allergies.");
    bram.does_not_see("Penicillin").press("Print or save").await.answers(200);
    family.house.is_sound().await;
}
