//! The log of doses: off until the family turns it on, one press for a time of the day, two who
//! press at once, corrections that keep the first, the label's hours, and what the sheet says.

use crate::support::{Browser, Family};
use time::Duration;

const OFTEN: &str = "every day, or every so many days";

/// Warfarin in the morning and at bedtime, Furosemide in the morning, Acetaminophen as needed.
async fn family() -> Family {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (id, name) in [(1, "Warfarin"), (2, "Furosemide"), (3, "Acetaminophen")] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        if name == "Acetaminophen" {
            ines.tick("As needed");
        }
        ines.press("Add this medicine").await.answers(200);
        ines.open(&family.at(&format!("/medicines/{id}/steps/add"))).await;
        match id {
            1 => ines.tick(OFTEN).fill("morning", "1").fill("bedtime", "0.5"),
            2 => ines.tick(OFTEN).fill("morning", "2"),
            _ => (ines.tick("only as needed").fill("How much at one time", "1"))
                .fill("The label's least hours between", "6")
                .fill("The label's most in 24 hours", "3"),
        };
        ines.press("Save").await.answers(200);
    }
    family
}

async fn turned_on(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/given/keeping")).await;
    ines.tick("all medicines, also those added later").press("Save").await.answers(200);
    ines
}

const DAY: &str = "/medicines/given";

