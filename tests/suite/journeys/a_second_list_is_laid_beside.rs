//! The hospital's discharge list is laid beside the record: fourteen medicines at home, fourteen
//! lines, every row in its class, each settled by a press, all of it taken back in one go.

use crate::support::{Browser, Family, html};
use scraper::Selector;

/// What stands in the record: name, strength, form, dose, when.
const HOME: [[&str; 5]; 14] = [
    ["Warfarin", "2.5 mg", "tablet", "1 tablet", "in the evening"],
    ["Levothyroxine", "88 mcg", "tablet", "1 tablet", "before breakfast"],
    ["Metoprolol succinate", "50 mg", "ER tablet", "1 tablet", "in the morning"],
    ["Latanoprost", "0.005 %", "eye drops", "1 drop in each eye", "at bedtime"],
    ["Vitamin D3", "25 mcg", "capsule", "1 capsule", "with breakfast"],
    ["Acetaminophen", "500 mg", "tablet", "1 tablet", "when the hip hurts"],
    ["Atorvastatin", "20 mg", "tablet", "1 tablet", "at bedtime"],
    ["Furosemide", "20 mg", "tablet", "1 tablet", "in the morning"],
    ["Gabapentin", "100 mg", "capsule", "1 capsule", "at bedtime"],
    ["Sertraline", "50 mg", "tablet", "1 tablet", "in the morning"],
    ["Lisinopril", "10 mg", "tablet", "1 tablet", "in the morning"],
    ["Omeprazole", "20 mg", "capsule", "1 capsule", "before breakfast"],
    ["Alendronate", "70 mg", "tablet", "1 tablet", "on Sunday mornings"],
    ["Melatonin", "3 mg", "tablet", "1 tablet", "at bedtime"],
];

/// The hospital's list: seven the same, three changed, one stopped, one under another name, two new.
const DISCHARGE: &str = "\
1. WARFARIN 2.50 mg tablet, take 1 tablet in the evening
2. Levothyroxine 88 µg tablet, 1 tablet before breakfast
3. Metoprolol succinate ER 50 mg tablet - one tablet in the morning

\u{2022} Latanoprost 0.005% eye drops
\u{2022} Vitamin D3\t25 mcg\tcapsule\t1 capsule with breakfast
- Acetaminophen 500 mg tablet
- Atorvastatin 20.0 mg tabs, 1 tablet at bedtime
Furosemide 40 mg tablet, 1 tablet in the morning
Gabapentin 100 mg capsule, 2 capsules at bedtime
Sertraline 25 mg tablet, 1 tablet in the morning
STOP: Lisinopril 10 mg tablet
Prilosec 20 mg capsule, 1 capsule before breakfast
Apixaban 5 mg tablet, 1 tablet as needed
Quillamine 300 frobs tablet, once daily";

async fn at_home(ines: &mut Browser, family: &Family) {
    for [name, strength, form, dose, when] in HOME {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Strength", strength);
        ines.fill("Form", form).fill("Dose", dose).fill("When", when);
        ines.press("Add this medicine").await.answers(200);
    }
    ines.open(&family.at("/medicines/check")).await.fill("Compared with what", "the bottles");
    ines.press("All 14 agree").await.answers(200);
}

pub async fn taken_in(ines: &mut Browser, family: &Family, list: &str) {
    ines.open(&family.at("/medicines")).await.press("Beside another list").await;
    ines.press("Take in a list").await.tick("the hospital's discharge list");
    ines.fill("The day that stands on it", "24 Nov 2026");
    ines.fill("Whose list it is", "Lakeside Hospital, ward 4");
    ines.fill("The list", list).press("Take it in").await.answers(200);
}

/// How many rows stand under each heading that is there.
fn counted(browser: &Browser) -> Vec<String> {
    let page = browser.page();
    html::select(&page, "#rows h2").into_iter().map(html::text).collect()
}

/// The row of a list's line or of a medicine alone, as the fields name it.
pub fn key(browser: &Browser, title: &str) -> String {
    let page = browser.page();
    let found = html::select(&page, "fieldset.choices.row").into_iter().find(|it| {
        let legend = it.select(&Selector::parse("legend").expect("a selector")).next();
        legend.is_some_and(|it| html::text(it).replace('\u{a0}', " ") == title)
    });
    let found = found.unwrap_or_else(|| panic!("no row {title:?}\n{}", browser.text()));
    found.value().attr("id").expect("an id").to_owned()
}

