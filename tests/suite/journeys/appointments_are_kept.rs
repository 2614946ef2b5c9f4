//! An appointment: booked by one, gone along to by another, read on two clocks, moved, cancelled, kept; what is clinical about it
//! only for those who see that.

use crate::support::{Browser, Family};

/// An eye test on Thu 3 Dec 2026 at 9:30 am, at which nobody goes along yet.
async fn eye_test(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/appointments")).await.sees("Every visit to a clinician or a service");
    ines.press("Add an appointment").await.press("Keep this appointment").await.answers(422);
    ines.sees("Enter what it is").sees("Enter the day");
    ines.fill("What it is", "Eye test").fill("Kind of visit", "test").fill("Day", "3 Dec 2026");
    ines.fill("Or a name", "Lakehead Eye Clinic").fill("Place", "Woodland Avenue");
    ines.press("Keep this appointment").await.answers(422).sees("Enter the time, like 9:30 am.");
    ines.fill("Time", "half past nine").press("Keep this appointment").await.answers(422);
    ines.sees("This is no time of the day.");
    ines.fill("Time", "9:30 am").fill("What it is for", "the pressure in the left eye");
    ines.fill("Fasting", "no need, the clinic said").fill("Referral number", "R-1");
    ines.fill("Last day of the referral", "1 Dec 2026").press("Keep this appointment").await;
    ines.answers(200).sees("Added Eye test").sees("Thu 3 Dec 2026, 9:30 am");
    ines.sees("the pressure in the left eye")
        .sees("The referral ends on 1 December 2026, before this day.");
}

#[tokio::test]
async fn two_weeks_ahead_it_stands_on_today_that_nobody_goes_along() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (title, time) in [("Hearing test", "9 am"), ("Foot care", "9:30 am")] {
        ines.open(&family.at("/appointments/add")).await.fill("What it is", title);
        ines.fill("Day", "9 Dec 2026").fill("Time", time).press("Keep this appointment").await;
        ines.answers(200);
    }
    // It is 9:12 on 25 November.
    ines.open(&family.at("/today")).await.sees("Nobody goes along yet: Hearing test");
    ines.does_not_see("Nobody goes along yet: Foot care");
    family.house.pass(time::Duration::hours(1));
    family.browser("Ines").await.open(&family.at("/today")).await.sees("yet: Foot care");
    family.house.is_sound().await;
}

