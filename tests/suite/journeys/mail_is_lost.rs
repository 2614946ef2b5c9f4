//! Mail that does not arrive: an address that refuses, a server that is busy, breaks off or is not
//! there. What can be tried again is; what is lost is shown to those who can do something.

use crate::support::{
    Family,
    smtp::{MailServer, Step},
};
use std::net::TcpListener;
use time::Duration;

#[tokio::test]
async fn an_address_that_refuses_is_given_up_at_once_and_shown() {
    let family = Family::with_a_supply_running_out().await;
    family.house.pass(Duration::hours(2));
    family.house.remind().await;
    let refuses = |step, whom: &str, _| match (step, whom) {
        (Step::Recipient, "bram@example.org") => Some("550 5.1.1 No such mailbox here"),
        _ => Some("250 2.0.0 Taken"),
    };
    let server = MailServer::scripted(refuses).await;
    family.house.carry(&server).await;
    let states = family.house.states().await;
    assert_eq!(states, [("given up".to_owned(), 1), ("sent".to_owned(), 2)].into());

    let mut ines = family.browser("Ines").await;
    let says = "Mail to bram@example.org did not arrive";
    ines.open(&family.at("/today")).await.sees(says).press(says).await;
    ines.sees("Bram").sees("the answer: 550 5.1.1 No such mailbox here").sees("it may say");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.does_not_see(says);
    bram.open(&family.at("/reminders")).await.answers(403);
    bram.open("/me/mail")
        .await
        .sees("Mail to you that did not arrive")
        .sees("No such mailbox here");
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/reminders")).await.answers(404);
    // The steward hears of it by mail once a day, and nobody hears of lost mail of that kind.
    family.house.remind().await;
    family.house.remind().await;
    let told = family.house.mails().await.into_iter().filter(|it| it.kind == "trouble");
    let told: Vec<_> = told.map(|it| (it.recipient, it.subject, it.body)).collect();
    let [(to, subject, body)] = &told[..] else { panic!("one mail: {told:?}") };
    assert_eq!(
        (to.as_str(), subject.as_str()),
        ("ines@example.org", "Ottoline: mail to a member did not arrive")
    );
    assert!(!body.contains("bram") && body.contains("/p/1/reminders"), "{body}");
    let refuses = MailServer::scripted(|_, _, _| Some("554 5.7.1 Not wanted")).await;
    family.house.carry(&refuses).await;
    family.house.pass(Duration::days(1));
    family.house.remind().await;
    let told = family.house.mails().await.into_iter().filter(|it| it.kind == "trouble").count();
    assert_eq!(told, 1);
    // Once mail reaches the address again, the page is quiet.
    family.runs_out("Furosemide", 2).await;
    family.house.remind().await;
    family.house.carry(&MailServer::kind().await).await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.does_not_see(says);
    ines.open(&family.at("/reminders")).await.sees("mail to this address was taken since");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_busy_server_is_asked_again_and_the_message_is_the_same() {
    let family = Family::with_a_supply_running_out().await;
    family.house.remind().await;
    let ids: Vec<_> = family.house.mails().await.into_iter().map(|it| it.message_id).collect();
    // Each step says no once: the sender, the recipient, the whole message.
    let server = MailServer::scripted(|step, _, before| match (step, before) {
        (Step::Mail, 0 | 1) | (_, 0) => Some("451 4.3.2 Try again later"),
        _ => Some("250 Taken"),
    });
    let server = server.await;
    assert_eq!(family.house.carry(&server).await, 2);
    for (minutes, tries) in [(1, 2), (2, 3), (4, 4)] {
        family.house.pass(Duration::minutes(minutes) - Duration::seconds(1));
        assert_eq!(family.house.carry(&server).await, 0, "{minutes}");
        family.house.pass(Duration::seconds(1));
        family.house.carry(&server).await;
        let mails = family.house.mails().await;
        assert!(mails.iter().all(|it| it.tries == tries), "{minutes}: {mails:?}");
    }
    assert_eq!(family.house.states().await, [("sent".to_owned(), 2)].into());
    for id in ids {
        assert!(server.ids().contains(&format!("Message-ID: <{id}>")));
    }
}

#[tokio::test]
async fn a_server_that_is_not_there_is_tried_for_three_days() {
    let family = Family::with_a_supply_running_out().await;
    family.house.remind().await;
    let closed = TcpListener::bind("127.0.0.1:0").expect("a port").local_addr().expect("one");
    let url = format!("smtp://ines:rosin-and-glue@{closed}");
    for _ in 0..200 {
        family.house.carry_to(&url).await;
        if !family.house.states().await.contains_key("waiting") {
            break;
        }
        family.house.pass(Duration::minutes(30));
    }
    assert_eq!(family.house.states().await, [("given up".to_owned(), 2)].into());
    for it in family.house.mails().await {
        let trouble = it.trouble.expect("words");
        assert!(trouble.contains("onnect") && !trouble.contains("rosin"), "{trouble}");
    }
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("Mail to ottoline@example.org did not arrive");
}

#[tokio::test]
async fn without_a_server_mail_lies_as_files_and_today_says_so() {
    let family = Family::with_a_supply_running_out().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("Mail does not leave: no mail server is set.");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.does_not_see("no mail server is set");
    family.house.remind().await;
    family.house.lay_down().await;
    let files: Vec<_> =
        std::fs::read_dir(family.house.folder().join("mail")).expect("a folder").collect();
    assert_eq!(files.len(), 2);
    for file in files {
        let text = std::fs::read_to_string(file.expect("a file").path()).expect("a message");
        assert!(text.contains("Auto-Submitted: auto-generated") && !text.contains("Warfarin"));
    }
    assert_eq!(family.house.states().await, [("sent".to_owned(), 2)].into());
    // A test mail by the button: into a file as well, and only for who decides.
    ines.open("/me/mail").await.press("Send yourself a test mail").await.press("Send it").await;
    ines.answers(200).sees("The test mail was handed over. The answer: laid into the folder mail");
    bram.open("/me/mail").await.does_not_see("test mail");
    bram.open("/me/mail/test").await.answers(403);
    family.house.is_sound().await;
}
