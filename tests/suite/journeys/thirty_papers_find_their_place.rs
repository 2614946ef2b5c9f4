//! A pile of thirty mixed files comes to an empty tray: two files are no papers of ours to keep, pages that
//! belong together become one paper, each is filed under what it is. Then, at a bedside, one asks where the
//! medical order is, who has copies, and whether it is in force: two presses away.

use super::a_pile_is_sorted::put_in;
use crate::support::{
    Browser, Family,
    paper::{pdf, picture},
    reader::{self, reads, stands},
};

/// What stands on the pictures, by kind: a head, and a text of which each paper has its own half.
const WORDS: [(&str, &str); 8] = [
    (
        "medical order",
        "Portable medical order. Comfort treatment, no intubation; signature of the physician.",
    ),
    ("bill or receipt", "Amount due. Please pay the balance of your account. Payment by check."),
    ("test result", "Laboratory results. Specimen collected, reference range, units, findings."),
    (
        "letter",
        "Dear Ottoline, thank you for writing. Please find enclosed. Sincerely, with regards",
    ),
    (
        "prescription",
        "Prescription. Take one tablet daily, dispense thirty, refills two, prescriber",
    ),
    (
        "insurance policy",
        "Policy of insurance. Insured, premium, beneficiary, benefits and exclusions.",
    ),
    (
        "warranty",
        "Warranty. The manufacturer warrants this product against defects; repair, model, serial",
    ),
    (
        "discharge paper",
        "Discharge summary. Admitted to hospital, instructions for home, follow diagnosis",
    ),
];

/// So many of each, in this order: the order stands somewhere in the middle.
const HOW_MANY: [usize; 8] = [1, 5, 4, 4, 3, 2, 2, 3];

/// A photo: its name, its bytes by their width, its kind and its words.
struct Photo {
    name: String,
    width: u16,
    kind: &'static str,
    words: String,
}

fn photos() -> Vec<Photo> {
    let mut all = Vec::new();
    for turn in 0..5 {
        for (at, (kind, words)) in WORDS.iter().enumerate().rev() {
            if turn < HOW_MANY[at] {
                let width = u16::try_from(all.len() + 1).expect("a few");
                let head = ["Birch Lane", "Lakeshore", "Canal Street", "North Pier", "Superior"];
                let words = format!("{} Office\nDate: May {}, 2026\n\n{words}", head[turn], at + 1);
                all.push(Photo { name: format!("IMG_{width:04}.jpg.png"), width, kind, words });
            }
        }
    }
    all
}

/// Files one after the other, each under what it is, until the tray is empty. Gives how many kinds had
/// been proposed rightly.
async fn sorted(browser: &mut Browser, family: &Family, photos: &[Photo]) -> (usize, usize) {
    let (mut filed, mut right) = (0, 0);
    browser.open(&family.at("/papers/tray")).await.press("File the first").await;
    while browser.answers(200).text().contains("What is this paper?") {
        let at = browser.at.clone();
        let id: usize = at.split('/').nth(4).and_then(|it| it.parse().ok()).expect("a paper");
        // Ids are in the order of the pile.
        let kind = photos.get(id - 1).map_or("other", |it| it.kind);
        right += usize::from(browser.value("Kind") == kind);
        browser.fill("Kind", kind).fill("Title", &format!("{kind} {id}"));
        browser.press("File it").await;
        filed += 1;
        assert!(filed < 31, "the tray never ends");
    }
    (filed, right)
}

