//! What has a last day is listed by the latest day to begin: the family's own entries, prescriptions, the
//! windows of Medicare. It stands on Today and is mailed a week before that day and on it, each once,
//! without saying what it is; someone renews it, it is renewed, or it is let lapse with a reason.

use crate::support::{Browser, Family, family::address};
use time::Duration;

/// A license whose issuer needs six weeks and whose form takes five working days: to begin on
/// Friday 27 November 2026 (15 January 2027 less 42 days is Friday 4 December; the five working
/// days before it leave out the weekend and Thanksgiving Day).
async fn license(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/renewals")).await.sees("What has a last day belongs here");
    ines.press("Write something down").await.press("Write it down").await.answers(422);
    ines.sees("Enter what it is, like passport.").fill("What it is", "Her driving card");
    ines.fill("Its last day", "15 Jan 2027").fill("What kind of thing", "driver’s license");
    ines.fill("Days the issuer needs", "soon").press("Write it down").await.answers(422);
    ines.sees("Enter a whole number from 0 to 730").fill("Days the issuer needs", "42");
    ines.fill("Working days for the form", "5").press("Write it down").await.answers(200);
    ines
}

async fn mailed(family: &Family, name: &str) -> Vec<String> {
    let all = family.house.mails().await.into_iter().filter(|it| it.kind == "renewal");
    all.filter(|it| it.recipient == address(name)).map(|it| it.occurrence).collect()
}

