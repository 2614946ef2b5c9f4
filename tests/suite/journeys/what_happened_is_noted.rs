//! What happened: a line or a photo, kept at once by whoever was there, given its place later by
//! someone else, and not there for whom the thing it is about is hidden.

use crate::support::{Browser, Family};

/// The first bytes of a PNG of 640 by 480 (ISO/IEC 15948, 5.2 and 11.2.2): enough to be a photo.
fn photo() -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    bytes.extend([0, 0, 2, 128, 0, 0, 1, 224, 8, 2, 0, 0, 0, 0, 0, 0, 0]);
    bytes
}

async fn note(browser: &mut Browser, family: &Family, words: &str) {
    browser.open(&family.at("/today")).await.fill("What happened?", words).press("Keep it").await;
    browser.answers(200).sees("Kept, with your name and the time");
}

#[tokio::test]
async fn an_aide_notes_it_and_a_daughter_gives_it_its_place() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    let mut delia = family.browser("Delia").await;
    note(&mut delia, &family, "Left the afternoon tablet in the cup").await;
    delia.sees("by Delia").sees("no place yet");

    ines.open(&family.at("/today")).await.sees("A note has no place yet: Left the afternoon");
    ines.sees("Delia noted Left the afternoon tablet in the cup");
    ines.press("A note has no place yet: Left the afternoon tablet in the cup").await;
    ines.press("Give it its place").await.press("This is its place").await.answers(422);
    ines.sees("Choose what this is about, or that it stands on its own.");
    ines.fill("What is it about?", "medicine/1").press("This is its place").await.answers(200);
    ines.sees("Its place: about Sertraline").does_not_see("no place yet");
    ines.open(&family.at("/medicines/1")).await.press("Noted about it").await;
    ines.sees("Left the afternoon tablet in the cup");
    ines.open(&family.at("/history")).await;
    ines.sees("Ines gave a place to Left the afternoon tablet in the cup");

    // The words are Delia's: she puts them right, and nobody else does.
    ines.get(&family.at("/happenings/1/edit")).await.answers(403);
    delia.open(&family.at("/happenings/1")).await.press("Put the words right").await;
    delia.fill("In a few words", "Left half of the afternoon tablet").press("Save").await;
    delia.answers(200).sees("Left half of the afternoon tablet");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_photo_is_kept_with_the_words_and_comes_back_with_a_form_that_was_refused() {
    let family = Family::new().await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/happenings/add")).await.attach("A photo", &photo());
    bram.fill("When, if not just now", &"long ago ".repeat(50));
    bram.press("Keep it").await.answers(422).sees("The photo you chose has arrived");
    bram.fill("When, if not just now", "last night").press("Keep it").await.answers(200);
    bram.sees("Kept, with your name").sees("last night");
    bram.get(&family.at("/happenings/1/photo")).await.answers(200);
    assert_eq!(bram.body, photo());
    assert_eq!(bram.headers["content-type"], "image/png");
    assert_eq!(bram.headers["x-content-type-options"], "nosniff");

    bram.open(&family.at("/happenings/add")).await.fill("In a few words", "the bill");
    bram.attach("A photo", b"<svg onload='alert(1)'/>").press("Keep it").await.answers(422);
    bram.sees("This is not a photo that can be kept");
    assert_eq!(bram.value("In a few words"), "the bill");
    bram.fill("In a few words", "").press("Keep it").await.answers(422);
    bram.sees("Write a few words, or choose a photo.");

    // A reader sees it; nobody takes a photo out of another record, or one that never came.
    family.browser("Rosalind").await.get(&family.at("/happenings/1/photo")).await.answers(200);
    bram.open(&family.at("/happenings/add")).await;
    let (_, address, mut form) = bram.pressed("Keep it");
    form.push(("photo".into(), "../../kinsheaf.db".into()));
    bram.send(&address, &form).await.answers(422).sees("The photo did not arrive.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_photo_of_someone_not_signed_in_is_not_even_written() {
    let family = Family::new().await;
    let mut nobody = Browser::new(&family.house.app);
    nobody.open("/sign-in").await.attach("E-mail", &photo());
    let (_, _, form) = nobody.pressed("Sign in");
    nobody.send(&family.at("/happenings/add"), &form).await.answers(303);
    assert!(nobody.at.starts_with("/sign-in"), "{}", nobody.at);
    assert!(!family.house.folder().join("files").exists());
}

#[tokio::test]
async fn a_note_about_what_is_hidden_is_hidden_with_it() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    note(&mut ines, &family, "Cried after breakfast").await;
    ines.press("Give it its place").await.fill("What is it about?", "medicine/1");
    ines.press("This is its place").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/happenings")).await.sees("Cried after breakfast");
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    ines.answers(200);
    for page in ["/happenings", "/today", "/history", "/medicines"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Cried");
    }
    bram.get(&family.at("/happenings/1")).await.answers(404);
    bram.get(&family.at("/happenings/about/medicine/1")).await.answers(404);
    bram.get(&family.at("/history/happening/1")).await.answers(404);
    ines.open(&family.at("/happenings/1")).await.sees("Cried after breakfast");
    family.house.is_sound().await;
}
