//! A medicine is held, resumed, taken differently and stopped: who said so, who was told, what
//! nobody has asked yet, and the list as it stood before.

use crate::support::{Browser, Family};
use time::Duration;

async fn warfarin(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.fill("Strength", "2.5 mg").fill("Dose", "1 tablet").fill("When", "in the evening");
    ines.press("Add this medicine").await.answers(200);
    ines
}

async fn contact(ines: &mut Browser, family: &Family, name: &str, kind: &str) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Kind", kind);
    ines.fill("Phone", "218-555-0120").press("Add this contact").await.answers(200);
}

fn said(browser: &mut Browser, on: &str, by: &str, why: &str) {
    browser.fill("From which day", on).fill("Who said so", by).fill("Why", why);
}

#[tokio::test]
async fn a_hold_without_a_day_stands_on_today_until_someone_will_ask() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    ines.open(&family.at("/medicines/1/hold")).await.press("Hold").await.answers(422);
    ines.sees("Enter who said so.").sees("Enter the reason, as it was given.");
    said(&mut ines, "24 Nov 2026", "Dr Oyelaran by phone", "INR too high");
    ines.fill("The day to resume", "24 Nov 2026").press("Hold").await.answers(422);
    ines.sees("This is not after the first day of the hold, 24 November 2026.");
    ines.fill("The day to resume", "").press("Hold").await.answers(200);
    ines.sees("Warfarin: put on hold from 24 November 2026. Who has been told?");
    ines.sees("no day was given").sees("Nobody is written down as told.");

    let mut bram = family.browser("Bram").await;
    let needs = "Warfarin 2.5 mg is on hold since 24 November 2026: ask Dr Oyelaran by phone when to resume";
    bram.open(&family.at("/today")).await.press(needs).await;
    bram.press("I will ask when to resume").await.press("I will ask").await.answers(200);
    bram.sees("Your name stands beside it").sees("when is it to be resumed, if at all?");
    ines.open(&family.at("/today")).await.does_not_see("is on hold since");
    ines.open(&family.at("/changes/1")).await.sees("Bram will ask");
    ines.does_not_see("I will ask when to resume");

    // Answered without a day: it needs someone again.
    bram.open(&family.at("/questions/1/answer"))
        .await
        .fill("What was answered", "After the next test.");
    bram.press("Save").await.answers(200);
    ines.open(&family.at("/today")).await.press(needs).await.press("The day to resume").await;
    ines.fill("The day to resume", "27 Nov 2026").fill("Who gave it", "Dr Oyelaran");
    ines.press("The day to resume")
        .await
        .answers(200)
        .sees("to resume on 27 November 2026, said Dr Oyelaran");
    ines.open(&family.at("/today")).await.does_not_see("Warfarin 2.5 mg is on hold");
    ines.open(&family.at("/sheets/emergency")).await;
    ines.sees(
        "on hold, said Dr Oyelaran by phone; to resume on 27 November 2026, said Dr Oyelaran",
    );

    family.house.pass(Duration::days(3));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await;
    ines.sees("Warfarin 2.5 mg was to be resumed on 27 November 2026, said Dr Oyelaran: was it?");
    ines.open(&family.at("/medicines/1")).await.press("Resume").await;
    said(&mut ines, "23 Nov 2026", "Dr Oyelaran", "INR is back");
    ines.press("Resume")
        .await
        .answers(422)
        .sees("This is before the hold began, 24 November 2026.");
    said(&mut ines, "29 Nov 2026", "Dr Oyelaran", "INR is back");
    ines.press("Resume")
        .await
        .answers(422)
        .sees("Where a day to resume was given, write it at the hold.");
    said(&mut ines, "27 Nov 2026", "Dr Oyelaran", "INR is back");
    ines.press("Resume").await.answers(200).sees("resumed from 27 November 2026");
    ines.open(&family.at("/today"))
        .await
        .does_not_see("was to be resumed")
        .does_not_see("is on hold");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines wrote down the change Warfarin, put on hold from 24 November 2026 said Dr Oyelaran by phone: INR too high");
    ines.sees("Bram will ask when to resume: Warfarin, put on hold from 24 November 2026");
    ines.sees("set the day to resume Warfarin, put on hold from 24 November 2026 to 27 November 2026, said Dr Oyelaran");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_plan_stands_on_paper_and_is_done_or_struck() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    ines.open(&family.at("/medicines/1/steps/add")).await.fill("evening", "1").press("Save").await;
    ines.open(&family.at("/medicines/1/hold")).await;
    said(&mut ines, "3 Dec 2026", "Dr Lind, surgeon", "before the operation");
    ines.fill("The day to resume", "10 Dec 2026").press("Hold").await.answers(200);
    ines.sees("to be put on hold from 3 December 2026")
        .sees("nobody has said yet that it was done");
    let plan = "to be put on hold from 3 December 2026, said Dr Lind, surgeon; to resume on 10 December 2026, said Dr Lind, surgeon";
    ines.open(&family.at("/sheets/emergency")).await.sees(plan);
    ines.open(&family.at("/medicines/week?on=2026-11-25")).await.does_not_see(plan);
    ines.open(&family.at("/medicines/week?on=2026-11-29")).await.sees(plan);
    ines.open(&family.at("/medicines/day?on=2026-12-03")).await.sees(plan);
    ines.open(&family.at("/today")).await.does_not_see("to be put on hold");
    ines.open(&family.at("/changes/1/done")).await.press("It was done").await.answers(422);
    ines.sees("Its day has not come yet.");

    family.house.pass(Duration::days(8));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await;
    ines.press("Warfarin 2.5 mg was to be put on hold from 3 December 2026, said Dr Lind, surgeon: was it?").await;
    ines.press("It was done").await.press("It was done").await.answers(200);
    ines.sees("put on hold from 3 December 2026").does_not_see("planned");
    ines.open(&family.at("/medicines")).await.sees("On hold 1");
    ines.open(&family.at("/changes/1/strike")).await.press("Strike this change").await.answers(200);
    ines.sees("Warfarin stands as before").does_not_see("put on hold from");
    ines.open(&family.at("/medicines")).await.does_not_see("On hold");
    ines.open(&family.at("/medicines/1/stop")).await;
    said(&mut ines, "2 Jan 2028", "Dr Lind", "too far");
    ines.press("Stop").await.answers(422).sees("This day is more than a year away.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_was_told_is_said_and_who_was_not_can_be_asked() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    contact(&mut ines, &family, "Dr Adaeze Oyelaran", "doctor").await;
    contact(&mut ines, &family, "Harbor Street Pharmacy", "pharmacy").await;
    contact(&mut ines, &family, "Halvard Lind", "friend or neighbor").await;
    ines.open(&family.at("/medicines/1")).await.press("Taken differently").await;
    said(&mut ines, "25 Nov 2026", "Dr Adaeze Oyelaran by phone", "INR too low");
    ines.press("Save").await.answers(422).sees("Nothing is taken differently by this.");
    ines.fill("Strength", "5 mg").press("Save").await.answers(200);
    ines.sees("before 2.5 mg: 1 tablet, in the evening").sees("now 5 mg: 1 tablet, in the evening");
    // She said so herself, and a neighbor need not know.
    ines.sees("Not told, as far as is written here: Harbor Street Pharmacy.");
    ines.press("Someone was told").await.press("Keep that they were told").await.answers(422);
    ines.sees("Choose who was told, or enter a name.")
        .fill("Someone else's name", "the night nurse");
    ines.fill("On which day", "26 Nov 2026").press("Keep that they were told").await.answers(422);
    ines.sees("This day has not come yet.").fill("On which day", "25 Nov 2026");
    ines.press("Keep that they were told").await.answers(200).sees("the night nurse");

    ines.open(&family.at("/changes")).await.sees("Not told yet, as far as is written here");
    ines.press("Harbor Street Pharmacy").await.press("Keep that they were told").await.answers(422);
    ines.sees("Tick what was told.");
    ines.tick("Warfarin 5 mg, taken differently from 25 November 2026, said Dr Adaeze Oyelaran by phone: INR too low");
    ines.fill("How", "by phone").press("Keep that they were told").await.answers(200);
    ines.sees("Harbor Street Pharmacy was told of 1").does_not_see("Not told yet");
    ines.open(&family.at("/changes/1"))
        .await
        .sees("Harbor Street Pharmacy Wed 25 Nov 2026 by Ines, by phone");
    ines.open(&family.at("/sheets/changes?contact=2")).await.sees("For Harbor Street Pharmacy");
    ines.sees("Nothing changed since 26 October 2026");
    ines.open(&family.at("/changes/told/2/strike")).await.press("Strike").await.answers(200);
    ines.sees("Not told, as far as is written here: Harbor Street Pharmacy.");
    slip(&mut ines, &family).await;
    ines.open(&family.at("/changes?since=2026-11-26"))
        .await
        .sees("Nothing is written down as changed");
    ines.open(&family.at("/changes?since=nonsense")).await.sees("Enter a day, like 9 Mar 2026.");
    ines.open(&family.at("/changes/1/strike")).await.press("Strike this change").await.answers(200);
    ines.open(&family.at("/medicines/1")).await.sees("Warfarin 2.5 mg");
    ines.open(&family.at("/history"))
        .await
        .sees("Ines told Harbor Street Pharmacy of Warfarin on 25 November 2026, by phone");
    family.house.is_sound().await;
}