#[tokio::test]
async fn the_tray_is_empty_and_the_order_is_found_in_two_presses() {
    let family = Family::new().await;
    let programs = reader::folder(&family.house);
    reader::installed(&programs);
    let photos = photos();
    let mut pile: Vec<(&str, Vec<u8>)> =
        photos.iter().map(|it| (it.name.as_str(), picture(it.width))).collect();
    pile.extend([
        ("scan0001.pdf", pdf("one", "")),
        ("scan0002.pdf", pdf("two", "")),
        ("card back.png", picture(900)),
        ("scan0001 (1).pdf", pdf("one", "")),
        ("page.pdf", b"<html><script>alert(1)</script></html>".to_vec()),
        ("notes.txt", b"to phone the clinic".to_vec()),
    ]);
    assert_eq!(pile.len(), 30);
    let mut ines = family.browser("Ines").await;
    put_in(&mut ines, &family, &pile).await;
    ines.sees("27 of 30 put in the tray").sees("Not kept 2").sees("page.pdf").sees("notes.txt");
    ines.sees("scan0001 (1).pdf is the same file, byte for byte. It waits in the tray.");
    for it in &photos {
        stands(&programs, &picture(it.width), &it.words);
    }
    reads(&family.house).await;

    // The second side of a card belongs to the letter that it came with.
    let letter = photos.iter().find(|it| it.kind == "letter").expect("a letter").width;
    ines.open(&family.at(&format!("/papers/{letter}"))).await.press("Join further pages").await;
    ines.tick("card back.png").press("Join them").await.sees("it has 2 pages now");

    let mut bram = family.browser("Bram").await;
    let (filed, right) = sorted(&mut bram, &family, &photos).await;
    assert_eq!(filed, 26);
    assert!(right >= 20, "only {right} of 24 kinds were proposed as they are");
    bram.sees("The tray is empty")
        .open(&family.at("/today"))
        .await
        .does_not_see("wait in the tray");
    bram.open(&family.at("/papers")).await;
    for (many, (kind, _)) in HOW_MANY.iter().zip(WORDS) {
        let head = format!("{}{} {many}", kind[..1].to_uppercase(), &kind[1..]);
        bram.sees(&head);
    }
    bram.sees("Other 2");

    order_is_written_down(&mut ines, &family).await;
    // Two presses from any page, by whoever may see it.
    bram.open(&family.at("/medicines")).await.press("Directives").await;
    bram.press("Portable medical order (POLST-type) of 1 May 2026").await.answers(200);
    bram.sees("in force").sees("on the refrigerator door").sees("Copies given 2");
    bram.sees("Dr Lind").sees("the ambulance service");
    // All of it in a line of the list too, one press away.
    bram.open(&family.at("/directives")).await.sees("1 in force, as far as the family knows");
    bram.sees("original: on the refrigerator door").sees("copies: Dr Lind, the ambulance service");
    bram.open(&family.at("/sheets/emergency")).await.sees("on the refrigerator door");
    family.house.is_sound().await;
}

async fn order_is_written_down(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind");
    ines.fill("Phone", "218-555-0120").press("Add this contact").await.answers(200);
    ines.open(&family.at("/directives/add")).await.tick("portable medical order (POLST-type)");
    ines.fill("Signed on", "1 May 2026");
    ines.fill("Where the original is", "on the refrigerator door");
    ines.press("Add this directive").await.answers(200);
    for (contact, words) in [("1", ""), ("", "the ambulance service")] {
        ines.open(&family.at("/directives/1/copies/add")).await.fill("Who has it", contact);
        ines.fill("Or in words", words).press("Write it down").await.answers(200);
    }
}

#[tokio::test]
async fn a_long_list_shows_some_of_each_kind_and_all_of_one_in_parts() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let names: Vec<String> = (1..=53).map(|it| format!("{it}.png")).collect();
    let pile: Vec<(&str, Vec<u8>)> =
        names.iter().zip(1..).map(|(name, width)| (name.as_str(), picture(width))).collect();
    put_in(&mut ines, &family, &pile).await;
    ines.open(&family.at("/papers/tray")).await.press("File the first").await;
    for number in 1..=53 {
        ines.fill("Kind", if number == 53 { "letter" } else { "bill or receipt" });
        ines.fill("Title", &format!("Paper no. {number:02}")).press("File it").await.answers(200);
    }
    ines.open(&family.at("/papers")).await.sees("Bill or receipt 52").sees("Paper no. 10");
    ines.sees("Letter 1").sees("Paper no. 53").does_not_see("Paper no. 11");
    ines.press("All 52 of kind bill or receipt").await.sees("Only bill or receipt");
    ines.sees("Part 1 of 2").sees("Paper no. 03").does_not_see("Paper no. 02");
    ines.does_not_see("Paper no. 53").press("Older").await.sees("Paper no. 02");
    ines.does_not_see("Paper no. 03").does_not_see("Older").press("Newer").await;
    ines.sees("Paper no. 03").press("By date").await.sees("Part 1 of 2").sees("Paper no. 53");
    ines.open(&family.at("/papers?kind=none&part=x")).await.answers(200).sees("Letter 1");
    ines.open(&family.at("/papers?kind=warranty")).await.answers(200);
    ines.sees("No paper of this kind is filed.");
    family.house.is_sound().await;
}