#[tokio::test]
async fn a_license_stands_on_today_a_week_before_the_day_to_begin_until_someone_renews_it() {
    let family = Family::new().await;
    let mut ines = license(&family).await;
    ines.sees("42 days for the issuer: there by Fri 4 Dec 2026");
    ines.sees("5 working days for the form: begin by Fri 27 Nov 2026");
    ines.sees("differs by state").sees("the issuer says, as of");
    // Wednesday the 25th is within a week of it.
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await;
    bram.press("To be renewed: Her driving card: begin by Fri 27 Nov 2026").await.answers(200);
    bram.press("It is being renewed").await.fill("Since", "26 Nov 2026");
    bram.press("It is being renewed").await.answers(422).sees("This day has not come yet.");
    bram.fill("Since", "25 Nov 2026").fill("Who renews it", "3");
    bram.press("It is being renewed").await.answers(200).sees("Bram renews it, since 25 November");
    bram.open(&family.at("/today")).await.does_not_see("Her driving card:");
    ines.open(&family.at("/history")).await.sees("Bram renews Her driving card since 25 November");
    // Nobody without leave to change papers renews it.
    ines.open(&family.at("/renewals/own/1/begin")).await;
    let (_, to, mut form) = ines.pressed("It is being renewed");
    form.iter_mut().filter(|it| it.0 == "renewer_id").for_each(|it| it.1 = "4".into());
    ines.send(&to, &form).await.answers(422).sees("Choose who renews it.");
    // Past its last day it needs someone again, with who has it.
    family.house.pass(Duration::days(60));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/today")).await.sees("its last day was Fri 15 Jan 2027 (Bram renews it)");
    ines.open(&family.at("/renewals/own/1")).await.press("It is renewed").await;
    ines.fill("It holds until", "15 Jan 2027").press("It is renewed").await.answers(422);
    ines.sees("This is not after the last day").fill("It holds until", "9 Mar 2035");
    ines.press("It is renewed").await.answers(200).sees("9 March 2035").does_not_see("Bram renews");
    ines.open(&family.at("/today")).await.does_not_see("Her driving card:");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_mailed_a_week_before_and_on_the_day_each_once_and_says_nothing_of_what() {
    let family = Family::new().await;
    license(&family).await;
    family.house.pass(Duration::hours(2));
    let would = family.house.would_remind().await;
    let line = "Ines <ines@example.org>: Ottoline: a paper is to be renewed. Why: the latest day to begin renewing a paper is near.";
    assert!(would.iter().any(|it| it == line), "{would:?}");
    assert_eq!(family.house.remind().await, 3, "Ottoline, Ines and Bram, and nobody else");
    assert_eq!(mailed(&family, "Ines").await, ["2027-01-15, a week before"]);
    for mail in family.house.mails().await {
        for word in ["driving", "license", "Varga"] {
            assert!(!mail.subject.contains(word) && !mail.body.contains(word), "{}", mail.body);
        }
    }
    // Another time for the form moves the day, and mails nothing again.
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/renewals/own/1/edit")).await.fill("Working days for the form", "3");
    ines.press("Save").await.answers(200).sees("begin by Tue 1 Dec 2026");
    assert_eq!(family.house.remind().await, 0);
    for span in [Duration::days(-3), Duration::days(4), Duration::days(5), Duration::days(3)] {
        family.house.pass(span);
        family.house.remind().await;
    }
    let both = ["2027-01-15, a week before", "2027-01-15, on the day"];
    assert_eq!(mailed(&family, "Ines").await, both);
    assert!(
        mailed(&family, "Delia").await.is_empty() && mailed(&family, "Rosalind").await.is_empty()
    );
    family.house.is_sound().await;
}

#[tokio::test]
async fn whoever_chose_none_or_has_it_renewed_is_not_mailed() {
    let family = Family::new().await;
    let mut ines = license(&family).await;
    ines.open("/me/mail/1").await.untick("When a paper is to be renewed").press("Save").await;
    ines.answers(200).sees("Nothing about papers that are to be renewed.");
    let mut bram = family.browser("Bram").await;
    bram.open("/me/mail").await.sees("When a paper is to be renewed: a week before");
    bram.open(&family.at("/renewals/own/1/begin")).await.press("It is being renewed").await;
    bram.answers(200);
    family.house.pass(Duration::days(3) + Duration::hours(2));
    assert_eq!(family.house.remind().await, 0);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/renewals/own/1")).await.press("It stands again").await;
    bram.press("It stands again").await.answers(200);
    assert_eq!(family.house.remind().await, 2, "Ottoline and Bram");
    assert!(mailed(&family, "Ines").await.is_empty());
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_prescription_and_a_window_of_medicare_stand_in_the_same_list() {
    let family = Family::with_a_supply_running_out().await;
    let mut ines = license(&family).await;
    // 21 CFR 1306.22(a): schedule IV, 6 months from 15 July 2026: Friday 15 January 2027.
    ines.open(&family.at("/medicines/1/stock/fills/1/edit")).await;
    ines.fill("Prescription written on", "15 Jul 2026").tick("IV").press("Save").await.answers(200);
    ines.open(&family.at("/renewals/missing")).await.sees("not asked yet");
    ines.press("Write down the answer : Which Medicare?").await.tick("Original Medicare");
    ines.fill("Said by", "Ottoline").fill("On which day", "25 Nov 2026").press("Save").await;
    ines.answers(200).open(&family.at("/renewals")).await;
    let text = ines.text();
    let places: Vec<_> = ["Her driving card", "Medicare open enrollment, until", "Prescription of"]
        .iter()
        .map(|it| text.find(it).unwrap_or_else(|| panic!("{it} is not in {text}")))
        .collect();
    assert!(places.is_sorted(), "by the latest day to begin: {text}");
    ines.sees("Medicare.gov; Wisconsin").does_not_see("Medicare Advantage switch");
    // The window is looked at, and comes again next year by itself.
    ines.press("Medicare open enrollment, until 7 December 2026")
        .await
        .press("It is done for this time")
        .await;
    ines.press("It is done for this time").await.answers(200).sees("done for this time");
    family.house.pass(Duration::days(13));
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/renewals"))
        .await
        .sees("Medicare open enrollment, until 7 December 2027");
    // The prescription is hidden with its medicine, from the history too.
    ines.press("Prescription of Warfarin").await.press("We let it lapse").await;
    ines.fill("Why", "another one takes its place").press("We let it lapse").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/history")).await.sees("let lapse Warfarin");
    ines.open(&family.at("/visibility/medicine/1"))
        .await
        .tick("Bram")
        .press("Save")
        .await
        .answers(200);
    for page in ["/renewals", "/history", "/today"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Warfarin");
    }
    bram.get(&family.at("/renewals/medicine/1")).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_let_lapse_hidden_or_struck_reminds_nobody_and_comes_back() {
    let family = Family::new().await;
    let mut ines = license(&family).await;
    ines.press("We let it lapse").await.press("We let it lapse").await.answers(422);
    ines.fill("Why", "she drives no more").press("We let it lapse").await.answers(200);
    ines.sees("she drives no more");
    family.house.pass(Duration::hours(2));
    assert_eq!(family.house.remind().await, 0);
    ines.open(&family.at("/today")).await.does_not_see("Her driving card:");
    ines.open(&family.at("/renewals/own/1")).await.press("It stands again").await;
    ines.press("It stands again").await.answers(200).does_not_see("she drives no more");
    // A task about it, and who sees it.
    ines.press("Make it a task").await.press("Make it a task").await;
    ines.fill("What is to be done", "Take the new photo").press("Keep the task").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/tasks")).await.sees("Take the new photo");
    let mut delia = family.browser("Delia").await;
    for page in ["/renewals", "/renewals/own/1", "/renewals/missing", "/tasks/about/renewal/1"] {
        delia.get(&family.at(page)).await.answers(404);
    }
    ines.open(&family.at("/renewals/own/1")).await.press("Who sees this").await.tick("Bram");
    ines.press("Save").await.answers(200);
    for page in ["/renewals", "/tasks", "/history", "/today"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("driving card");
        bram.does_not_see("new photo");
    }
    bram.get(&family.at("/renewals/own/1")).await.answers(404);
    assert_eq!(family.house.remind().await, 2, "Ottoline and Ines");
    ines.open(&family.at("/renewals/own/1")).await.press("Strike").await.fill("Why", "twice");
    ines.press("Strike").await.answers(200).sees("twice");
    ines.open(&family.at("/renewals")).await.does_not_see("Her driving card");
    ines.open(&family.at("/renewals/own/1"))
        .await
        .press("Bring back")
        .await
        .press("Bring back")
        .await;
    ines.answers(200).open(&family.at("/renewals")).await.sees("Her driving card");
    family.house.is_sound().await;
}