#[tokio::test]
async fn it_is_off_until_the_family_turns_it_on_for_one_or_for_all() {
    let family = family().await;
    let (mut ines, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    delia.open(&family.at(DAY)).await.sees("No log of doses is kept.").does_not_see("not entered");
    delia.does_not_see("Turn the log on");
    delia.get(&family.at("/medicines/given/keeping")).await.answers(403);
    ines.open(&family.at("/sheets/emergency")).await.sees("Doses given are not logged.");
    ines.open(&family.at("/medicines")).await.press("Doses entered").await;
    ines.press("Turn the log on").await.tick("Warfarin").press("Save").await.answers(200);
    ines.sees("Warfarin not entered").sees("No log is kept of: Furosemide, Acetaminophen.");
    delia.open(&family.at(DAY)).await.press("All of the morning given").await.answers(200);
    ines.press("For which medicines a log is kept")
        .await
        .sees("on since Wed 25 Nov 2026, 9:12 am, by Ines");
    ines.untick("Warfarin").press("Save").await.answers(200).sees("Warfarin given by Delia");
    ines.does_not_see("not entered").open(&family.at("/history")).await;
    ines.sees("Ines turned off the log of doses for Warfarin");
    ines.sees("Ines turned on the log of doses for Warfarin");
    ines.sees("Delia entered the dose Warfarin, 25 November 2026, in the morning as given, 1 tablet, by Delia");
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_who_enter_the_same_dose_make_one_entry_and_the_second_reads_of_the_first() {
    let family = family().await;
    let mut ines = turned_on(&family).await;
    let mut delia = family.browser("Delia").await;
    let mut bram = family.browser("Bram").await;
    for browser in [&mut ines, &mut delia, &mut bram] {
        browser.open(&family.at(DAY)).await.sees("Warfarin not entered").answers(200);
    }
    delia.press("All of the morning given").await.answers(200).sees("2 doses entered by Delia");
    family.house.pass(Duration::minutes(8));
    ines.press("All of the morning given").await.answers(200);
    ines.sees("Nothing new was entered. Entered before:");
    ines.sees("Warfarin, 1 tablet: given by Delia; entered 9:12 am by Delia");
    // Who says otherwise is told before anything is kept.
    let (_, address, mut form) = bram.pressed("All of the morning given");
    form.push(("outcome-1".into(), "not given: refused".into()));
    bram.send(&address, &form).await.answers(422);
    bram.sees("Entered meanwhile, and not as you say (not given: refused): Warfarin, 1 tablet: given by Delia");
    bram.open(&family.at(DAY)).await;
    assert_eq!(bram.text().matches("given by Delia").count(), 2, "{}", bram.text());
    // Struck, the dose may be entered anew; the old one does not come back over the new.
    delia.open(&family.at("/medicines/given/2/strike")).await;
    delia.fill("What was wrong with it", "wrong box").press("Strike").await.answers(200);
    delia.sees("Warfarin not entered").press("The rest of the morning given").await.answers(200);
    delia.open(&family.at("/medicines/given/2/bring-back")).await.press("Bring back").await;
    delia.answers(422).sees("Another entry stands for this dose.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_was_not_given_is_named_with_its_reason_and_put_right_with_the_first_kept() {
    let family = family().await;
    turned_on(&family).await;
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at(DAY)).await.press("Not all, or by someone else : morning").await;
    delia.fill("What happened with Furosemide", "not given: another reason");
    delia.press("Enter these").await.answers(422);
    delia.sees("Furosemide: Write in the note why it was not given.");
    assert_eq!(delia.value("What happened with Furosemide"), "not given: another reason");
    delia.fill("A note on Furosemide", "the bottle fell").fill("Given by", "Emeric");
    delia.fill("How much of Warfarin", "1/2").press("Enter these").await.answers(200);
    delia.sees("Warfarin given by Emeric; entered 9:12 am by Delia 0.5 tablet");
    delia.sees("Furosemide not given: another reason (the bottle fell); entered 9:12 am by Delia");
    family.house.pass(Duration::minutes(30));
    delia.press("Warfarin").await.press("Put it right").await.fill("How much", "1");
    delia
        .fill("Given by", "Delia")
        .press("Save")
        .await
        .answers(200)
        .sees("1 tablet in the morning");
    delia.sees("entered 9:12 am by Delia").sees("last changed Wed 25 Nov 2026, 9:42 am by Delia");
    // Bram did not enter it; Ottoline decides.
    family.browser("Bram").await.get(&family.at("/medicines/given/2/edit")).await.answers(403);
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/medicines/given/2/edit")).await.tick("not given: away");
    ottoline.press("Save").await.answers(200).press("Its history").await;
    ottoline.sees(
        "changed the outcome of Warfarin, 25 November 2026, in the morning from given to away",
    );
    ottoline.sees("amount before: 0.5 after: 1").sees("as given, 0.5 tablet, by Emeric");
    family.house.is_sound().await;
}

#[tokio::test]
async fn before_the_labels_hours_are_over_it_is_told_and_kept_by_a_second_press() {
    let family = family().await;
    let mut ines = turned_on(&family).await;
    ines.press("1 tablet given now : Acetaminophen").await.answers(200);
    ines.sees("Entered here in the last 24 hours: 1 tablet. Its label says at most 3 tablets in 24 hours.");
    family.house.pass(Duration::hours(3));
    let mut delia = family.browser("Delia").await;
    delia
        .open(&family.at(DAY))
        .await
        .press("1 tablet given now : Acetaminophen")
        .await
        .answers(422);
    delia.sees(
        "Label says wait 6 hours; last given 3 h before, at 9:12 am, by Ines. Ask the pharmacist.",
    );
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at(DAY)).await;
    assert_eq!(bram.text().matches("given by").count(), 1, "nothing is kept yet");
    // Someone else enters one before the second press: it is told again.
    bram.press("Another time or amount : Acetaminophen").await.fill("At what time", "3:12 am");
    bram.press("Enter this dose").await.answers(200);
    delia.press("Keep it all the same").await.answers(422).sees("last given 3 h before");
    delia
        .press("Keep it all the same")
        .await
        .answers(200)
        .sees("3 tablets. Its label says at most");
    family.house.pass(Duration::hours(6));
    delia.press("1 tablet given now : Acetaminophen").await.answers(422);
    delia.sees(
        "Label says at most 3 tablets in 24 hours; with this one, 4 tablets are entered here.",
    );
    delia.does_not_see("safe").fill("At what time", "11:59 pm");
    delia.press("Keep it all the same").await.answers(422).sees("This has not come yet.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_aide_writes_and_a_reader_reads() {
    let family = family().await;
    turned_on(&family).await;
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at(DAY)).await.press("All of the morning given").await.answers(200);
    let (mut rosalind, at) = (family.browser("Rosalind").await, family.at(DAY));
    rosalind.open(&at).await.sees("Warfarin given by Delia").sees("not entered");
    rosalind.does_not_see("given now").does_not_see("Not all").does_not_see("bedtime given");
    rosalind.get(&family.at("/medicines/given/slots/2026-11-25/bedtime")).await.answers(403);
    let opened = [("opened".to_owned(), "1".to_owned())];
    rosalind
        .send(&family.at("/medicines/given/slots/2026-11-25/bedtime"), &opened)
        .await
        .answers(403);
    // A day ahead, a time that is not in the schedule, a day that is none.
    for (rest, status) in
        [("2026-11-26/morning", 422), ("2026-11-25/noon", 404), ("x/morning", 404)]
    {
        delia.send(&family.at(&format!("/medicines/given/slots/{rest}")), &opened).await;
        delia.answers(status);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_emergency_sheet_says_what_was_entered_last() {
    let family = family().await;
    let mut ines = turned_on(&family).await;
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at(DAY)).await.press("All of the morning given").await.answers(200);
    delia.press("Not all, or by someone else : bedtime").await.answers(200);
    ines.open(&family.at("/sheets/emergency")).await;
    ines.sees("Last entered here: Wed 25 Nov 2026, 9:12 am, Delia: 1 tablet given in the morning");
    ines.sees("No dose is entered here yet");
    ines.sees("Doses given are logged; doses not entered here are not known. Last entered of all:");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_doses_of_a_hidden_medicine_are_hidden_with_it() {
    let family = family().await;
    let mut ines = turned_on(&family).await;
    ines.open(&family.at(DAY)).await.press("All of the morning given").await.answers(200);
    ines.open(&family.at("/medicines/given/keeping")).await.tick("Warfarin").press("Save").await;
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    for page in [DAY, "/history", "/today", "/sheets/emergency", "/medicines/given/keeping"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Warfarin");
    }
    bram.open(&family.at("/history")).await.sees("Ines entered the dose Furosemide");
    for rest in ["/medicines/given/2", "/medicines/given/2/edit", "/history/given/2"] {
        bram.get(&family.at(rest)).await.answers(404);
    }
    bram.get(&family.at("/medicines/given/as-needed/1")).await.answers(404);
    family.house.is_sound().await;
}
