//! Sign-in, devices, forgotten passwords, and the slowing of guesses.

use crate::support::{
    Browser, Family,
    family::{PASSWORD, address},
};
use kinsheaf::{base::reach::Email, family::members::reset};
use time::Duration;

async fn sign_in(browser: &mut Browser, name: &str, password: &str) {
    browser.open("/sign-in").await.fill("E-mail", &address(name)).fill("Password", password);
    browser.press("Sign in").await;
}

#[tokio::test]
async fn she_is_led_to_where_she_was_going_and_out_again() {
    let family = Family::new().await;
    let mut ines = Browser::new(&family.house.app);
    ines.open(&family.at("/medicines")).await.sees("Sign in");
    ines.fill("E-mail", "INES@example.org").fill("Password", PASSWORD);
    ines.press("Sign in").await.answers(200).sees("Medicines");
    assert_eq!(ines.at, family.at("/medicines"));
    ines.press("Sign out").await.sees("You are signed out");
    // The back button asks the server again, and there is nothing to see.
    ines.open(&family.at("/medicines")).await.sees("Sign in").does_not_see("Ottoline");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_session_ends_by_itself() {
    let family = Family::new().await;
    let mut borrowed = family.browser("Ines").await;
    let mut own = Browser::new(&family.house.app);
    own.open("/sign-in").await.fill("E-mail", &address("Ines")).fill("Password", PASSWORD);
    own.tick("This is my own device").press("Sign in").await.answers(200);
    family.house.pass(Duration::hours(13));
    borrowed.open("/me").await.sees("Sign in");
    own.open("/me").await.sees("Your settings");
    for _ in 0..4 {
        family.house.pass(Duration::days(25));
        own.open("/me").await;
    }
    own.sees("Sign in");
}

#[tokio::test]
async fn a_clock_set_back_signs_nobody_out_and_loses_nothing() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for back in [Duration::hours(1), Duration::days(1)] {
        family.house.pass(-back);
        ines.open(&family.at("/medicines/add")).await.answers(200).fill("Name", "Warfarin");
        ines.press("Add this medicine").await.answers(200);
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn guesses_are_slowed_but_the_member_comes_in_by_her_own_device() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.press("Sign out").await;
    let mut stranger = Browser::new(&family.house.app);
    for _ in 0..8 {
        sign_in(&mut stranger, "Ines", "a wrong guess of mine").await;
        stranger.answers(422).sees("The address or the password is not right.");
    }
    sign_in(&mut stranger, "Ines", PASSWORD).await;
    stranger.answers(429).sees("Wait");
    sign_in(&mut ines, "Ines", PASSWORD).await;
    ines.answers(200).open(&family.at("/history")).await.sees("tried to sign in as Ines");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_unknown_address_is_answered_like_a_wrong_password() {
    let family = Family::new().await;
    let mut stranger = Browser::new(&family.house.app);
    sign_in(&mut stranger, "nobody", "whatever it is").await;
    stranger.answers(422).sees("The address or the password is not right.");
}

#[tokio::test]
async fn a_link_from_the_command_line_gives_a_new_password_and_is_told() {
    let family = Family::new().await;
    let mut before = family.browser("Ines").await;
    let email = Email::parse("ines@example.org").expect("an address");
    let (_, token) = reset::link(&family.house.house.db, &email).await.expect("a link");
    let link = format!("/sign-in/reset/{token}");
    let mut ines = Browser::new(&family.house.app);
    ines.open(&link).await.fill("New password", "ines").press("Keep this password").await;
    ines.answers(422).fill("New password", "cellar violin eleven rain");
    ines.press("Keep this password").await.sees("Your new password is kept");
    before.open("/me").await.sees("Sign in");
    Browser::new(&family.house.app).open(&link).await.answers(410);
    sign_in(&mut ines, "Ines", "cellar violin eleven rain").await;
    ines.answers(200).sees("Since you last signed in, a link to choose a new password");
    ines.open(&family.at("/history")).await;
    ines.sees("had a link made to choose a new password Ines");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_forgotten_password_is_mended_by_mail_and_says_nothing_of_who_is_here() {
    let family = Family::new().await;
    for who in ["ines@example.org", "nobody@example.org"] {
        let mut browser = Browser::new(&family.house.app);
        browser.open("/sign-in/forgot").await.fill("E-mail", who).press("Send the link").await;
        browser.answers(200).sees("If someone signs in here with that address");
    }
    let mails = family.house.outbox().await;
    assert_eq!(mails.len(), 1);
    let (recipient, body) = &mails[0];
    assert_eq!(recipient, "ines@example.org");
    let link = body.lines().find(|it| it.contains("/sign-in/reset/")).expect("a link");
    let path = link.strip_prefix("http://127.0.0.1:8317").expect("our address");
    let mut ines = Browser::new(&family.house.app);
    ines.open(path).await.answers(200).fill("New password", "cellar violin eleven rain");
    ines.press("Keep this password").await.answers(200);
    family.house.is_sound().await;
}

#[tokio::test]
async fn she_ends_a_device_she_no_longer_has() {
    let family = Family::new().await;
    let (mut kept, mut lost) = (family.browser("Ines").await, family.browser("Ines").await);
    kept.open("/me").await.sees("this device");
    let (_, address, form) = kept.pressed_starting("Sign it out");
    kept.send(&address, &form).await.answers(303);
    lost.open("/me").await.sees("Sign in");
    kept.open("/me").await.sees("Your settings");
    let mut bram = family.browser("Bram").await;
    bram.send("/me/devices/1/end", &[]).await.answers(404);
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_she_changes_of_her_own_is_told_in_whole_sentences() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open("/me/edit").await.fill("Your phone", "218-555-0101").press("Save").await;
    ines.answers(200).open("/me/edit").await.fill("Your phone", "218-555-0106");
    ines.fill("Your name", "Ines Varga").press("Save").await.answers(200);
    ines.open("/me/password").await.fill("The one you have", PASSWORD);
    ines.fill("The new one", "cellar violin eleven rain").press("Keep this password").await;
    ines.answers(200).open(&family.at("/history")).await;
    ines.sees("Ines Varga changed the phone from nothing to 218-555-0101");
    ines.sees("Ines Varga changed own settings name before: Ines after: Ines Varga");
    ines.sees("Ines Varga changed the password");
    ines.does_not_see("changed the password of").does_not_see("changed the phone of");
    family.house.is_sound().await;
}
