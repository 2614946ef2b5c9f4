//! What is mailed to whom is each member's own choice: on her page, or by the link in a mail. What
//! mail may say is the record's.

use crate::support::{Browser, Family, html, smtp::MailServer};
use sqlx::Row;
use time::Duration;

/// The link of a reminder that stops its kind, without the host.
async fn stop_link(family: &Family, whose: &str) -> String {
    let mails = family.house.mails().await;
    let mail = mails.iter().find(|it| it.recipient.starts_with(whose)).expect("a mail");
    let link = mail.stop_link.clone().expect("a link");
    assert!(mail.body.contains(&link) && mail.html.as_ref().is_some_and(|it| it.contains(&link)));
    link.strip_prefix("http://127.0.0.1:8317").expect("our address").to_owned()
}

#[tokio::test]
async fn each_rule_stands_in_words_and_is_changed() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open("/me").await.press("What is mailed to you").await.answers(200);
    ines.sees("Every appointment, 7 days, 1 day and 2 hours before.");
    ines.sees("Your tasks, and those that nobody has taken")
        .sees("Every Monday, if anything is new");
    ines.sees("No mail from 9:00 pm to 8:00 am on your clock");
    ines.sees("This is what is usual for a steward");
    ines.open("/me/mail/1").await.tick("no task").tick("never").untick("1 day before");
    ines.untick("When a supply needs attention").fill("Another, in hours", "36");
    ines.press("Save").await.answers(200).sees("Saved what is mailed to you about Ottoline Varga");
    ines.sees("Every appointment, 7 days, 36 hours and 2 hours before.");
    ines.sees("Nothing about tasks that are due.")
        .sees("Nothing about supplies that need attention");
    ines.does_not_see("This is what is usual");
    // The form shows what was chosen.
    ines.open("/me/mail/1").await;
    assert_eq!(ines.value("Another, in hours"), "36");
    for (field, typed) in [("Another, in hours", "0"), ("Another, in hours", "two")] {
        ines.fill(field, typed).press("Save").await.answers(422);
        ines.sees("Enter whole hours from 1 to 720.");
        assert_eq!(ines.value(field), typed);
    }
    // Appointments without a time before them are none.
    ines.open("/me/mail/1").await.fill("Another, in hours", "").untick("7 days before");
    ines.untick("2 hours before").press("Save").await.answers(422);
    ines.sees("Choose at least one of these, or no appointment.");
    // A relative is offered what her place reaches, and what others chose is hers alone.
    let mut bram = family.browser("Bram").await;
    bram.open("/me/mail").await.sees("The appointments you go along to, 7 days");
    bram.open("/me/mail/1").await.does_not_see("Mail that did not arrive");
    bram.open(&family.at("/history")).await.does_not_see("mail about");
    let mut delia = family.browser("Delia").await;
    delia.open("/me/mail/1").await.answers(200).does_not_see("since I last confirmed");
    delia.open("/me/mail/2").await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn quiet_hours_are_hers_and_hold() {
    let family = Family::with_a_supply_running_out().await;
    let mut ines = family.browser("Ines").await;
    ines.open("/me/mail/quiet").await;
    assert_eq!(
        (ines.value("Quiet from"), ines.value("Quiet until")),
        ("21:00".into(), "08:00".into())
    );
    ines.fill("Quiet until", "half past").press("Save").await.answers(422);
    ines.sees("Enter a time, like 21:00 or 9 pm.");
    // From nine in the evening to eleven in the morning: it is 9:12.
    ines.fill("Quiet until", "11 am").press("Save").await.answers(200);
    ines.sees("No mail from 9:00 pm to 11:00 am on your clock");
    let to_ines = async || {
        let mails = family.house.mails().await;
        mails.iter().filter(|it| it.recipient == "ines@example.org").count()
    };
    family.house.remind().await;
    assert_eq!(to_ines().await, 0);
    family.house.pass(Duration::minutes(108));
    family.house.remind().await;
    assert_eq!(to_ines().await, 1, "at eleven they end");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_link_stops_one_kind_by_a_button_and_without_a_sign_in() {
    let family = Family::with_a_supply_running_out().await;
    family.house.remind().await;
    let link = stop_link(&family, "ines").await;
    // Not the token is kept, but its SHA-256.
    let mut db = family.house.outside().await;
    let kept: String = sqlx::query("select group_concat(stop_token) from outbox")
        .fetch_one(&mut db)
        .await
        .expect("tokens")
        .get(0);
    assert!(!kept.contains(link.rsplit('/').next().expect("a token")));

    let mut anyone = Browser::new(&family.house.app);
    anyone.open(&link).await.answers(200).sees("Stop mail about supplies that need attention?");
    anyone.sees("from the record of Ottoline").does_not_see("Varga").does_not_see("Warfarin");
    let waiting = family.house.states().await;
    assert_eq!(waiting, [("waiting".to_owned(), 2)].into(), "opening a link changes nothing");
    anyone.press("Stop such mail").await.answers(200).sees("Such mail has stopped");
    anyone.sees("You get no more mail about supplies that need attention");
    let server = MailServer::kind().await;
    family.house.carry(&server).await;
    let reached: Vec<_> = server.taken().into_iter().map(|it| it.0).collect();
    assert_eq!(reached, ["ottoline@example.org"], "what waited was taken back");
    // The other kinds go on, and she turns this one on again by herself.
    let mut ines = family.browser("Ines").await;
    ines.open("/me/mail").await.sees("Nothing about supplies that need attention.");
    ines.sees("Every appointment, 7 days").open("/me/mail/1").await;
    ines.tick("When a supply needs attention").press("Save").await.answers(200);
    ines.sees("When a supply needs attention: three days before");
    anyone.open(&link).await.sees("Stop mail about supplies that need attention?");
    for unknown in ["/mail/stop/0000", "/mail/stop/%00", "/mail/stop/x"] {
        anyone.open(unknown).await;
        assert!(matches!(anyone.status.as_u16(), 404 | 410), "{unknown}: {}", anyone.status);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_mail_program_stops_it_with_one_press() {
    let family = Family::with_a_supply_running_out().await;
    family.house.remind().await;
    let link = stop_link(&family, "ines").await;
    let mut program = Browser::new(&family.house.app);
    let press = [("List-Unsubscribe".to_owned(), "One-Click".to_owned())];
    // Answered at the same address, and the same again the second time (RFC 8058, section 3.1).
    for _ in 0..2 {
        program.send(&link, &press).await.answers(200);
        assert_eq!(String::from_utf8_lossy(&program.body), "Such mail has stopped.\n");
    }
    let mut ines = family.browser("Ines").await;
    ines.open("/me/mail").await.sees("Nothing about supplies that need attention.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_mail_may_say_is_decided_by_the_person_or_a_steward() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("")).await.sees("what kind of thing, and when; no names");
    ines.press("What mail may say").await.answers(200);
    ines.tick("Also the titles of appointments and tasks, and the names of clinicians");
    ines.press("Save").await.answers(200).sees("titles and names of clinicians as well");
    ines.open(&family.at("/history")).await.sees("what mail may say");
    // Edited otherwise, it stays.
    ines.open(&family.at("/edit")).await.fill("Language", "Hungarian").press("Save").await;
    ines.open(&family.at("")).await.sees("titles and names of clinicians as well");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/mail")).await.answers(403);
    let page = bram.open(&family.at("")).await.page();
    let links = html::select(&page, "a").into_iter().map(html::text);
    assert!(!links.into_iter().any(|it| it.contains("What mail may say")));
    family.house.is_sound().await;
}

#[tokio::test]
async fn how_much_is_new_is_told_on_monday_and_nothing_of_what() {
    let family = Family::new().await;
    for name in ["Ottoline", "Ines", "Bram"] {
        let mut reader = family.browser(name).await;
        reader.open(&family.at("/today")).await.press("I have read this").await.answers(200);
    }
    let mut ines = family.browser("Ines").await;
    for name in ["Warfarin", "Furosemide"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200);
    }
    assert_eq!(family.house.remind().await, 0, "it is Wednesday");
    // Monday 30 November, 9:12 in Duluth and 7:12 in Portland.
    family.house.pass(Duration::days(5));
    assert_eq!(family.house.remind().await, 1);
    family.house.pass(Duration::hours(2));
    assert_eq!(family.house.remind().await, 1);
    let mails = family.house.mails().await;
    let told: Vec<_> =
        mails.iter().map(|it| (it.recipient.as_str(), it.subject.as_str())).collect();
    let new = "Ottoline: 2 things are new";
    assert_eq!(told, [("ottoline@example.org", new), ("bram@example.org", new)]);
    assert!(!mails.iter().any(|it| it.body.contains("Warfarin")));
    // Nothing new since: no second mail, though it was not read.
    family.house.pass(Duration::days(7));
    assert_eq!(family.house.remind().await, 0);
    // She reads, and hears of what comes after that only.
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.press("I have read this").await.answers(200);
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Runa").fill("Phone", "218-555-0101");
    ines.press("Add this contact").await.answers(200);
    family.house.pass(Duration::days(7));
    family.house.remind().await;
    let mails = family.house.mails().await;
    let last = mails.iter().rfind(|it| it.recipient == "bram@example.org").expect("a mail");
    assert_eq!(last.subject, "Ottoline: 1 thing is new");
    family.house.is_sound().await;
}
