//! Everything is found again by its words, from the line that each page has: what kind of thing it is,
//! where the words stand, and what was meant by a word that was mistyped.

use crate::support::{Browser, Family, html};

/// The page where it is written down, what is filled and what is ticked there, the press.
type Written =
    (&'static str, &'static [(&'static str, &'static str)], &'static [&'static str], &'static str);

const WRITTEN: &[Written] = &[
    (
        "/edit",
        &[
            ("Hearing", "a hearing aid on the left"),
            ("Whom to phone first", "Juno"),
            ("Number to phone first", "+1 (218) 555-0177"),
            ("Who said so", "Ottoline, 3 Nov 2026"),
        ],
        &[],
        "Save",
    ),
    (
        "/usual/edit",
        &[
            ("Usual thinking", "knows the day"),
            ("Voice", "slow and low"),
            ("Feeding, in one line", "Juno cuts the meat"),
            ("Said by", "Bram"),
            ("On which day", "3 Nov 2026"),
        ],
        &[],
        "Save",
    ),
    (
        "/statements/implant",
        &[("Which one", "pacemaker"), ("Said by", "Dr Lind"), ("On which day", "3 Mar 2026")],
        &["yes"],
        "Save",
    ),
    (
        "/medicines/add",
        &[
            ("Name", "Warfarin"),
            ("Strength", "5 mg"),
            ("What for", "keeps the blood thin"),
            ("Prescriber", "Dr Oyelaran"),
            ("Dose", "1 tablet"),
            ("Taken since", "9 Mar 2026"),
        ],
        &[],
        "Add this medicine",
    ),
    (
        "/allergies/add",
        &[("To what", "Walnuts"), ("What happened", "hives")],
        &["allergy"],
        "Add to the list",
    ),
    ("/conditions/add", &[("Name", "Atrial fibrillation")], &[], "Add this condition"),
    ("/operations/add", &[("What was done", "Hip replaced")], &[], "Add this operation"),
    (
        "/contacts/add",
        &[
            ("Name", "Zdeněk Dvořák"),
            ("Phone", "+1 (218) 555-0142"),
            ("How to phone", "let it ring"),
        ],
        &[],
        "Add this contact",
    ),
    (
        "/questions/add",
        &[("The question", "May she eat grapefruit with warfarin?")],
        &[],
        "Keep the question",
    ),
    (
        "/visits/add",
        &[("Or by name", "Dr Lind"), ("What else was said", "Walk to the harbor daily")],
        &[],
        "Save the note",
    ),
    (
        "/appointments/add",
        &[("What it is", "Eye clinic"), ("Day", "2 Dec 2026"), ("Time", "2 pm")],
        &[],
        "Keep this appointment",
    ),
    (
        "/tasks/add",
        &[
            ("What is to be done", "Renew the parking placard"),
            ("Why, and what helps", "she walks badly since the hip"),
        ],
        &[],
        "Keep the task",
    ),
    ("/happenings/add", &[("In a few words", "Slipped on the porch, unhurt")], &[], "Keep it"),
    (
        "/noticed/add",
        &[("What you saw", "Half a slice of toast since noon")],
        &["eating and drinking"],
        "Keep it",
    ),
    (
        "/decisions/add",
        &[("What is to be decided", "Whether the bedroom moves downstairs")],
        &[],
        "Put it up",
    ),
];

async fn written_down() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (page, fields, ticks, press) in WRITTEN {
        ines.open(&family.at(page)).await;
        for (label, value) in *fields {
            ines.fill(label, value);
        }
        for tick in *ticks {
            ines.tick(tick);
        }
        ines.press(press).await.answers(200);
    }
    (family, ines)
}

/// Asks from the line of whatever page it is.
async fn find<'a>(browser: &'a mut Browser, words: &str) -> &'a mut Browser {
    browser.fill("Find in this record", words).press("Find").await.answers(200)
}

