//! What is hidden from a member leaves no trace in her search: she is answered to the letter as in a
//! house where it never was. No hit, no count, no order, no word that is shown for a mistyped one.

use super::a_thing_is_found_again::titles;
use crate::support::{Browser, Family, html};

/// What is asked: the hidden words, their beginnings, errors near them, and words beside them.
const ASKED: [&str; 16] = [
    "sertraline",
    "sert",
    "sertralin",
    "sertralne",
    "setraline",
    "low spirits",
    "oyelaran",
    "warfarin",
    "warfrin",
    "morning",
    "mornin",
    "mirning",
    "tablet",
    "grapefruit",
    "yawning",
    "555-0142",
];

async fn add(ines: &mut Browser, page: String, press: &str, fields: &[(&str, &str)]) {
    ines.open(&page).await;
    for (label, value) in fields {
        ines.fill(label, value);
    }
    ines.press(press).await.answers(200);
}

/// A house with Warfarin; with what is to be hidden before it, or without.
async fn house(with_hidden: bool) -> Family {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let [medicine, contact, question, task] = ["medicines", "contacts", "questions", "tasks"]
        .map(|kind| family.at(&format!("/{kind}/add")));
    if with_hidden {
        let fields = [
            ("Name", "Sertraline"),
            ("What for", "low spirits, in the morning"),
            ("Prescriber", "Dr Oyelaran"),
        ];
        add(&mut ines, medicine.clone(), "Add this medicine", &fields).await;
        let fields = [("Name", "Dr Oyelaran"), ("Phone", "218-555-0142")];
        add(&mut ines, contact.clone(), "Add this contact", &fields).await;
        for (page, hides) in [("/medicines/1", "Sertraline"), ("/contacts/1", "Dr Oyelaran")] {
            ines.open(&family.at(page)).await.press("Who sees this").await.sees(hides);
            ines.tick("Bram").press("Save").await.answers(200);
        }
        // They lean on what is hidden, and go with it.
        for (page, press, label, words) in [
            (
                "/questions/add?about=medicine/1",
                "Keep the question",
                "The question",
                "Is yawning from this?",
            ),
            (
                "/tasks/add?about=medicine/1",
                "Keep the task",
                "What is to be done",
                "Fetch it, yawning or not",
            ),
        ] {
            ines.open(&family.at(page)).await.fill(label, words);
            ines.fill("What it is about", "medicine/1").press(press).await.answers(200);
        }
    }
    let fields = [("Name", "Warfarin"), ("Dose", "1 tablet"), ("When", "in the evening")];
    add(&mut ines, medicine, "Add this medicine", &fields).await;
    let fields = [("Name", "Dr Lind"), ("Phone", "218-555-0111")];
    add(&mut ines, contact, "Add this contact", &fields).await;
    let fields = [("The question", "Is grapefruit allowed?")];
    add(&mut ines, question, "Keep the question", &fields).await;
    let fields = [("What is to be done", "Phone Dr Lind this evening")];
    add(&mut ines, task, "Keep the task", &fields).await;
    family
}

/// What Bram reads, and which kinds he may ask for.
async fn answers(family: &Family) -> Vec<(String, String)> {
    let mut bram = family.browser("Bram").await;
    let mut all = Vec::new();
    for words in ASKED {
        bram.open(&family.at("/search")).await;
        bram.fill("Words to find", words).press("Find these").await.answers(200);
        all.push((words.to_owned(), bram.text()));
    }
    let page = bram.page();
    let options = html::select(&page, "#kind option").into_iter().map(html::text);
    all.push(("kinds".into(), options.collect::<Vec<_>>().join(", ")));
    all
}

