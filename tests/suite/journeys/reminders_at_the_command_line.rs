//! The one who runs the server looks what would be mailed to whom and why, puts it into the outbox, and
//! sends a test mail.

use crate::support::{
    Family,
    server::{ran, said},
};
use std::fs;

#[tokio::test]
async fn what_would_be_mailed_is_printed_and_then_written() {
    let family = Family::with_a_supply_running_out().await;
    let folder = family.house.folder().display().to_string();
    let settings = [("KINSHEAF_DATA", folder.as_str())];
    let at = "2026-11-25T17:00:00Z";
    let dry = said(&ran(&["remind", "--at", at, "--dry-run"], &settings));
    assert!(
        dry.contains("3 reminders would go at 2026-11-25T17:00:00Z. Nothing was written."),
        "{dry}"
    );
    let line = "Bram <bram@example.org>: Ottoline: a supply needs attention. Why: a supply is near its day to act.";
    assert!(dry.contains(line) && !dry.contains("Warfarin"), "{dry}");
    assert!(family.house.mails().await.is_empty());
    let run = said(&ran(&["remind", "--at", at], &settings));
    assert!(run.contains("3 reminders put into the outbox"), "{run}");
    let lines = |text: &str| {
        text.lines().filter(|it| it.contains(" <")).map(str::to_owned).collect::<Vec<_>>()
    };
    assert_eq!(lines(&dry), lines(&run), "a dry run says what a run does");
    assert_eq!(family.house.mails().await.len(), 3);
    let again = said(&ran(&["remind", "--at", at], &settings));
    assert!(again.contains("0 reminders put"), "{again}");
    let wrong = ran(&["remind", "--at", "tomorrow"], &settings);
    assert!(!wrong.status.success() && said(&wrong).contains("--at takes a moment"));
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_test_mail_says_where_it_went() {
    let family = Family::new().await;
    let folder = family.house.folder();
    let data = folder.display().to_string();
    let run = ran(&["mail", "test", "ines@example.org"], &[("KINSHEAF_DATA", &data)]);
    let words = said(&run);
    assert!(run.status.success() && words.contains("No mail server is set"), "{words}");
    assert!(words.contains("laid into the folder mail as"), "{words}");
    let file = fs::read_dir(folder.join("mail")).expect("a folder").next().expect("a file");
    let text = fs::read_to_string(file.expect("a file").path()).expect("a message");
    assert!(text.contains("To: ines@example.org") && text.contains("test mail"), "{text}");
    let wrong = ran(&["mail", "test", "ines at example"], &[("KINSHEAF_DATA", &data)]);
    assert!(!wrong.status.success() && said(&wrong).contains("That is not an e-mail address."));
}
