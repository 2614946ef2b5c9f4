//! The press, read back: every string is on the pages, inside the margins, with the person's marks.

mod cards;
mod medicines;

use std::{env, fs, path::Path, sync::LazyLock};

use serde_json::Value;
use typst::layout::{Frame, FrameItem, Point};

use super::*;

/// A run of text as it lies on the paper: page, place of its start in points, width, what it says.
struct Run {
    page: usize,
    x: f64,
    y: f64,
    width: f64,
    text: String,
}

fn runs(document: &PagedDocument) -> Vec<Run> {
    let mut found = Vec::new();
    for (page, leaf) in document.pages().iter().enumerate() {
        gather(&leaf.frame, Point::zero(), page, &mut found);
    }
    found
}

fn gather(frame: &Frame, from: Point, page: usize, found: &mut Vec<Run>) {
    for (place, item) in frame.items() {
        let at = from + *place;
        match item {
            FrameItem::Group(group) => gather(&group.frame, at, page, found),
            FrameItem::Text(text) => found.push(Run {
                page,
                x: at.x.to_pt(),
                y: at.y.to_pt(),
                width: text.width().to_pt(),
                text: text.text.to_string(),
            }),
            _ => {}
        }
    }
}

fn squeezed(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace() && !typst::text::is_default_ignorable(*c)).collect()
}

fn strings(data: &Value, found: &mut Vec<String>) {
    match data {
        Value::String(text) => found.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| strings(item, found)),
        Value::Object(keys) => keys.values().for_each(|item| strings(item, found)),
        _ => {}
    }
}

fn set(data: Value) -> PagedDocument {
    Stock::open().set(Sheet::Emergency, data).unwrap()
}

/// What takes many seconds without optimisation: set for `tests/outside/sheets.py` alone.
const LONG: [&str; 5] = ["long", "list-sixty", "week-sixty", "day-sixty", "list-hostile"];

/// Sixty medicines, set once for the tests that look at them: it takes seconds without optimisation.
static SIXTY: LazyLock<(Value, PagedDocument)> = LazyLock::new(|| {
    let data = samples::long(60);
    (data.clone(), set(data))
});

#[test]
fn every_string_of_a_list_of_sixty_is_on_the_paper() {
    let (data, document) = &*SIXTY;
    let printed: String = runs(document).iter().map(|run| squeezed(&run.text)).collect();
    let mut wanted = Vec::new();
    for part in [
        "person",
        "allergies",
        "statements",
        "directives",
        "medicines",
        "conditions",
        "operations",
        "usual",
        "contacts",
        "print",
    ] {
        strings(&data[part], &mut wanted);
    }
    let lost: Vec<_> = wanted.iter().filter(|text| !printed.contains(&squeezed(text))).collect();
    assert!(wanted.len() > 500 && lost.is_empty(), "not printed: {lost:?}");
    assert!(printed.contains("54medicines,6onhold"), "the count lets a lost page be noticed");
}

#[test]
fn no_text_leaves_the_paper_or_the_clear_binding_edge() {
    let others = samples::sheets()
        .into_iter()
        .filter(|(name, ..)| !LONG.contains(name))
        .map(|(name, sheet, data)| (name, Stock::open().set(sheet, data).unwrap()));
    for (name, document) in others.chain([("sixty", SIXTY.1.clone())]) {
        let size = document.pages()[0].frame.size();
        for run in runs(&document) {
            let inside = run.x >= 72.0 - 0.1
                && run.x + run.width <= size.x.to_pt() - 36.0
                && run.y >= 18.0
                && run.y <= size.y.to_pt() - 18.0;
            assert!(
                inside,
                "{name}, page {}: {:?} at {}, {}",
                run.page + 1,
                run.text,
                run.x,
                run.y
            );
        }
    }
}

#[test]
fn every_page_says_whose_it_is_and_how_many_there_are() {
    let document = &SIXTY.1;
    let pages = document.pages().len();
    let all = runs(document);
    assert!(pages > 4);
    for page in 0..pages {
        let text: String =
            all.iter().filter(|run| run.page == page).map(|run| squeezed(&run.text)).collect();
        for words in [
            "OttolineVarga,born9March1944",
            "K7Q-4MZD",
            "0f3a99b1c2047e5d",
            &format!("Page{}of{pages}", page + 1),
        ] {
            assert!(text.contains(words), "page {}: {words}", page + 1);
        }
    }
}

