//! Today: what needs someone, what the others changed since she last said that she has read, and
//! what was checked longest ago.

use crate::support::Family;
use time::Duration;

#[tokio::test]
async fn what_the_others_changed_stands_there_until_she_says_that_she_has_read() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    bram.open(&family.at("/today")).await.sees("Ines added the medicine Sertraline");
    // Ines knows what she did herself.
    ines.open(&family.at("/today")).await.does_not_see("Ines added the medicine");

    // What comes while the page stands open is not confirmed with it.
    family.house.pass(Duration::minutes(5));
    ines.open(&family.at("/allergies/add")).await.fill("To what", "Penicillin").tick("allergy");
    ines.press("Add to the list").await.answers(200);
    bram.press("I have read this").await.answers(200).sees("Noted that you have read this");
    bram.does_not_see("Sertraline Ines").sees("Ines added the allergy or intolerance Penicillin");
    bram.does_not_see("added the medicine Sertraline");
    bram.press("I have read this").await.sees("Nothing that anyone else changed.");
    bram.open(&family.at("/history")).await.sees("Bram confirmed having read what had changed");
    // To have read is no change for the others to read.
    ines.open(&family.at("/today")).await.does_not_see("confirmed having read");

    // An aide is not told of changes, and cannot say that she has read them.
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/today")).await.answers(200).does_not_see("Changed");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_was_never_asked_and_what_is_missing_needs_someone() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("Allergies: not asked yet");
    ines.sees("Nobody to phone is written down").sees("No medicine is written down");
    ines.sees("How Ottoline Varga usually is, is not written down");
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/allergies/add")).await.fill("To what", "Penicillin").tick("allergy");
    ines.press("Add to the list").await.answers(200);
    ines.open(&family.at("/today")).await.sees("What Sertraline is for is not written down");
    ines.does_not_see("Allergies: not asked").does_not_see("No medicine is");
    ines.sees("Checked longest ago").sees("not checked yet");

    // A reader sees the same facts, and has nothing to write with.
    let mut rosalind = family.browser("Rosalind").await;
    rosalind
        .open(&family.at("/today"))
        .await
        .sees("What Sertraline is for")
        .does_not_see("Keep it");
}

#[tokio::test]
async fn an_invitation_that_ran_out_is_told_to_those_who_invite() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/family/invite")).await.fill("Name", "Halvard Lind").tick("reader");
    ines.press("Make the invitation").await.answers(200);
    let says = "The invitation for Halvard Lind ran out unused";
    ines.open(&family.at("/today")).await.does_not_see(says);
    family.house.pass(Duration::days(8));
    // Her session has ended meanwhile.
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees(says);
    family.browser("Bram").await.open(&family.at("/today")).await.does_not_see(says);
}
