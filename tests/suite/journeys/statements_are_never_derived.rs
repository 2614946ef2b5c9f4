//! Blood thinner, implant or device: yes, none or not asked, said by someone on a day; never
//! concluded from what is listed; and where the two differ, both stand.

use crate::support::{Browser, Family, html};

/// What a block says whose heading this is, wherever it stands.
fn block(browser: &Browser, heading: &str) -> String {
    let page = browser.page();
    let found = html::select(&page, "main section").into_iter().map(html::text);
    let mut fits = found.filter(|it| it.starts_with(heading));
    fits.next().unwrap_or_else(|| panic!("no {heading:?} at {}\n{}", browser.at, browser.text()))
}

/// The page of the answers and the emergency sheet both say this.
async fn both_say(ines: &mut Browser, family: &Family, thinner: &str, implant: &str) {
    for (page, first, second) in [
        ("/statements", "Takes a blood thinner?", "Has an implant or device?"),
        ("/sheets/emergency", "Blood thinner", "Implant or device"),
    ] {
        ines.open(&family.at(page)).await;
        for (heading, says) in [(first, thinner), (second, implant)] {
            let block = block(ines, heading);
            assert!(block.starts_with(&format!("{heading} {says}")), "{page}: {block}");
        }
    }
}

async fn say(ines: &mut Browser, family: &Family, question: &str, answer: &str, which: &str) {
    ines.open(&family.at(&format!("/statements/{question}"))).await.tick(answer);
    ines.fill("Which one", which).fill("Said by", "Dr Oyelaran").fill("On which day", "3 Mar 2026");
    ines.press("Save").await.answers(200).sees("Written down:");
}

async fn add_hip(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/operations/add")).await.fill("What was done", "Left hip replaced");
    ines.fill("What was put in", "hip joint").press("Add this operation").await.answers(200);
}

const UNASKED: &str = "Not asked yet";
const SAID: &str = "said by Dr Oyelaran on 3 March 2026";

#[tokio::test]
async fn each_is_yes_or_none_or_not_asked_and_can_be_taken_back() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    both_say(&mut ines, &family, UNASKED, UNASKED).await;
    ines.open(&family.at("/statements")).await;
    ines.press("Write down the answer : Takes a blood thinner?").await.press("Save").await;
    ines.answers(422).sees("Choose one of these.").sees("Enter who said so.");

    say(&mut ines, &family, "blood-thinner", "yes", "warfarin").await;
    say(&mut ines, &family, "implant", "none", "").await;
    let (yes, none) = (format!("Yes: warfarin {SAID}"), format!("None {SAID}"));
    both_say(&mut ines, &family, &yes, &none).await;
    ines.open(&family.at("/statements")).await.sees("written down by Ines today");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines added the answer to “Takes a blood thinner?”");

    ines.open(&family.at("/statements/blood-thinner")).await.tick("not asked").press("Save").await;
    both_say(&mut ines, &family, UNASKED, &none).await;
    ines.open(&family.at("/history")).await.sees("name given before: warfarin after: nothing");
    family.house.is_sound().await;
}

#[tokio::test]
async fn yes_needs_which_none_has_no_which_and_no_day_is_to_come() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/statements/implant")).await.tick("yes");
    ines.fill("Said by", "Emeric").fill("On which day", "26 Nov 2026").press("Save").await;
    ines.answers(422).sees("Enter which one");
    ines.tick("yes").fill("Which one", "pacemaker").press("Save").await;
    ines.answers(422).sees("This day has not come yet.");
    ines.tick("none").fill("On which day", "25 Nov 2026").press("Save").await;
    ines.answers(422).sees("To \"none\" there is no which.");
    assert_eq!(ines.value("Which one"), "pacemaker");
    both_say(&mut ines, &family, UNASKED, UNASKED).await;
    ines.open(&family.at("/statements/kidney")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn nothing_is_concluded_from_medicines_or_operations() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.fill("What for", "blood thinner").press("Add this medicine").await.answers(200);
    add_hip(&mut ines, &family).await;
    let beside = "Not asked; an operation with an implant is listed.";
    both_say(&mut ines, &family, UNASKED, UNASKED).await;
    assert!(block(&ines, "Implant or device").ends_with(beside));
    assert_eq!(block(&ines, "Blood thinner"), "Blood thinner Not asked yet");

    say(&mut ines, &family, "blood-thinner", "none", "").await;
    say(&mut ines, &family, "implant", "none", "").await;
    let none = format!("None {SAID}");
    let differs = "Stated: none, by Dr Oyelaran; an operation with an implant is listed.";
    both_say(&mut ines, &family, &none, &none).await;
    assert!(block(&ines, "Implant or device").ends_with(differs));
    ines.open(&family.at("/statements")).await.sees(differs);
    ines.open(&family.at("/sheets/emergency")).await;
    assert_eq!(block(&ines, "Blood thinner"), format!("Blood thinner {none}"));

    say(&mut ines, &family, "implant", "yes", "hip joint").await;
    both_say(&mut ines, &family, &none, &format!("Yes: hip joint {SAID}")).await;
    ines.does_not_see("an operation with an implant is listed");
    ines.open(&family.at("/operations/1")).await.press("Entered by mistake").await;
    ines.fill("What was wrong with the entry", "Emeric's").press("Strike").await.answers(200);
    let differs = "Stated: yes, by Dr Oyelaran; no operation with an implant is listed.";
    both_say(&mut ines, &family, &none, &format!("Yes: hip joint {SAID}")).await;
    assert!(block(&ines, "Implant or device").ends_with(differs));
    ines.open(&family.at("/statements")).await.sees(differs);
    family.house.is_sound().await;
}

#[tokio::test]
async fn all_of_it_stands_on_the_emergency_sheet_in_the_right_order() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/allergies/add")).await.fill("To what", "Penicillin").tick("allergy");
    ines.press("Add to the list").await.answers(200);
    for name in ["Metoprolol", "Furosemide"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200);
    }
    ines.press("Hold").await.fill("Why", "low pulse").fill("Who said so", "the clinic");
    ines.press("Hold").await.answers(200);
    say(&mut ines, &family, "blood-thinner", "yes", "warfarin").await;
    say(&mut ines, &family, "implant", "yes", "pacemaker").await;
    for (name, wish) in [("Hypothyroidism", "everything"), ("Osteoporosis", "the outline")] {
        ines.open(&family.at("/conditions/add")).await.fill("Name", name).tick(wish);
        ines.fill("Since when", "about 2008").press("Add this condition").await.answers(200);
    }
    add_hip(&mut ines, &family).await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Emeric");
    ines.fill("Phone", "218-555-0111").press("Add this contact").await.answers(200);

    ines.open(&family.at("/sheets/emergency")).await.sees("since about 2008");
    ines.does_not_see("the outline").does_not_see("wants to be told");
    let page = ines.page();
    let sheet: String = html::select(&page, "main").into_iter().map(html::text).collect();
    let order = [
        "911",
        "Penicillin",
        "Yes: warfarin",
        "Yes: pacemaker",
        "Metoprolol",
        "Furosemide",
        "Ask the family before you tell Ottoline Varga of a diagnosis.",
        "2 conditions",
        "Hypothyroidism",
        "Osteoporosis",
        "Left hip replaced",
        "Emeric",
        "Poison line",
    ];
    let places: Vec<_> = order.iter().map(|it| sheet.find(it).expect(it)).collect();
    assert!(places.is_sorted(), "{places:?} in {sheet}");
    family.house.is_sound().await;
}
