//! An appointment again and again: one of it moved, cancelled, gone along to; the whole series moved after that; this one and all
//! later ones; over a change of the clocks; after the person moved to another zone; after a death.

use crate::support::{Browser, Family};

/// Every Tuesday at 2 pm from 1 Dec 2026 on.
async fn therapy(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Physical therapy");
    ines.fill("Kind of visit", "therapy").fill("Day", "2 Dec 2026").fill("Time", "2 pm");
    ines.tick("every so many weeks, on these days").tick("Tuesday");
    ines.press("Keep this appointment").await.answers(422).sees("is none of these days");
    ines.fill("Day", "1 Dec 2026").press("Keep this appointment").await.answers(200);
    ines.sees("every week on Tuesday, from Tue 1 Dec 2026").sees("Tue 8 Dec 2026, 2:00 pm");
}

#[tokio::test]
async fn one_is_moved_then_the_series_and_nothing_is_lost() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    therapy(&mut ines, &family).await;
    let second = family.at("/appointments/1/on/2026-12-08");
    ines.open(&second).await.press("Move it").await.fill("To which day", "10 Dec 2026");
    ines.fill("At which time", "9:30 am").press("Save").await.answers(200);
    ines.sees("Thu 10 Dec 2026, 9:30 am").sees("it would have been on Tue 8 Dec 2026");
    bram.open(&family.at("/appointments/1/on/2026-12-15")).await.press("I will go along").await;
    bram.press("I will go along").await.answers(200).sees("Bram goes along");
    ines.open(&family.at("/appointments/1/on/2026-12-22")).await.press("Cancel this one").await;
    ines.fill("Why", "the therapist is away").press("Cancel this one").await.answers(200);
    ines.open(&family.at("/appointments")).await.sees("Thu 10 Dec 2026").sees("moved");
    ines.sees("Bram goes along").sees("cancelled: the therapist is away").sees("Tue 29 Dec 2026");
    // The whole series goes to Thursdays.
    ines.open(&family.at("/appointments/1")).await.press("Edit the whole series").await;
    ines.fill("Day", "3 Dec 2026").untick("Tuesday").press("Save").await.answers(200);
    ines.sees("every week on Thursday").sees("the series no longer has this day");
    ines.open(&family.at("/appointments")).await.sees("To be decided 2");
    ines.open(&family.at("/today"))
        .await
        .sees("Its series no longer has this day: Physical therapy");
    ines.open(&second).await.press("Keep it or let it go").await.press("Save").await.answers(422);
    ines.tick("keep it: it takes place").press("Save").await.answers(200).sees("beside the series");
    ines.open(&family.at("/appointments/1/on/2026-12-15/settle")).await;
    ines.tick("let it go: it does not take place").press("Save").await.answers(200);
    ines.open(&family.at("/appointments")).await.does_not_see("To be decided");
    ines.sees("9:30 am").does_not_see("Bram goes along");
    ines.open(&family.at("/history"))
        .await
        .sees("Ines moved Physical therapy, Tue 8 Dec 2026 to 10 December 2026, 9:30 am");
    ines.sees("Bram will go along to Physical therapy, Tue 15 Dec 2026");
    ines.sees(
        "Ines cancelled Physical therapy, Tue 22 Dec 2026 with the reason: the therapist is away",
    );
    ines.sees("Ines booked Physical therapy for 1 December 2026, 2 pm, every week on Tuesday");
    family.house.is_sound().await;
}

#[tokio::test]
async fn this_one_and_all_later_ones_go_on_as_another_series() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    therapy(&mut ines, &family).await;
    ines.open(&family.at("/appointments/1/on/2026-12-01")).await;
    ines.does_not_see("This one and all later ones");
    ines.open(&family.at("/appointments/1/on/2026-12-15")).await;
    ines.press("This one and all later ones").await.sees("The series ends before Tue 15 Dec 2026");
    ines.fill("Time", "4 pm").press("Save").await.answers(200);
    ines.sees("Tue 15 Dec 2026, 4:00 pm").sees("goes on with");
    ines.open(&family.at("/appointments/1"))
        .await
        .sees("until 8 December 2026")
        .sees("followed by");
    ines.open(&family.at("/appointments")).await.sees("2:00 pm").sees("4:00 pm");
    ines.open(&family.at("/appointments/1/on/2026-12-15")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_31st_and_the_last_day_of_the_month_say_what_they_are() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments/add")).await.sees("that month is left out");
    ines.fill("What it is", "Blood test").fill("Day", "31 Jan 2027").fill("Time", "8 am");
    ines.tick("every so many months")
        .tick("after so many times")
        .press("Keep this appointment")
        .await;
    ines.answers(422).sees("Write how many times, like 8.").fill("After how many times", "4");
    ines.press("Keep this appointment").await.answers(200).sees("Months without a 31st have none");
    ines.sees("Wed 31 Mar 2027").does_not_see("Feb 2027").sees("Sat 31 Jul 2027");
    ines.press("Edit the whole series").await;
    ines.fill("By months: which day", "on the last day of the month")
        .press("Save")
        .await
        .answers(200);
    ines.sees("every month on the last day, 4 times")
        .sees("Sun 28 Feb 2027")
        .does_not_see("Months without");
    ines.open(&family.at("/appointments?from=2027-02-20"))
        .await
        .sees("Blood test")
        .sees("From today on");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_time_that_does_not_come_is_kept_and_said_in_words() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Sleep laboratory");
    ines.fill("Day", "14 Mar 2027").fill("Time", "2:30 am").press("Keep this appointment").await;
    ines.answers(200).sees("the clocks there go from 2 am to 3 am: 2:30 am does not come");
    ines.sees("Sun 14 Mar 2027, 3:30 am");
    ines.open(&family.at("/appointments/1")).await.press("Move it").await;
    ines.fill("To which day", "7 Nov 2027").fill("At which time", "1:30 am").press("Save").await;
    ines.answers(200).sees("1:30 am comes twice").sees("Sun 7 Nov 2027, 1:30 am");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_was_booked_keeps_its_moment_when_the_person_moves_to_another_zone() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    therapy(&mut ines, &family).await;
    ines.open(&family.at("/edit")).await.fill("Time zone", "America/New_York");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/appointments"))
        .await
        .sees("written when the clocks of another zone counted");
    ines.sees("3:00 pm New York").sees("written in the earlier zone: 2:00 pm in Chicago");
    // The moment is the same for Bram, who has not moved.
    bram.open(&family.at("/appointments/1/on/2026-12-01")).await.sees("12:00 pm for you");
    ines.open(&family.at("/appointments/1/edit")).await.fill("On whose clocks", "America/New_York");
    ines.press("Save").await.answers(200).sees("2:00 pm New York").does_not_see("earlier zone");
    family.house.is_sound().await;
}

#[tokio::test]
async fn after_a_death_nothing_of_the_calendar_reminds() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    therapy(&mut ines, &family).await;
    ines.open(&family.at("/today")).await.sees("Nobody goes along yet").sees("Physical therapy");
    ines.open(&family.at("/died")).await.fill("Died on", "24 Nov 2026");
    ines.fill("Who told you", "the hospice nurse")
        .press("Go on")
        .await
        .press("Yes, enter it")
        .await;
    ines.open(&family.at("/today"))
        .await
        .does_not_see("Physical therapy")
        .does_not_see("seven days");
    ines.open(&family.at("/appointments")).await.sees("Nothing here reminds anyone");
    family.house.is_sound().await;
}
