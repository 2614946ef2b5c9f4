//! How long a medicine lasts: what was fetched and counted, the day it runs out, the day by which
//! the pharmacy has to be asked. Today is Wednesday 25 November 2026.

use crate::support::{Browser, Family};
use time::Duration;

async fn add(ines: &mut Browser, family: &Family, name: &str) {
    ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Dose", "1 tablet");
    ines.press("Add this medicine").await.answers(200);
}

/// A medicine of which a day takes two.
async fn warfarin(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    add(&mut ines, family, "Warfarin").await;
    ines.open(&family.at("/medicines/1/steps/add")).await.fill("From which day", "1 Nov 2026");
    ines.fill("morning", "1").fill("bedtime", "1").press("Save").await.answers(200);
    ines
}

async fn fetched<'a>(ines: &'a mut Browser, family: &Family, count: &str) -> &'a mut Browser {
    ines.open(&family.at("/medicines/1/stock/fills/add")).await;
    ines.fill("How many", count).press("Save").await
}

#[tokio::test]
async fn the_day_to_act_is_said_with_its_reason() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    ines.open(&family.at("/medicines/1")).await.press("Supply").await;
    ines.sees("no fill and no count is written down").press("Fetched from the pharmacy").await;
    ines.fill("How many", "60").fill("Refills left", "1").fill("Pharmacy", "Lakeside");
    ines.press("Save").await.answers(200).sees("Written down: 60 tablets fetched");
    ines.sees("runs out on Fri 25 Dec 2026; 60 tablets there today");
    ines.sees("act by Wed 23 Dec 2026").sees("30 days by its schedule").sees("by Ines");
    let reason = "2 working days for the pharmacy; Christmas Day is a holiday; 1 refill left";
    ines.sees(reason).sees("differs by state: the label or the pharmacist says");
    ines.open(&family.at("/medicines")).await.press("Supply").await.sees(reason);
    ines.open(&family.at("/today")).await.does_not_see("runs out");

    family.house.pass(Duration::days(25));
    let mut ines = family.browser("Ines").await;
    let says = "Warfarin runs out on Fri 25 Dec 2026: act by Wed 23 Dec 2026";
    ines.open(&family.at("/today")).await.sees(says).press(says).await.sees("Supply of Warfarin");
    family.house.pass(Duration::days(4));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("act by was Wed 23 Dec 2026");
    ines.open(&family.at("/medicines/supply")).await.sees("The day to act is past");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_pharmacy_may_need_longer() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    fetched(&mut ines, &family, "60").await.answers(200);
    ines.open(&family.at("/medicines/supply")).await.press("How long the pharmacy needs").await;
    assert_eq!(ines.value("Working days"), "2");
    ines.fill("Working days", "0").press("Save").await.answers(422);
    ines.sees("Write a whole number from 1 to 30.").fill("Working days", "5").press("Save").await;
    ines.answers(200).sees("act by Fri 18 Dec 2026").sees("a weekend lies between");
    ines.open(&family.at("/medicines/1/stock/fills/1/edit")).await;
    ines.fill("Working days this pharmacy needs", "1").press("Save").await.answers(200);
    ines.sees("act by Thu 24 Dec 2026").sees("1 working day for the pharmacy");
    ines.open(&family.at("/history")).await.sees("pharmacy's working days");
    ines.sees("Ines added how long the pharmacy needs");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_cannot_be_so_is_told_at_its_field() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    for (label, typed, says) in [
        ("How many", "0", "Write how many, more than none."),
        ("How many", "-5", "Write a number, like 2, 1.5 or 1 1/2."),
        ("How many", "", "Write how many."),
        ("How many", "10001", "This is more than ten thousand: look at the label again."),
        ("Fetched on", "26 Nov 2026", "This day has not come yet."),
        ("Days' supply", "0", "Write a whole number from 1 to 366."),
        ("Refills left", "1.5", "Write a whole number from 0 to 99."),
        (
            "Prescription written on",
            "26 Nov 2026",
            "This is after it was filled, 25 November 2026.",
        ),
        ("Prescription filled until", "1 Nov 2026", "This is before it was filled"),
        ("Filled again from", "1 Nov 2026", "This is before it was filled"),
    ] {
        ines.open(&family.at("/medicines/1/stock/fills/add")).await.fill("How many", "30");
        ines.fill(label, typed).press("Save").await.answers(422).sees(says);
        assert_eq!(ines.value(label), typed);
    }
    fetched(&mut ines, &family, "7.5").await.answers(200).sees("Written down: 7.5 tablets fetched");
    fetched(&mut ines, &family, "7.5").await.sees("another fill of 25 November 2026: both count");
    ines.sees("More than one fill is written down for 25 November 2026: all of them count.");
    ines.sees("15 tablets there today").press("Counted in the house").await;
    ines.fill("Counted on", "26 Nov 2026").fill("How many", "3").press("Save").await.answers(422);
    ines.sees("This day has not come yet.").fill("Counted on", "25 Nov 2026").fill("How many", "0");
    ines.press("Save").await.answers(200).sees("ran out on Wed 25 Nov 2026, by what is written");
    ines.open(&family.at("/medicines/1/stock/counts/1/strike")).await.press("Strike").await;
    ines.answers(200).sees("15 tablets there today");
    ines.open(&family.at("/medicines/1/stock/fills/2/strike")).await.press("Strike").await;
    ines.answers(200).sees("7.5 tablets there today").does_not_see("More than one");
    ines.get(&family.at("/medicines/1/stock/fills/2/edit")).await.answers(404);
    ines.get(&family.at("/medicines/2/stock/fills/1/edit")).await.answers(404);
    ines.open(&family.at("/history")).await.sees("struck as a mistake Warfarin, fetched on 25");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_hold_uses_nothing_up_and_what_cannot_be_told_stands_below() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    add(&mut ines, &family, "Latanoprost").await;
    fetched(&mut ines, &family, "60").await.answers(200);
    ines.open(&family.at("/medicines/1/hold")).await.fill("Why", "a tooth");
    ines.fill("Who said so", "the dentist");
    ines.press("Hold").await.answers(200);
    ines.open(&family.at("/medicines/supply")).await.sees("Without a day to act, and why");
    ines.sees("on hold: nothing is used up; 60 tablets fetched on 25 November 2026");
    ines.sees("Latanoprost no fill and no count is written down").does_not_see("act by");
    family.house.pass(Duration::days(4));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/1/resume")).await.fill("Why", "the tooth is out");
    ines.fill("Who said so", "the dentist").press("Resume").await.answers(200);
    ines.open(&family.at("/medicines/1/stock")).await.sees("runs out on Tue 29 Dec 2026");
    ines.open(&family.at("/history")).await.sees("to the days without: Warfarin, not taken from");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_journey_has_what_its_days_take() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    fetched(&mut ines, &family, "60").await.answers(200);
    ines.open(&family.at("/medicines/supply")).await.press("Runs out while away").await;
    ines.sees("These days take 14 tablets").does_not_see("runs out by then");
    ines.fill("First day away", "20 Dec 2026").fill("Last day away", "27 Dec 2026");
    ines.press("Show").await.sees("from 20 December 2026 to 27 December 2026, 8 days");
    ines.sees("These days take 16 tablets").sees("runs out by then");
    ines.fill("First day away", "28 Dec 2026").press("Show").await;
    ines.answers(200).sees("The last day is before the first.");
    assert_eq!(ines.value("First day away"), "28 Dec 2026");
}