#[tokio::test]
async fn bram_is_answered_as_if_it_had_never_been() {
    let (hidden, never) = (house(true).await, house(false).await);
    for (with, without) in answers(&hidden).await.iter().zip(answers(&never).await) {
        assert_eq!(*with, without);
    }
    // Ines finds all of it.
    let mut ines = hidden.browser("Ines").await;
    for (words, count) in
        [("sertraline", 1), ("sertralne", 1), ("oyelaran", 2), ("yawning", 2), ("555-0142", 1)]
    {
        ines.open(&hidden.at("/search")).await.fill("Words to find", words);
        ines.press("Find these").await;
        assert_eq!(titles(&ines).len(), count, "{words}\n{}", ines.text());
    }
    // Shown again, it is found at once; hidden again, it is gone at once.
    let mut bram = hidden.browser("Bram").await;
    for (press, found) in [("shown", 1), ("hidden", 0)] {
        ines.open(&hidden.at("/medicines/1")).await.press("Who sees this").await;
        match press {
            "shown" => ines.untick("Bram"),
            _ => ines.tick("Bram"),
        };
        ines.press("Save").await.answers(200);
        bram.open(&hidden.at("/search")).await.fill("Words to find", "sertraline");
        bram.press("Find these").await;
        assert_eq!(titles(&bram).len(), found, "{press}");
    }
    hidden.house.is_sound().await;
}

#[tokio::test]
async fn each_finds_what_her_place_reaches() {
    let family = house(false).await;
    let mut delia = family.browser("Delia").await;
    delia
        .open(&family.at("/noticed/add"))
        .await
        .tick("mood")
        .fill("What you saw", "Hummed all evening");
    delia.press("Keep it").await.answers(200);
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/decisions/add")).await;
    ines.fill("What is to be decided", "Whether evening help is needed").press("Put it up").await;
    ines.answers(200);
    let found = async |who: &str| {
        let mut browser = family.browser(who).await;
        browser.open(&family.at("/search?q=evening")).await.answers(200);
        let mut titles = titles(&browser);
        titles.sort();
        titles
    };
    let decision = "Whether evening help is needed";
    let (hummed, phone, warfarin) =
        ("Hummed all evening", "Phone Dr Lind this evening", "Warfarin");
    for who in ["Ottoline", "Ines", "Bram"] {
        assert_eq!(found(who).await, [hummed, phone, warfarin, decision], "{who}");
    }
    // A decision is for those who see who shares the record; of the tasks an aide has her own.
    assert_eq!(found("Delia").await, [hummed, warfarin]);
    assert_eq!(found("Rosalind").await, [hummed, phone, warfarin]);
    // What is kept for the clinician is found by the person and by who noticed it.
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/noticed/1")).await.press("Keep for the clinician only").await;
    ottoline.press("Keep for the clinician only").await.answers(200);
    for (who, there) in [("Ottoline", true), ("Delia", true), ("Ines", false), ("Rosalind", false)]
    {
        assert_eq!(found(who).await.iter().any(|it| it == hummed), there, "{who}");
    }
    family.house.is_sound().await;
}

/// An aide is shown what is taken now and what she has now, and nothing of what was.
#[tokio::test]
async fn an_aide_finds_nothing_of_what_was() {
    let family = house(true).await;
    let mut ines = family.browser("Ines").await;
    let condition = family.at("/conditions/add");
    add(&mut ines, condition, "Add this condition", &[("Name", "Shingles")]).await;
    let mut delia = family.browser("Delia").await;
    for (stands, medicines, conditions) in [(true, 1, 1), (false, 0, 0)] {
        if !stands {
            ines.open(&family.at("/visits/add")).await.fill("On which day", "9 Nov 2026");
            ines.fill("With whom", "1").tick("Sertraline: stopped");
            ines.fill("Why, as it was said Sertraline", "dizzy");
            ines.press("Save the note").await.answers(200);
            ines.open(&family.at("/visits/1")).await.sees("Sertraline: stopped");
            delia.open(&family.at("/visits/1")).await.answers(200).does_not_see("Sertraline");
            ines.open(&family.at("/conditions/1/over")).await.fill("Who said so", "Dr Oyelaran");
            ines.fill("From which day", "20 Nov 2026").press("Over").await.answers(200);
        }
        for (words, kind, count) in
            [("sertraline", "Medicine", medicines), ("shingles", "Condition", conditions)]
        {
            for (browser, count) in [(&mut delia, count), (&mut ines, 1)] {
                browser.open(&family.at("/search")).await.fill("Words to find", words);
                browser.press("Find these").await.answers(200);
                let found = html::select(&browser.page(), ".found h3").len();
                assert_eq!(found, count, "{words}\n{}", browser.text());
                assert!(count == 0 || browser.text().contains(kind));
            }
        }
    }
}