#[test]
fn a_letter_no_font_has_is_shown_as_missing_and_explained() {
    let mut data = samples::empty();
    let before: String = runs(&set(data.clone())).iter().map(|run| run.text.clone()).collect();
    data["person"]["name"] = "Ottoline 王 Varga 👩\u{200d}⚕\u{fe0f}".into();
    let after: String = runs(&set(data)).iter().map(|run| run.text.clone()).collect();
    assert!(!before.contains('□'));
    assert!(squeezed(&after).contains("Ottoline□Varga□⚕") && after.contains("□ stands for"));
}

/// American Council of the Blind, large print guidelines, 2022 (from memory): 18 points and more, nothing in italics.
#[test]
fn the_sheet_for_the_person_is_large_print_on_every_page() {
    let document = Stock::open().set(Sheet::Kept, samples::kept::ordinary()).unwrap();
    for (page, leaf) in document.pages().iter().enumerate() {
        let mut words = String::new();
        sized(&leaf.frame, &mut |size, text| {
            assert!(size >= 18.0, "page {}: {text:?} in {size} points", page + 1);
            words.push_str(&squeezed(text));
        });
        for whose in ["OttolineVarga,born9March1944", "K7Q-4MZD", "Wed25Nov2026"] {
            assert!(words.contains(whose), "page {}: {whose}", page + 1);
        }
    }
}

fn sized(frame: &Frame, look: &mut impl FnMut(f64, &str)) {
    for (_, item) in frame.items() {
        match item {
            FrameItem::Group(group) => sized(&group.frame, look),
            FrameItem::Text(text) => look(text.size.to_pt(), &text.text),
            _ => {}
        }
    }
}

/// Ranges where the fonts have holes, control and private characters, each alone and under a mark from another script.
#[tokio::test]
async fn no_character_costs_the_sheet() {
    let odd =
        ['\u{0}'..='\u{a0}', '\u{2f0}'..='\u{36f}', '\u{600}'..='\u{61f}', '\u{e80}'..='\u{eb0}'];
    let far = [
        '\u{2000}'..='\u{206f}',
        '\u{e000}'..='\u{e010}',
        '\u{fef0}'..='\u{ffff}',
        '\u{1f600}'..='\u{1f650}',
    ];
    let text: String =
        odd.into_iter().chain(far).flatten().flat_map(|c| [c, ' ', c, '\u{5b0}']).collect();
    let mut data = samples::empty();
    data["person"]["address"] = text.into();
    Press::new().render(Sheet::Emergency, data).await.unwrap();
}

#[tokio::test]
async fn data_without_a_person_is_an_error_not_a_blank_page() {
    let told = Press::new().render(Sheet::Emergency, serde_json::json!({})).await.unwrap_err();
    assert!(told.to_string().contains("person"), "{told}");
}

/// With KINSHEAF_SAMPLES set, each sample and its data are written there for `tests/outside/sheets.py`.
#[tokio::test]
async fn the_samples_are_accessible_pdfs() {
    let press = Press::new();
    let folder = env::var_os("KINSHEAF_SAMPLES");
    for (name, sheet, data) in
        samples::sheets().into_iter().filter(|(name, ..)| folder.is_some() || !LONG.contains(name))
    {
        let pdf = press.render(sheet, data.clone()).await.unwrap();
        let claim = b"<pdfuaid:part>1";
        assert!(
            pdf.starts_with(b"%PDF-") && pdf.windows(claim.len()).any(|part| part == claim),
            "{name}"
        );
        if let Some(folder) = folder.as_deref().map(Path::new) {
            fs::create_dir_all(folder).unwrap();
            fs::write(folder.join(format!("{name}.pdf")), pdf).unwrap();
            fs::write(folder.join(format!("{name}.json")), data.to_string()).unwrap();
        }
    }
}
