//! A medicine from the first label to the last day, and what the history says of it.

use crate::support::{Browser, Family};

async fn add_warfarin(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/medicines")).await.press("Add a medicine").await;
    ines.fill("Name", "Warfarin").fill("Strength", "2.5 mg").fill("Form", "tablet");
    ines.fill("Dose", "1 tablet").fill("When", "in the evening").fill("Route", "by mouth");
    ines.fill("What for", "heart rhythm").fill("Prescriber", "Dr Oyelaran");
    ines.fill("Taken since", "2 Apr 2019").fill("Where this comes from", "read off the bottle");
    ines.press("Add this medicine").await.answers(200).sees("Added Warfarin");
}

#[tokio::test]
async fn it_is_added_edited_checked_held_stopped_and_brought_back() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add_warfarin(&mut ines, &family).await;
    ines.sees("Warfarin 2.5 mg tablet").sees("1 tablet, in the evening, by mouth");
    ines.sees("not checked yet").sees("2 April 2019").sees("by Ines");

    ines.press("Check").await.fill("Compared with what", "the bottle");
    ines.press("Check").await.sees("checked today by Ines, against the bottle");

    ines.press("Edit").await.fill("Dose", "2 tablets");
    ines.press("Save").await.sees("2 tablets, in the evening").sees("not checked yet");

    ines.press("Hold").await.fill("Why", "before the tooth").fill("Who said so", "the dentist");
    ines.press("Hold").await.sees("put on hold from 25 November 2026").press("Medicines").await;
    ines.press("Warfarin 2.5 mg tablet").await.sees("on hold since 25 November 2026");
    ines.press("Resume").await.fill("Why", "the tooth is out").fill("Who said so", "the dentist");
    ines.press("Resume").await.press("Medicines").await.does_not_see("on hold");

    ines.press("Warfarin 2.5 mg tablet").await.press("Stop").await;
    ines.fill("Why", "nosebleeds").fill("Who said so", "Dr Oyelaran by phone");
    ines.press("Stop").await.sees("stopped from 25 November 2026").sees("Dr Oyelaran by phone");
    ines.press("Medicines").await.sees("Stopped 1");

    ines.press("History").await;
    ines.sees("Ines added the medicine Warfarin 2.5 mg");
    ines.sees("Ines changed the dose of Warfarin 2.5 mg from 1 tablet to 2 tablets");
    ines.sees("Ines checked Warfarin 2.5 mg against the bottle");
    ines.sees("Ines put on hold Warfarin 2.5 mg from 25 November 2026: before the tooth");
    ines.sees("Ines resumed Warfarin 2.5 mg");
    ines.sees("Ines stopped Warfarin 2.5 mg from 25 November 2026: nosebleeds");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_same_form_sent_twice_has_one_effect() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Levothyroxine");
    let (_, address, form) = ines.pressed("Add this medicine");
    ines.send(&address, &form).await.answers(303);
    let first = ines.at.clone();
    // The answer was lost: she sends it again, and is led to where it was kept.
    ines.send(&address, &form).await.answers(303);
    assert_eq!(ines.at, first);
    ines.open(&family.at("/medicines")).await.sees("Taking 1");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_edit_that_changes_nothing_leaves_the_check_and_the_history_alone() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add_warfarin(&mut ines, &family).await;
    ines.press("Check").await.fill("Compared with what", "the bottle").press("Check").await;
    ines.press("Edit").await.press("Save").await.sees("checked today by Ines");
    ines.press("History").await.does_not_see("Ines changed");
}

#[tokio::test]
async fn what_cannot_be_kept_is_said_beside_the_field() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.press("Add this medicine").await;
    ines.answers(422).sees("Enter the name of the medicine.");
    ines.fill("Name", "Ibuprofen").fill("The label's own limit, when as needed", "6 in 24 hours");
    ines.press("Add this medicine").await.answers(422).sees("Tick \"as needed\"");
    ines.tick("As needed").press("Add this medicine").await.answers(200).sees("as-needed");
    ines.press("Stop").await.fill("From which day", "26 Nov 2026").fill("Why", "x");
    ines.press("Stop").await.answers(422).sees("Enter who said so.");
    ines.fill("From which day", "year 20026").press("Stop").await.answers(422);
    assert_eq!(ines.value("From which day"), "year 20026");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_whole_list_is_checked_at_once_but_not_what_changed_meanwhile() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    add_warfarin(&mut ines, &family).await;
    ines.open(&family.at("/medicines/check")).await.fill("Compared with what", "the bottles");
    bram.open(&family.at("/medicines/1/edit")).await.fill("Dose", "half a tablet");
    bram.press("Save").await.answers(200);
    ines.press("All 1 agree").await.answers(409).sees("Someone changed this meanwhile");
    ines.sees("half a tablet");
    ines.press("All 1 agree").await.answers(200).sees("Checked 1 medicines");
    family.house.is_sound().await;
}
