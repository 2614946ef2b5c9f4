//! What is typed of a visit is never lost: a save that fails leaves nothing half written and everything
//! typed; two devices do not write over each other; a draft is her own, ends with the save, and is
//! thrown away only on purpose.

use super::a_visit_is_noted::before_the_visit;
use crate::support::{Browser, Family};

/// Begun, and kept as the draft 1.
async fn begun(ines: &mut Browser, family: &Family) {
    before_the_visit(ines, family).await;
    ines.open(&family.at("/visits/add")).await.fill("With whom", "1");
    ines.fill("What was said May she swim?", "Yes.").press("Keep as a draft").await.answers(200);
}

/// What the script of the page sends, as it stands.
fn typed_now(browser: &Browser) -> Vec<(String, String)> {
    let (_, _, mut form) = browser.pressed("Keep as a draft");
    form.retain(|it| it.0 != "press");
    form
}

fn set(form: &mut [(String, String)], field: &str, value: &str) {
    let of = form.iter_mut().find(|it| it.0 == field);
    of.unwrap_or_else(|| panic!("no field {field}")).1 = value.to_owned();
}

#[tokio::test]
async fn a_save_that_fails_writes_nothing_and_loses_nothing() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    begun(&mut ines, &family).await;
    ines.tick("Warfarin 50 mg: stopped").fill("Why, as it was said Warfarin 50 mg", "bruises");
    ines.fill("Which test of test 1", "Blood test")
        .fill("At what time", "ten")
        .tick("Metoprolol 50 mg: on hold");
    ines.fill("What else was said", "More walking.").press("Save the note").await.answers(422);
    ines.sees("Enter the reason, as it was given.").sees("Enter the time like 9:30 am");
    // Stopped before it was begun: the rule of the medicine's own page, told at this medicine.
    ines.untick("At what time")
        .fill("At what time", "")
        .fill("Why, as it was said Metoprolol 50 mg", "slow pulse");
    bram.open(&family.at("/medicines/2/edit"))
        .await
        .fill("Dose", "2 tablets")
        .press("Save")
        .await
        .answers(200);
    ines.press("Save the note").await.answers(409).sees("This medicine was changed meanwhile");
    ines.sees("2 tablets");
    for (label, kept) in [
        ("What was said May she swim?", "Yes."),
        ("Why, as it was said Warfarin 50 mg", "bruises"),
        ("Which test of test 1", "Blood test"),
        ("What else was said", "More walking."),
    ] {
        assert_eq!(ines.value(label), kept, "{label}");
    }
    // Nothing of it was written: not the answer, not the stop, no task, no note.
    bram.open(&family.at("/questions/1")).await.sees("nobody will ask it yet");
    bram.open(&family.at("/medicines/1")).await.does_not_see("bruises");
    bram.open(&family.at("/visits")).await.does_not_see("Dr Lind, ");
    // The device is dead: another one has it all.
    let mut other = family.browser("Ines").await;
    other.open(&family.at("/visits/drafts/1")).await;
    assert_eq!(other.value("What else was said"), "More walking.");
    assert_eq!(other.value("Why, as it was said Metoprolol 50 mg"), "slow pulse");
    other.sees("This medicine was changed meanwhile").press("Save the note").await.answers(200);
    other.sees("Warfarin 50 mg: stopped from").sees("Metoprolol 50 mg: put on hold from");
    other.open(&family.at("/visits")).await.does_not_see("You are writing");
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_of_her_devices_do_not_write_over_each_other() {
    let family = Family::new().await;
    let (mut phone, mut laptop) = (family.browser("Ines").await, family.browser("Ines").await);
    begun(&mut phone, &family).await;
    laptop.open(&family.at("/visits/drafts/1")).await.fill("What else was said", "On the laptop.");
    phone.fill("What else was said", "On the phone.");
    // The script of the phone keeps twice; the page goes on with its own, also when an answer was lost.
    let mut first = typed_now(&phone);
    set(&mut first, "count", "1");
    phone.send(&family.at("/visits/typed"), &first).await.answers(200);
    assert!(String::from_utf8_lossy(&phone.body).contains("kept at"), "{:?}", phone.body);
    set(&mut first, "count", "3");
    set(&mut first, "said", "On the phone, longer.");
    phone.send(&family.at("/visits/typed"), &first).await.answers(200);
    // One that was sent before it comes late, and does no harm.
    set(&mut first, "count", "2");
    set(&mut first, "said", "On the");
    phone.send(&family.at("/visits/typed"), &first).await.answers(200);
    let mut late = typed_now(&laptop);
    set(&mut late, "count", "1");
    laptop.send(&family.at("/visits/typed"), &late).await.answers(409);
    assert!(String::from_utf8_lossy(&laptop.body).contains("another device"), "{:?}", laptop.body);
    // The press shows both; what stays in the fields is kept.
    laptop.open(&family.at("/visits/drafts/1")).await;
    assert_eq!(laptop.value("What else was said"), "On the phone, longer.");
    laptop.send(&family.at("/visits/add"), &late).await.answers(409);
    laptop.sees("Another device of yours kept this note meanwhile").sees("On your other device");
    laptop.sees("On the phone, longer.");
    assert_eq!(laptop.value("What else was said"), "On the laptop.");
    laptop.press("Keep as a draft").await.answers(200);
    assert_eq!(laptop.value("What else was said"), "On the laptop.");
    // What the phone still shows was saved meanwhile: it says so, and a second press is meant.
    let mut phone = family.browser("Ines").await;
    let (_, at, save) = phone.open(&family.at("/visits/drafts/1")).await.pressed("Save the note");
    laptop.press("Save the note").await.answers(200);
    phone.send(&at, &save).await.answers(422);
    phone.sees("This draft was saved or thrown away on another device");
    assert_eq!(phone.value("What else was said"), "On the laptop.");
    phone.open(&family.at("/visits")).await.sees("Notes 1");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_draft_is_thrown_away_on_purpose_and_is_nobody_elses() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    begun(&mut ines, &family).await;
    ines.press("Throw the draft away").await;
    let (_, at, form) = ines.pressed("Throw it away");
    bram.send(&at, &form).await.answers(404);
    // Typed on meanwhile: what she saw is not what would go.
    let mut laptop = family.browser("Ines").await;
    laptop.open(&family.at("/visits/drafts/1")).await.fill("What else was said", "And more.");
    laptop.press("Keep as a draft").await.answers(200);
    ines.send(&at, &form).await.answers(409);
    ines.open(&family.at("/visits")).await.press("Throw away").await.sees("And more.");
    ines.press("Throw it away").await.answers(200).sees("The draft is thrown away");
    ines.open(&family.at("/today")).await.does_not_see("not saved yet");
    ines.get(&family.at("/visits/drafts/1")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_draft_is_out_of_reach_when_her_place_ends() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    before_the_visit(&mut ines, &family).await;
    bram.open(&family.at("/visits/add")).await.fill("What else was said", "Bram was there.");
    let typed = typed_now(&bram);
    bram.press("Keep as a draft").await.answers(200);
    ines.open(&family.at("/family/3/remove")).await.press("End this place").await.answers(200);
    bram.get(&family.at("/visits/drafts/1")).await.answers(404);
    bram.send(&family.at("/visits/typed"), &typed).await.answers(404);
    ines.open(&family.at("/visits")).await.does_not_see("You are writing");
    ines.get(&family.at("/visits/drafts/1")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_same_save_sent_twice_makes_one_note_and_no_ghost_of_a_draft() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    begun(&mut ines, &family).await;
    let (_, at, form) = ines.fill("What else was said", "Once.").pressed("Save the note");
    for _ in 0..2 {
        ines.send(&at, &form).await;
        assert_eq!(
            (ines.status.as_u16(), ines.at.as_str()),
            (303, family.at("/visits/1").as_str())
        );
    }
    ines.open(&family.at("/visits")).await.does_not_see("You are writing").sees("Notes 1");
    family.house.is_sound().await;
}

/// The form is long: each kind of field once, with what people (and others) type.
#[tokio::test]
async fn whatever_is_typed_is_kept_or_comes_back() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    begun(&mut ines, &family).await;
    for value in
        ["👩‍👩‍👧 💊", "abc\u{202e}cba", "a\0b", "<script>alert(1)</script>\"'", "31 Feb 2026", "-1"]
    {
        for press in ["Keep as a draft", "Save the note"] {
            ines.open(&family.at("/visits/drafts/1"))
                .await
                .tick("Warfarin 50 mg: taken differently");
            for label in [
                "On which day",
                "Or by name",
                "Why, as it was said Warfarin 50 mg",
                "From which day Warfarin 50 mg",
                "New dose Warfarin 50 mg",
                "Name of new medicine 1",
                "Which test of test 1",
                "Result by of test 1",
                "Next visit on",
                "At what time",
            ] {
                ines.fill(label, value);
            }
            ines.fill("What else was said", value).press(press).await;
            let expected = if press == "Save the note" { 422 } else { 200 };
            ines.answers(expected);
            let kept = ines.value("What else was said").replace('\u{fffd}', "");
            assert_eq!(kept, value.replace('\0', ""), "{press}");
        }
    }
    ines.open(&family.at("/visits")).await.does_not_see("Notes");
    family.house.is_sound().await;
}