/// The change on paper, for the pharmacy and by itself.
async fn slip(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/changes/tell/2")).await.press("A slip with these").await;
    ines.sees("Ottoline Varga , born 9 March 1944").sees("For Harbor Street Pharmacy");
    ines.sees("1 change since 26 October 2026").sees("before: 2.5 mg: 1 tablet, in the evening");
    ines.sees("now: 5 mg: 1 tablet, in the evening").sees("INR too low");
    ines.press("Print or save").await.answers(200);
    assert!(ines.body.starts_with(b"%PDF"), "the slip is a paper");
    ines.open(&family.at("/changes/1")).await.press("A slip with this").await.sees("One change");
    for nothing in ["turn=9", "contact=9", "turn=x"] {
        ines.get(&family.at(&format!("/sheets/changes?{nothing}"))).await.answers(404);
    }
    ines.open(&family.at("/sheets/changes?since=nonsense")).await.answers(200);
}

#[tokio::test]
async fn a_new_one_takes_the_place_of_another_and_the_past_stays_as_it_was() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    family.house.pass(Duration::days(2));
    let mut ines2 = family.browser("Ines").await;
    ines2
        .open(&family.at("/medicines/add"))
        .await
        .fill("Name", "Apixaban")
        .fill("Why", "fewer tests");
    ines2.press("Add this medicine").await.answers(422).sees("Enter who said so, or leave all of");
    ines2.sees("Enter from which day: it is newly started.");
    ines2.fill("Who said so", "Dr Oyelaran").fill("Taken since", "26 Nov 2026");
    ines2.fill("In place of", "1").press("Add this medicine").await.answers(200);
    ines2.sees("Apixaban, started from 26 November 2026").sees("in place of Warfarin");
    ines2.sees("still on the list as taken").press("Warfarin 2.5 mg").await.press("Stop").await;
    said(&mut ines2, "26 Nov 2026", "Dr Oyelaran", "apixaban instead");
    ines2.press("Stop").await.answers(200);

    ines2
        .open(&family.at("/medicines/as-of?on=2026-11-25"))
        .await
        .sees("The list at the end of 25 November 2026");
    ines2.sees("Taking 1").sees("Warfarin").does_not_see("Entered afterwards");
    ines2.open(&family.at("/medicines/as-of?on=2026-11-26")).await.sees("Taking 1 Warfarin");
    ines2.sees("Apixaban: started from 26 November 2026, said Dr Oyelaran");
    ines2.sees("Warfarin 2.5 mg: stopped from 26 November 2026, said Dr Oyelaran");
    ines2.open(&family.at("/medicines/as-of?on=2026-11-27")).await.sees("Taking 1 Apixaban");
    ines2.does_not_see("Entered afterwards");
    ines2
        .open(&family.at("/medicines/as-of?on=2026-11-24"))
        .await
        .sees("No medicine stood in this record");
    ines2
        .open(&family.at("/medicines/as-of?on=2026-11-28"))
        .await
        .sees("This day has not come yet.");
    ines.open(&family.at("/medicines/2/resume")).await.answers(200);
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_hidden_has_no_turns() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    ines.open(&family.at("/medicines/1/hold")).await;
    said(&mut ines, "24 Nov 2026", "Dr Oyelaran", "INR too high");
    ines.press("Hold").await.answers(200);
    ines.open(&family.at("/changes/1/tell")).await.fill("Someone else's name", "the pharmacy");
    ines.press("Keep that they were told").await.answers(200);
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    for page in
        ["/changes", "/today", "/history", "/medicines/as-of?on=2026-11-25", "/sheets/emergency"]
    {
        bram.open(&family.at(page)).await.does_not_see("Warfarin").does_not_see("INR too high");
    }
    for page in [
        "/changes/1",
        "/changes/1/tell",
        "/changes/1/strike",
        "/changes/told/1/strike",
        "/history/turn/1",
        "/sheets/changes?turn=1",
    ] {
        bram.get(&family.at(page)).await.answers(404);
    }
    // An aide is shown what is taken now: what was stopped is not there for her.
    ines.open(&family.at("/medicines/1/stop")).await;
    said(&mut ines, "25 Nov 2026", "Dr Oyelaran", "apixaban instead");
    ines.press("Stop").await.answers(200);
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/changes")).await.does_not_see("Warfarin");
    delia.get(&family.at("/changes/2")).await.answers(404);
    family.house.is_sound().await;
}
