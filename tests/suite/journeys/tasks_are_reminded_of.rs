//! A task is reminded of on the day it is due, and once when that day is past: the one who has it, and
//! for those who look after the board also what nobody has taken.

use crate::support::{Browser, Family};
use time::Duration;

async fn added(family: &Family, what: &str, due: &str) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/tasks/add"))
        .await
        .fill("What is to be done", what)
        .fill("By which day", due);
    ines.press("Keep the task").await.answers(200);
    ines
}

async fn written(family: &Family, after: usize) -> Vec<(String, String)> {
    let all = family.house.mails().await.into_iter().filter(|it| it.kind == "task");
    let name = |it: &str| it.split('@').next().expect("a name").to_owned();
    all.skip(after).map(|it| (name(&it.recipient), it.subject)).collect()
}

fn mail(name: &str, subject: &str) -> (String, String) {
    (name.to_owned(), subject.to_owned())
}

#[tokio::test]
async fn what_nobody_has_taken_is_told_to_the_steward_and_what_is_hers_to_each() {
    let family = Family::new().await;
    family.house.remind().await;
    added(&family, "Renew the parking placard", "27 Nov 2026").await;
    family.house.pass(Duration::days(1));
    assert_eq!(family.house.remind().await, 0, "it is not due yet");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/tasks/1/take")).await.press("I take it").await.answers(200);
    added(&family, "Return the walker", "27 Nov 2026").await;
    // Friday, ten in Duluth and eight in Portland: what is about a day comes at nine of each clock.
    family.house.pass(Duration::days(1) + Duration::minutes(48));
    family.house.remind().await;
    let due = "Ottoline: a task is due on Fri 27 Nov 2026";
    assert_eq!(written(&family, 0).await, [mail("ines", due)]);
    family.house.pass(Duration::hours(1));
    family.house.remind().await;
    assert_eq!(written(&family, 1).await, [mail("bram", due)]);
    let bodies: Vec<_> = family.house.mails().await.into_iter().map(|it| it.body).collect();
    assert!(bodies.iter().all(|it| !it.contains("placard") && !it.contains("walker")));
    // With names, and the day is past: each once more, and then not again.
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/mail")).await;
    ines.tick("Also the titles of appointments and tasks, and the names of clinicians");
    ines.press("Save").await.answers(200);
    family.house.pass(Duration::days(1));
    family.house.remind().await;
    let walker = "Ottoline: Return the walker was due on Fri 27 Nov 2026";
    let placard = "Ottoline: Renew the parking placard was due on Fri 27 Nov 2026";
    assert_eq!(written(&family, 2).await, [mail("ines", walker), mail("bram", placard)]);
    for _ in 0..3 {
        family.house.pass(Duration::days(1));
        family.house.remind().await;
    }
    assert_eq!(written(&family, 4).await, []);
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_stops_them_gets_none_and_a_title_with_a_medicine_is_not_said() {
    let family = Family::with_a_supply_running_out().await;
    added(&family, "Refill the Warfarin", "25 Nov 2026").await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/mail")).await;
    ines.tick("Also the titles of appointments and tasks, and the names of clinicians");
    ines.press("Save").await.answers(200);
    family.house.remind().await;
    let due = "Ottoline: a task is due on Wed 25 Nov 2026";
    assert_eq!(written(&family, 0).await, [mail("ines", due)]);
    ines.open("/me/mail/1").await.tick("no task").press("Save").await.answers(200);
    added(&family, "Return the walker", "25 Nov 2026").await;
    family.house.remind().await;
    assert_eq!(written(&family, 1).await, []);
    let waits = family.house.mails().await.into_iter().filter(|it| it.kind == "task");
    assert!(waits.into_iter().all(|it| it.state == "withdrawn"));
}