#[tokio::test]
async fn one_books_it_another_goes_along_and_each_reads_it_on_her_own_clock() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    eye_test(&mut ines, &family).await;
    ines.open(&family.at("/today")).await.sees("Nobody goes along yet: Eye test, Thu 3 Dec 2026");
    ines.sees("The referral ends on 1 December 2026, before the day: Eye test");
    ines.sees("The next seven days").does_not_see("Lakehead");
    bram.open(&family.at("/appointments")).await.sees("9:30 am Chicago").sees("7:30 am for you");
    bram.press("Eye test").await.sees("Thu 3 Dec 2026, 9:30 am Chicago · 7:30 am for you");
    bram.press("I will go along").await.press("I will go along").await.answers(200);
    bram.sees("Your name stands beside it").sees("Bram goes along");
    ines.open(&family.at("/today")).await.does_not_see("Nobody goes along yet");
    family.house.pass(time::Duration::days(3));
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/today")).await.sees("Thu 3 Dec 2026").sees("Bram goes along");
    // Handed to nobody again, and then said that she goes alone: nobody is asked any more.
    bram.open(&family.at("/appointments/1")).await.press("Who goes along").await;
    bram.fill("Who goes along", "").press("Save").await.answers(200).sees("nobody goes along yet");
    ines.open(&family.at("/today")).await.sees("Nobody goes along yet");
    ines.open(&family.at("/appointments/1")).await.press("Who goes along").await;
    ines.fill("Who goes along", "alone").press("Save").await.sees("Ottoline Varga goes alone");
    ines.open(&family.at("/today")).await.does_not_see("Nobody goes along yet");
    // It is kept when its day has come, and not before.
    let stands = family.at("/appointments/1/on/2026-12-03/stands");
    let form = [("status".into(), "kept".into()), ("version".into(), "4".into())];
    ines.send(&stands, &form).await.answers(422).sees("This day has not come yet.");
    family.house.pass(time::Duration::days(6));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments")).await.sees("Was it kept? 1").press("Eye test").await;
    ines.press("How it stands").await.tick("kept").press("Save").await.answers(200).sees("kept");
    ines.open(&family.at("/appointments")).await.does_not_see("Was it kept?");
    ines.press("Past appointments").await.sees("Eye test").sees("kept");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines booked Eye test for 3 December 2026, 9:30 am, with Lakehead Eye Clinic");
    ines.sees("Bram will go along to Eye test").sees("Ines said that it was kept: Eye test");
    ines.sees("Ines wrote down that Ottoline Varga goes alone to Eye test");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_it_is_for_is_seen_by_those_who_see_the_clinical_pages() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    eye_test(&mut ines, &family).await;
    bram.open(&family.at("/appointments/1")).await.sees("the pressure in the left eye");
    ines.open(&family.at("/family/3/areas")).await.fill("clinical", "nothing");
    ines.press("Save").await.answers(200);
    bram.open(&family.at("/appointments/1")).await.answers(200).sees("Lakehead Eye Clinic");
    for page in ["/appointments/1", "/history", "/history/appointment/1", "/today"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("pressure").does_not_see("R-1");
    }
    bram.open(&family.at("/appointments/1/edit")).await.does_not_see("What it is for");
    bram.fill("Place", "Harbor Street").press("Save").await.answers(200);
    ines.open(&family.at("/appointments/1")).await.sees("the pressure in the left eye");
    ines.sees("Harbor Street");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_hidden_alone_and_with_the_contact_it_leans_on() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/contacts/add"))
        .await
        .fill("Name", "Dr Quill")
        .fill("Phone", "218-555-0120");
    ines.press("Add this contact").await.answers(200);
    eye_test(&mut ines, &family).await;
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Talk");
    ines.fill("Clinician or service", "1").fill("Or a name", "someone").fill("Day", "4 Dec 2026");
    ines.fill("Time", "2 pm")
        .press("Keep this appointment")
        .await
        .answers(422)
        .sees("one of the two");
    ines.fill("Or a name", "").press("Keep this appointment").await.answers(200).sees("Dr Quill");
    bram.open(&family.at("/appointments")).await.sees("Talk").sees("Eye test");
    ines.open(&family.at("/visibility/contact/1"))
        .await
        .tick("Bram")
        .press("Save")
        .await
        .answers(200);
    ines.open(&family.at("/visibility/appointment/1")).await.tick("Bram").press("Save").await;
    for page in ["/appointments", "/history", "/today"] {
        bram.open(&family.at(page)).await.does_not_see("Talk").does_not_see("Eye test");
    }
    for page in [
        "/appointments/1",
        "/appointments/2",
        "/appointments/2/on/2026-12-04/move",
        "/history/appointment/2",
    ] {
        bram.open(&family.at(page)).await.answers(404);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_at_the_same_time_are_said_also_across_two_records() {
    let (family, mut ines) = Family::with_two_records().await;
    let (mut own, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    let book = async |ines: &mut Browser, record: &str, what: &str, time: &str| {
        ines.open(&format!("{record}/appointments/add")).await.fill("What it is", what);
        ines.fill("Day", "8 Dec 2026").fill("Time", time).fill("Who goes along", "member/2");
        ines.press("Keep this appointment").await.answers(200);
    };
    book(&mut own, &family.at(""), "Eye test", "9:30").await;
    own.does_not_see("same time");
    book(&mut own, &family.at(""), "Foot care", "10:00").await;
    own.sees("At the same time: Eye test, 9:30 am").sees("Ines is down for both");
    book(&mut ines, "/p/2", "Hearing test", "10:15").await;
    ines.sees("Ines goes along with Ottoline Varga at the same time: Foot care");
    ines.open("/p/2/appointments")
        .await
        .sees("Ines goes along with Ottoline Varga at the same time");
    // Delia has no place in Emeric's record, and is told nothing of it.
    delia.open(&family.at("/appointments")).await.sees("Ines is down for both");
    delia.does_not_see("Emeric").does_not_see("Hearing");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_aide_goes_along_and_books_nothing() {
    let family = Family::new().await;
    let (mut ines, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    eye_test(&mut ines, &family).await;
    delia.open(&family.at("/appointments/1")).await.sees("Eye test").does_not_see("Move it");
    delia
        .does_not_see("How it stands")
        .press("I will go along")
        .await
        .press("I will go along")
        .await;
    delia.answers(200).sees("Delia goes along").press("How it stands").await.tick("confirmed");
    delia.press("Save").await.answers(200).sees("confirmed");
    for page in
        ["/appointments/add", "/appointments/1/edit", "/appointments/1/on/2026-12-03/cancel"]
    {
        delia.open(&family.at(page)).await.answers(403);
    }
    // Her place ends: the one who was to go along is missing, and Today says so.
    ines.open(&family.at("/family/4/remove")).await.press("End this place").await.answers(200);
    ines.open(&family.at("/today"))
        .await
        .sees("Who was to go along has no place here any more: Eye test");
    family.house.is_sound().await;
}

#[tokio::test]
async fn two_change_it_at_once_and_a_form_sent_twice_books_once() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    eye_test(&mut ines, &family).await;
    ines.open(&family.at("/appointments/1/edit")).await;
    bram.open(&family.at("/appointments/1/edit")).await.fill("Place", "Harbor Street");
    bram.press("Save").await.answers(200);
    ines.fill("Place", "Quarry Street").press("Save").await.answers(409).sees("Bram saved it");
    ines.sees("Harbor Street");
    assert_eq!(ines.value("Place"), "Quarry Street");
    ines.press("Save").await.answers(200).sees("Quarry Street");
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Foot care");
    ines.fill("Day", "9 Dec 2026").fill("Time", "2 pm");
    let (_, address, form) = ines.pressed("Keep this appointment");
    ines.send(&address, &form).await.answers(303);
    ines.send(&address, &form).await.answers(303);
    ines.open(&family.at("/appointments/3")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn one_is_asked_for_cancelled_and_struck() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Cardiology");
    ines.tick("requested").fill("Day", "10 Dec 2026").press("Keep this appointment").await;
    ines.answers(200).sees("Thu 10 Dec 2026, time not known yet").sees("requested");
    ines.press("How it stands").await.tick("confirmed").press("Save").await.answers(422);
    ines.sees("It has no time yet");
    ines.open(&family.at("/appointments/1")).await.press("Cancel").await;
    ines.press("Cancel this one").await.answers(422).sees("Enter the reason.");
    ines.fill("Why", "the clinic called it off").press("Cancel this one").await.answers(200);
    ines.open(&family.at("/appointments")).await.sees("cancelled: the clinic called it off");
    ines.press("Cardiology").await.press("Bring back").await.press("Bring back").await;
    ines.answers(200).sees("requested").press("Strike as a mistake").await.fill("Why", "twice");
    ines.press("Strike").await.answers(200).sees("Struck as a mistake: twice");
    ines.open(&family.at("/appointments")).await.does_not_see("Cardiology");
    family.house.is_sound().await;
}