/// Presses "Write what is chosen" with these choices, and leaves the browser where that leads.
pub async fn write(browser: &mut Browser, chosen: &[(&str, &str)], also: &[(&str, &str)]) {
    let (_, address, mut form) = browser.pressed("Write what is chosen");
    for (title, choice) in chosen {
        form.push((key(browser, title), (*choice).to_owned()));
    }
    for (field, value) in also {
        form.retain(|it| it.0 != *field);
        form.push(((*field).to_owned(), (*value).to_owned()));
    }
    browser.send(&address, &form).await;
    if browser.status == 303 {
        let to = browser.at.clone();
        browser.open(&to).await.answers(200);
    }
}

const SAME: [&str; 7] = [
    "WARFARIN 2.50 mg tablet",
    "Levothyroxine 88 µg tablet",
    "Metoprolol succinate 50 mg ER tablet",
    "Latanoprost 0.005% eye drops",
    "Vitamin D3 25 mcg capsule",
    "Acetaminophen 500 mg tablet",
    "Atorvastatin 20.0 mg tabs",
];

#[tokio::test]
async fn fourteen_against_fourteen_and_every_row_lands_where_it_should() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    at_home(&mut ines, &family).await;
    taken_in(&mut ines, &family, DISCHARGE).await;
    ines.sees("Kept 14 lines").sees("300 frobs").sees("the list says stopped");
    ines.sees("3. Metoprolol succinate ER 50 mg tablet - one tablet in the morning");
    ines.open(&family.at("/today")).await.sees("Not settled yet: the discharge list");
    ines.open(&family.at("/reconciliation/1")).await;
    assert_eq!(
        counted(&ines),
        [
            "Changed 3",
            "Possibly the same ingredient 1",
            "Only on the list 2",
            "The list says stopped 1",
            "In the record, not mentioned on the list 2",
            "The same in both 7",
            "What is to be asked",
        ]
    );
    ines.open(&family.at("/reconciliation/1/finish")).await.press("Finish").await.answers(422);
    ines.sees("16 rows are still open.");

    // The other name is confirmed: the row is laid anew, and is the same.
    ines.open(&family.at("/reconciliation/1")).await;
    write(&mut ines, &[("Prilosec 20 mg capsule", "pair")], &[]).await;
    assert!(counted(&ines).contains(&"The same in both 8".to_owned()), "{:?}", counted(&ines));
    ines.sees("One pair of names is confirmed").open(&family.at("/reconciliation")).await;
    ines.press("Names of one ingredient (1)").await;
    ines.sees("Omeprazole and Prilosec").sees("confirmed by Ines");

    ines.open(&family.at("/reconciliation/1")).await;
    let mut chosen: Vec<_> = SAME.iter().map(|it| (*it, "keep")).collect();
    chosen.extend([
        ("Prilosec 20 mg capsule", "keep"),
        ("Furosemide 40 mg tablet", "accept"),
        ("Gabapentin 100 mg capsule", "accept"),
        ("Sertraline 25 mg tablet", "ask"),
        ("Lisinopril 10 mg tablet", "accept"),
        ("Apixaban 5 mg tablet", "accept"),
        ("Quillamine 300 frobs tablet", "keep"),
        ("Alendronate 70 mg tablet", "ask"),
        ("Melatonin 3 mg tablet", "keep"),
    ]);
    write(&mut ines, &chosen, &[("owner", "3"), ("for_whom", "the prescriber")]).await;
    ines.sees("16 rows are settled").sees("Every row is settled.");
    ines.press("Finish").await.press("Finish").await.answers(200).sees("finished 25 November 2026");
    ines.sees("strength: 20 mg in the record, 40 mg on the list")
        .sees("asked")
        .sees("accepted: stopped in the record");

    ines.open(&family.at("/medicines/8")).await.sees("Furosemide 40 mg tablet");
    ines.sees("discharge list of 24 November 2026, Lakeside Hospital, ward 4");
    ines.sees("1 tablet, in the morning").sees("not checked yet");
    ines.open(&family.at("/medicines/9")).await.sees("2 capsules at bedtime");
    ines.open(&family.at("/medicines/10")).await.sees("Sertraline 50 mg tablet");
    ines.open(&family.at("/medicines/11")).await;
    ines.sees("stopped since 24 November 2026: discharge list of 24 November 2026");
    ines.open(&family.at("/medicines/15")).await.sees("Apixaban 5 mg tablet").sees("as-needed");
    ines.open(&family.at("/medicines")).await.sees("Taking 14").does_not_see("Quillamine");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/questions")).await.sees("Sertraline 50 mg tablet: which holds?");
    bram.sees("Alendronate 70 mg tablet: which holds?").sees("Bram will ask");
    bram.open(&family.at("/reconciliation/1")).await.sees("finished 25 November 2026");

    ines.open(&family.at("/history")).await;
    ines.sees("Ines changed Furosemide 40 mg strength before: 20 mg after: 40 mg source after: discharge list").sees("confirmed Omeprazole and Prilosec to be of one");
    family.house.is_sound().await;
}

