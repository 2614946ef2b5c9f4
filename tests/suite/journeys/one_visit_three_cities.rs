//! One visit, three cities: Ines books it by the clock of Duluth, Juno goes along and writes the note,
//! Bram takes from afar what is to be done after it. Each sees the others' work on her own clock, and
//! the history tells it.

use crate::support::{
    Browser, Family,
    family::{add_member, place},
};
use kinsheaf::platform::auth::area::Role;
use time::Duration;

async fn books(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind").fill("Kind", "doctor");
    ines.fill("Phone", "218-555-0101").press("Add this contact").await.answers(200);
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Heart check");
    ines.fill("Kind of visit", "specialist").fill("Clinician or service", "1");
    ines.fill("Day", "25 Nov 2026").fill("Time", "11 am").fill("Place", "Harbor Street");
    ines.press("Keep this appointment").await.answers(200).sees("Added Heart check");
    ines.open(&family.at("/today")).await.sees("Nobody goes along yet: Heart check");
}

async fn goes_along(juno: &mut Browser, family: &Family) {
    juno.open(&family.at("/appointments")).await.sees("11:00 am Chicago").sees("12:00 pm for you");
    juno.press("Heart check").await.press("I will go along").await;
    juno.press("I will go along").await.answers(200).sees("Juno goes along");
}

async fn notes(juno: &mut Browser, family: &Family) {
    juno.open(&family.at("/visits")).await.press("Write the note: Heart check").await.answers(200);
    juno.tick("Juno").fill("What else was said", "The ankles are better.");
    juno.fill("What is to be done of follow-up 1", "Phone the insurer");
    juno.fill("By which day of follow-up 1", "4 Dec 2026");
    juno.tick("to be read by Bram").press("Save the note").await.answers(200);
    juno.sees("The note is saved").sees("The ankles are better.");
}

#[tokio::test]
async fn one_books_one_goes_along_and_notes_and_one_far_away_takes_a_task() {
    let family = Family::new().await;
    let juno = add_member(&family.house, "Juno", "America/New_York").await;
    place(&family.house, family.person, juno, Role::Relative).await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    let mut juno = family.browser("Juno").await;
    books(&mut ines, &family).await;
    bram.open(&family.at("/appointments")).await.sees("Heart check").sees("9:00 am for you");
    goes_along(&mut juno, &family).await;
    ines.open(&family.at("/today")).await.does_not_see("Nobody goes along yet");
    ines.sees("Juno goes along");

    family.house.pass(Duration::hours(4));
    notes(&mut juno, &family).await;
    bram.open(&family.at("/today")).await.sees("Nobody has it: Phone the insurer");
    bram.sees("You were asked to read the note of the visit");
    bram.open(&family.at("/tasks")).await.press("I take it : Phone the insurer").await.answers(200);

    for browser in [&mut ines, &mut juno] {
        browser.open(&family.at("/tasks")).await.sees("Phone the insurer").sees("with Bram");
        browser.open(&family.at("/today")).await.does_not_see("Nobody has it");
    }
    ines.open(&family.at("/appointments/past")).await.sees("Heart check").sees("kept");
    ines.open(&family.at("/visits/1")).await.sees("The ankles are better.");
    ines.open(&family.at("/history")).await;
    for says in [
        "Ines booked Heart check for 25 November 2026, 11 am",
        "Juno will go along to Heart check",
        "Juno wrote the note of the visit Dr Lind, 25 November 2026",
        "Juno wrote down the task Phone the insurer",
        "Bram took Phone the insurer",
    ] {
        ines.sees(says);
    }
    family.house.is_sound().await;
}
