//! An appointment is reminded of so long before as each member chose, on her own clock and outside her
//! quiet hours; what it is stands in the mail only where the record allows names. It is Wednesday 25
//! November 2026, 9:12 am in Duluth.

use crate::support::{Browser, Family, mail::Mail};
use time::Duration;

async fn booked(family: &Family, what: &str, day: &str, time: &str) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments/add")).await.fill("What it is", what);
    ines.fill("Or a name", "Lakehead Eye Clinic").fill("Day", day).fill("Time", time);
    ines.fill("Who goes along", "member/3").press("Keep this appointment").await.answers(200);
    ines
}

async fn names_are_allowed(family: &Family) {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/mail")).await;
    ines.tick("Also the titles of appointments and tasks, and the names of clinicians");
    ines.press("Save").await.answers(200);
}

/// What was written about appointments since so many were: to whom, and the subject.
async fn written(family: &Family, after: usize) -> Vec<(String, String)> {
    let all = family.house.mails().await.into_iter().filter(|it| it.kind == "appointment");
    let short = |it: Mail| {
        let name = it.recipient.split('@').next().expect("a name").to_owned();
        (name, it.subject)
    };
    all.skip(after).map(short).collect()
}

fn mail(name: &str, subject: &str) -> (String, String) {
    (name.to_owned(), subject.to_owned())
}

/// Goes on to so long after the beginning, looking each half hour as the house does each minute.
async fn goes_on(family: &Family, by: Duration) {
    let end = family.house.now().plus(by);
    while family.house.now() < end {
        family.house.pass(Duration::minutes(30).min(end.since(family.house.now())));
        family.house.remind().await;
    }
}

#[tokio::test]
async fn each_hears_in_time_and_on_her_own_clock() {
    let family = Family::new().await;
    family.house.remind().await;
    booked(&family, "Eye test", "3 Dec 2026", "9:30 am").await;
    // Seven days before: 9:30 on Thursday. For Bram it is half past seven then, and quiet till eight.
    goes_on(&family, Duration::hours(24) + Duration::minutes(18)).await;
    let subject = "Ottoline: an appointment, Thu 3 Dec 2026, 9:30 am";
    assert_eq!(written(&family, 0).await, [mail("ottoline", subject), mail("ines", subject)]);
    goes_on(&family, Duration::minutes(30)).await;
    let own = "Ottoline: an appointment, Thu 3 Dec 2026, 7:30 am";
    assert_eq!(written(&family, 2).await, [mail("bram", own)]);
    let bodies: Vec<_> = family.house.mails().await.into_iter().map(|it| it.body).collect();
    assert!(!bodies.iter().any(|it| it.contains("Eye") || it.contains("Lakehead")), "{bodies:?}");
    assert!(bodies[2].contains("9:30 am, Chicago time\nThu 3 Dec 2026, 7:30 am for you"));
    assert!(bodies[2].contains("/p/1/appointments/1/on/2026-12-03"), "{}", bodies[2]);

    // With names from now on; one day before.
    names_are_allowed(&family).await;
    goes_on(&family, Duration::days(6)).await;
    let named = "Ottoline: Eye test with Lakehead Eye Clinic, tomorrow, 9:30 am";
    let early = "Ottoline: Eye test with Lakehead Eye Clinic, tomorrow, 7:30 am";
    let all = [mail("ottoline", named), mail("ines", named), mail("bram", early)];
    assert_eq!(written(&family, 3).await, all);
    // Two hours before is quiet. In Duluth it goes at eight, an hour and a half before; in Portland
    // it would be over at eight, so it goes before nine the evening before.
    goes_on(&family, Duration::hours(14)).await;
    assert_eq!(written(&family, 6).await, [mail("bram", early)]);
    goes_on(&family, Duration::hours(9)).await;
    let today = "Ottoline: Eye test with Lakehead Eye Clinic, today, 9:30 am";
    assert_eq!(written(&family, 7).await, [mail("ottoline", today), mail("ines", today)]);
    goes_on(&family, Duration::hours(6)).await;
    assert_eq!(written(&family, 9).await, []);
    family.house.is_sound().await;
}

#[tokio::test]
async fn one_that_is_near_is_reminded_of_once_and_what_is_over_or_called_off_is_not() {
    let family = Family::new().await;
    family.house.remind().await;
    // In two days: of "seven days before" nothing goes.
    booked(&family, "Eye test", "27 Nov 2026", "2 pm").await;
    goes_on(&family, Duration::hours(3)).await;
    assert_eq!(written(&family, 0).await, []);
    // The server is off over "one day" and "two hours before": the nearest goes, and only that.
    family.house.pass(Duration::hours(48));
    family.house.remind().await;
    assert_eq!(written(&family, 0).await.len(), 3);
    let all = family.house.mails().await;
    assert!(all.iter().all(|it| it.occurrence.ends_with(" 2 hours before")), "{all:?}");
    family.house.pass(Duration::hours(3));
    assert_eq!(family.house.remind().await, 0, "it is over");
    // Another is called off after its first reminder.
    booked(&family, "Foot care", "5 Dec 2026", "2 pm").await;
    goes_on(&family, Duration::days(2)).await;
    assert_eq!(written(&family, 3).await.len(), 3);
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/appointments/2")).await.press("Cancel").await;
    ines.fill("Why", "the clinic called it off").press("Cancel this one").await.answers(200);
    goes_on(&family, Duration::days(6)).await;
    assert_eq!(written(&family, 6).await, []);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_title_that_names_a_medicine_is_not_said() {
    let family = Family::with_a_supply_running_out().await;
    booked(&family, "Warfarin clinic", "26 Nov 2026", "2 pm").await;
    names_are_allowed(&family).await;
    family.house.remind().await;
    goes_on(&family, Duration::hours(6)).await;
    let subjects = written(&family, 0).await;
    let plain = mail("ines", "Ottoline: an appointment, tomorrow, 2:00 pm");
    assert!(subjects.contains(&plain), "{subjects:?}");
    assert!(!family.house.mails().await.iter().any(|it| it.body.contains("Warfarin")));
}

#[tokio::test]
async fn a_hidden_appointment_reminds_nobody_from_whom_it_is_hidden() {
    let family = Family::new().await;
    family.house.remind().await;
    let mut ines = booked(&family, "Eye test", "26 Nov 2026", "2 pm").await;
    ines.open(&family.at("/visibility/appointment/1")).await.tick("Bram").press("Save").await;
    goes_on(&family, Duration::hours(8)).await;
    let names: Vec<_> = written(&family, 0).await.into_iter().map(|it| it.0).collect();
    assert_eq!(names, ["ottoline", "ines"]);
}