#[tokio::test]
async fn all_that_was_accepted_is_taken_back_in_one_go_unless_it_was_changed_since() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    at_home(&mut ines, &family).await;
    let before = ines.open(&family.at("/medicines")).await.text();
    taken_in(&mut ines, &family, DISCHARGE).await;
    ines.press("Lay it beside the record").await;
    let accepted = [
        ("Furosemide 40 mg tablet", "accept"),
        ("Gabapentin 100 mg capsule", "accept"),
        ("Lisinopril 10 mg tablet", "accept"),
        ("Apixaban 5 mg tablet", "accept"),
    ];
    write(&mut ines, &accepted, &[]).await;
    ines.sees("12 to settle, 4 settled").press("Take it all back").await.sees("Apixaban");
    bram.open(&family.at("/medicines/9/edit")).await.fill("What for", "nerve pain");
    bram.press("Save").await.answers(200);
    ines.press("Take it all back").await.answers(422);
    ines.sees("Nothing was taken back, because this was changed since: Gabapentin");
    ines.open(&family.at("/medicines/8")).await.sees("Furosemide 40 mg tablet");

    // Put right by hand, it is still another version: so the others alone are taken back by hand.
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    at_home(&mut ines, &family).await;
    taken_in(&mut ines, &family, DISCHARGE).await;
    ines.press("Lay it beside the record").await;
    write(&mut ines, &accepted, &[]).await;
    ines.press("Take it all back").await.press("Take it all back").await.answers(200);
    ines.sees("Taken back: 4 medicines are as before").sees("16 to settle, 0 settled");
    let after = ines.open(&family.at("/medicines")).await.text();
    assert_eq!(after, before, "the list of medicines is not as it was, checks and all");
    ines.open(&family.at("/history/medicine/15")).await.sees("struck as a mistake Apixaban");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_row_that_changed_meanwhile_is_shown_again_and_nothing_is_written() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    at_home(&mut ines, &family).await;
    taken_in(&mut ines, &family, DISCHARGE).await;
    ines.press("Lay it beside the record").await;
    bram.open(&family.at("/reconciliation/1")).await;
    let both = [("Furosemide 40 mg tablet", "accept"), ("Apixaban 5 mg tablet", "accept")];
    let (_, address, form) = ines.pressed("Write what is chosen");
    let keys = both.map(|(title, choice)| (key(&ines, title), choice.to_owned()));
    write(&mut bram, &[("Furosemide 40 mg tablet", "keep")], &[]).await;
    bram.sees("One row is settled");
    let chosen: Vec<_> = form.into_iter().chain(keys).collect();
    ines.send(&address, &chosen).await.answers(409).sees("Someone changed this meanwhile");
    ines.open(&family.at("/medicines")).await.does_not_see("Apixaban").sees("Taking 14");

    // The medicine itself was changed: the row says so, and what was chosen is still chosen.
    bram.open(&family.at("/reconciliation/1")).await;
    let gabapentin = key(&bram, "Gabapentin 100 mg capsule");
    ines.open(&family.at("/medicines/9/edit")).await.fill("Dose", "3 capsules");
    ines.press("Save").await.answers(200);
    write(&mut bram, &[("Gabapentin 100 mg capsule", "accept")], &[]).await;
    bram.answers(409).sees("changed meanwhile: look at it again").sees("3 capsules, at bedtime");
    let (_, address, form) = bram.pressed("Write what is chosen");
    assert!(form.contains(&(gabapentin, "accept".to_owned())), "{form:?}");
    bram.send(&address, &form).await.answers(303);
    ines.open(&family.at("/medicines/9")).await.sees("2 capsules at bedtime");
    family.house.is_sound().await;
}