#[tokio::test]
async fn the_supply_of_a_hidden_medicine_is_hidden_with_it() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    fetched(&mut ines, &family, "4").await.answers(200);
    ines.open(&family.at("/medicines/1/stock/counts/add")).await.fill("How many", "4");
    ines.press("Save").await.answers(200);
    let (mut bram, mut delia) = (family.browser("Bram").await, family.browser("Delia").await);
    bram.open(&family.at("/today")).await.sees("Warfarin runs out on Fri 27 Nov 2026");
    delia.open(&family.at("/medicines/1/stock")).await.sees("4 tablets there today");
    delia.does_not_see("Fetched from the pharmacy Counted in the house");
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    for page in ["/medicines/supply", "/medicines/supply/away", "/today", "/history"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Warfarin");
        bram.does_not_see("to the supply");
    }
    bram.get(&family.at("/medicines/1/stock")).await.answers(404);
    bram.get(&family.at("/medicines/1/stock/fills/1/edit")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn after_a_death_nothing_is_to_be_done_by_a_day() {
    let family = Family::new().await;
    let mut ines = warfarin(&family).await;
    fetched(&mut ines, &family, "4").await.sees("act by");
    ines.open(&family.at("")).await.press("When Ottoline Varga has died").await;
    ines.fill("Died on", "24 November 2026").fill("Who told you", "Runa Holm").press("Go on").await;
    ines.press("Yes, enter it").await.answers(200);
    for page in ["/medicines/supply", "/medicines/1/stock", "/today"] {
        ines.open(&family.at(page)).await.answers(200).does_not_see("act by");
    }
}