/// A text as it is read, marked words and all.
pub fn read(element: scraper::ElementRef) -> String {
    element.text().collect::<String>().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The titles of what was found, in their order.
pub fn titles(browser: &Browser) -> Vec<String> {
    html::select(&browser.page(), ".found h3").into_iter().map(read).collect()
}

#[tokio::test]
async fn each_kind_of_thing_is_found_from_any_page() {
    let (family, mut ines) = written_down().await;
    for (words, kind, title, leads) in [
        ("hearing aid", "About the person", "Ottoline Varga", ""),
        ("5550177", "About the person", "Ottoline Varga", ""),
        ("cuts meat", "Usual self", "How Ottoline Varga usually is", "/usual"),
        ("slow", "Usual self", "How Ottoline Varga usually is", "/usual"),
        ("pacemaker", "Blood thinner, implant", "Implant or device", "/statements"),
        ("oyelaran", "Medicine", "Warfarin 5\u{a0}mg", "/medicines/1"),
        ("HIVES", "Allergy or intolerance", "Walnuts", "/allergies/1"),
        ("fibril atri", "Condition", "Atrial fibrillation", "/conditions/1"),
        ("replaced", "Operation or implant", "Hip replaced", "/operations/1"),
        ("2185550142", "Contact", "Zdeněk Dvořák", "/contacts/1"),
        ("555-0142", "Contact", "Zdeněk Dvořák", "/contacts/1"),
        ("5550142", "Contact", "Zdeněk Dvořák", "/contacts/1"),
        ("dvorak", "Contact", "Zdeněk Dvořák", "/contacts/1"),
        ("grapefruit", "Question", "May she eat grapefruit with warfarin?", "/questions/1"),
        ("harbor", "Note of a visit", "Dr Lind, 25 November 2026", "/visits/1"),
        ("eye", "Appointment", "Eye clinic", "/appointments/1"),
        ("placard", "Task", "Renew the parking placard", "/tasks/1"),
        ("porch", "What happened", "Slipped on the porch, unhurt", "/happenings/1"),
        ("toast", "What was noticed", "Half a slice of toast since noon", "/noticed/1"),
        ("downstairs", "Decision", "Whether the bedroom moves downstairs", "/decisions/1"),
    ] {
        ines.open(&family.at("/tasks")).await;
        find(&mut ines, words).await.sees("One thing was found.").sees(kind);
        let wanted = title.replace('\u{a0}', " ");
        assert_eq!(titles(&ines), [wanted.as_str()], "{words}");
        let page = ines.page();
        let link = html::select(&page, ".found h3 a");
        assert_eq!(link[0].value().attr("href"), Some(family.at(leads).as_str()));
        ines.open(&family.at(leads)).await.answers(200);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_best_comes_first_and_the_words_are_marked() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/search")).await.sees("What you may see here is found by its words");
    find(&mut ines, "warf").await.sees("2 things were found.");
    assert_eq!(titles(&ines), ["May she eat grapefruit with warfarin?", "Warfarin 5 mg"]);
    let page = ines.page();
    let marked: Vec<_> = html::select(&page, ".found mark").into_iter().map(html::text).collect();
    assert!(marked.len() >= 2 && marked.iter().all(|it| it.eq_ignore_ascii_case("warfarin")));
    // Words in a title come before those in a text, however new that is.
    find(&mut ines, "hip").await;
    assert_eq!(titles(&ines), ["Hip replaced", "Renew the parking placard"]);
    find(&mut ines, "warf").await;
    // Of one kind, or of certain days; what was asked stays in the fields.
    ines.fill("Of which kind", "question").press("Find these").await;
    assert_eq!(titles(&ines), ["May she eat grapefruit with warfarin?"]);
    assert_eq!(
        (ines.value("Words to find"), ines.value("Of which kind")),
        ("warf".into(), "question".into())
    );
    ines.fill("Of which kind", "").fill("From the day", "1 Mar 2026");
    ines.fill("To the day", "2026-03-31").press("Find these").await;
    assert_eq!(titles(&ines), ["Warfarin 5 mg"]);
    ines.fill("To the day", "someday").press("Find these").await.sees("“someday” was not read");
    // What is changed is found by its new words, and not by its old ones.
    ines.open(&family.at("/tasks/1/edit")).await.fill("What is to be done", "Fetch the walker");
    ines.press("Save").await.answers(200);
    find(&mut ines, "placard").await.sees("Nothing was found. Nothing has “placard” in it.");
    assert_eq!(titles(find(&mut ines, "walker").await), ["Fetch the walker"]);
    // What was struck stands in the history alone.
    ines.open(&family.at("/tasks/1/strike")).await.fill("Why", "a mistake");
    ines.press("Strike").await.answers(200);
    find(&mut ines, "walker").await.sees("Nothing was found.");
}

#[tokio::test]
async fn one_wrong_letter_is_forgiven_where_the_word_is_nowhere() {
    let (family, mut ines) = written_down().await;
    ines.open(&family.at("/search")).await;
    for typed in ["warfrin", "warffarin", "warfarim", "wafrarin", "WÁRFRIN"] {
        find(&mut ines, typed).await.sees("shown for “warfarin”");
        assert_eq!(titles(&ines).len(), 2, "{typed}");
    }
    find(&mut ines, "grapefruit warfrin").await.sees("shown for “warfarin”").sees("One thing");
    // Two errors, a short word, a word that stands somewhere, and a number are what they are.
    for typed in ["wrfrin", "hap", "walnut", "2185550143"] {
        find(&mut ines, typed).await.does_not_see("shown for");
    }
}

#[tokio::test]
async fn whatever_is_typed_is_words_and_never_an_error() {
    let (family, mut ines) = written_down().await;
    let many = "warfarin ".repeat(60);
    for (typed, found) in [
        ("\"warfarin\"", 2),
        ("warfarin AND", 0),
        ("(warfarin*", 2),
        ("-warfarin", 2),
        ("title:warfarin", 0),
        ("NEAR(\"a b\", 2)", 0),
        ("'; drop table medicine; --", 0),
        // A word like any other: it stands in "Implant or device".
        ("\" OR \"", 1),
        ("\" OR NOT \"", 0),
        ("***", 0),
        ("<script>alert(1)</script>", 0),
        ("\u{202e}warfarin\u{0}", 2),
        ("💊", 0),
        ("warfarin^2 5mg", 0),
        (many.as_str(), 2),
    ] {
        ines.open(&family.at("/search")).await;
        find(&mut ines, typed).await;
        assert_eq!(titles(&ines).len(), found, "{typed:?}\n{}", ines.text());
        assert!(html::select(&ines.page(), "main script").is_empty());
    }
    ines.get(&family.at("/search?q=%ff%00&page=-1&from=%3Cb%3E&kind=%27")).await.answers(200);
    find(&mut ines, "a b c d e f g h i j").await.sees("passed over: i, j");
    family.house.is_sound().await;
}

#[tokio::test]
async fn many_are_shown_page_by_page_each_once() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for number in 0..45 {
        ines.open(&family.at("/tasks/add")).await;
        ines.fill("What is to be done", &format!("Water plant {number}"));
        ines.fill("By which day", &format!("{} Dec 2026", number % 28 + 1));
        ines.press("Keep the task").await.answers(200);
    }
    let mut seen = Vec::new();
    find(&mut ines, "plant").await.sees("1 to 20 of 45").does_not_see("Before these");
    seen.extend(titles(&ines));
    ines.press("After these").await.sees("21 to 40 of 45");
    seen.extend(titles(&ines));
    ines.press("After these").await.sees("41 to 45 of 45").does_not_see("After these");
    seen.extend(titles(&ines));
    assert_eq!(seen[0], "Water plant 27", "the newest day first");
    seen.sort();
    seen.dedup();
    assert_eq!(seen.len(), 45);
    ines.press("Before these").await.sees("21 to 40 of 45");
}
