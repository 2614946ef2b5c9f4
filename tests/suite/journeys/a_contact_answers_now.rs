//! Whom to phone at this hour: who answers now stands first, by the hours of each, on clocks that
//! differ. The test begins on Wednesday 25 November 2026, 9:12 am in Duluth.

use crate::support::{Browser, Family, html};
use time::Duration;

async fn add(ines: &mut Browser, family: &Family, name: &str, hours: &str, zone: &str) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Phone", "218-555-0120");
    ines.fill("Hours", hours).fill("Time zone of these hours", zone);
    ines.press("Add this contact").await.answers(200).sees(&format!("Added {name}"));
}

async fn with_four() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (name, hours, zone) in [
        ("Emeric", "", ""),
        ("Portland desk", "Mon-Fri 8:30-17:00", "America/Los_Angeles"),
        ("Dr Oyelaran", "Mon-Fri 8-17; Sat 9-12", ""),
        ("Night line", "every day 19-7", ""),
    ] {
        add(&mut ines, &family, name, hours, zone).await;
    }
    (family, ines)
}

/// The names below each heading, with the places in the calling order.
fn blocks(browser: &Browser) -> Vec<(String, Vec<String>)> {
    let page = browser.page();
    let sections = html::select(&page, "main section.group").into_iter();
    let texts = |at: scraper::ElementRef, css: &str| -> Vec<String> {
        at.select(&scraper::Selector::parse(css).expect("a selector")).map(html::text).collect()
    };
    let block = |at| {
        let rows = texts(at, ".number").into_iter().zip(texts(at, "h3"));
        (texts(at, "h2").concat(), rows.map(|(number, name)| format!("{number} {name}")).collect())
    };
    sections.map(block).collect()
}

fn named(block: &(String, Vec<String>)) -> (&str, Vec<&str>) {
    (&block.0, block.1.iter().map(String::as_str).collect())
}

#[tokio::test]
async fn who_answers_now_stands_first_and_the_order_stays() {
    let (family, mut ines) = with_four().await;
    ines.open(&family.at("/contacts")).await.answers(200);
    ines.sees("answers now, until 5 pm").sees("answers from 10:30 am (in 2 h)");
    ines.sees("answers from 7 pm (in 10 h)").sees("hours not known");
    let now = blocks(&ines);
    assert_eq!(named(&now[0]), ("Answers now", vec!["3 Dr Oyelaran"]));
    let others = vec!["1 Emeric", "2 Portland desk", "4 Night line"];
    assert_eq!(named(&now[1]), ("The others", others));

    // At half past ten Portland opens; the order inside the block is the family's.
    family.house.pass(Duration::minutes(80));
    ines.open(&family.at("/contacts")).await;
    let now = blocks(&ines);
    assert_eq!(named(&now[0]), ("Answers now", vec!["2 Portland desk", "3 Dr Oyelaran"]));

    // The order for the sheet knows nothing of the hour.
    ines.open(&family.at("/sheets/emergency")).await;
    let text = ines.text();
    let places: Vec<_> = ["1. Emeric", "2. Portland desk", "3. Dr Oyelaran", "4. Night line"]
        .map(|it| text.find(it).unwrap_or_else(|| panic!("no {it}: {text}")))
        .into();
    assert!(places.is_sorted());
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_night_passes_midnight_and_a_sunday_has_no_office() {
    let (family, _) = with_four().await;
    // Sunday 29 November, 3:12 am.
    family.house.pass(Duration::hours(3 * 24 + 18));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts")).await.sees("answers now, until 7 am");
    ines.sees("answers from Mon 8 am (in 29 h)");
    assert_eq!(named(&blocks(&ines)[0]), ("Answers now", vec!["4 Night line"]));
    family.house.is_sound().await;
}

#[tokio::test]
async fn hours_are_said_in_full_and_on_both_clocks() {
    let (family, mut ines) = with_four().await;
    ines.open(&family.at("/contacts/2")).await;
    ines.sees("Mon–Fri 8:30 am–5 pm, Los Angeles time").sees("Mon–Fri 10:30 am–7 pm, Chicago time");
    ines.open(&family.at("/contacts/3")).await.sees("Mon–Fri 8 am–5 pm; Sat 9 am–noon");
    ines.does_not_see("Mon–Fri 8 am–5 pm; Sat 9 am–noon, Chicago");
    ines.open(&family.at("/sheets/emergency")).await;
    ines.sees("answers Mon–Fri 10:30 am–7 pm, Chicago time").does_not_see("Los Angeles");
    ines.open(&family.at("/history")).await;
    ines.sees("hours after: Mon–Fri 8 am–5 pm; Sat 9 am–noon");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_cannot_be_read_is_named_and_the_typing_kept() {
    let (family, mut ines) = with_four().await;
    ines.open(&family.at("/contacts/1/edit")).await;
    for (typed, says) in [
        ("Mon-Fri 9-5 except holidays", "“except” could not be read."),
        ("Mon-Fri", "A day has no hours."),
        ("9", "A time has no end."),
    ] {
        ines.fill("Hours", typed).press("Save").await.answers(422).sees(says);
        assert_eq!(ines.value("Hours"), typed);
    }
    ines.fill("Hours", "weekdays 9 to 5").fill("Time zone of these hours", "Duluth");
    ines.press("Save").await.answers(422).sees("Choose a time zone from the list");
    ines.fill("Time zone of these hours", "").press("Save").await.answers(200);
    ines.sees("Mon–Fri 9 am–5 pm").sees("answers now, until 5 pm").press("Edit").await;
    assert_eq!(ines.value("Hours"), "Mon–Fri 9 am–5 pm");
    family.house.is_sound().await;
}
