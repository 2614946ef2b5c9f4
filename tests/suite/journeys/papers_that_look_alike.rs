//! The same letter, photographed twice: both are shown side by side, and a person says what it is. Who does
//! not see one of them is told nothing of it.

use super::a_pile_is_sorted::put_in;
use crate::support::{
    Browser, Family,
    paper::{pdf, photo},
    reader::{self, looks, program, reads, stands},
};

const LETTER: [u32; 9] = [40, 10, 90, 80, 95, 30, 5, 85, 60];
const OTHER: [u32; 9] = [10, 95, 5, 20, 60, 90, 90, 10, 90];
const WORDS: &str = "Quarry Street Family Practice\nDear Ottoline Varga, we could not reach you by telephone \
    about your visit on March 3, 2026 at 10:30. Please call 218-555-0111 before March 9, 2026.";

/// One file, and what stands on it.
type Sent<'a> = (&'a str, Vec<u8>, &'a str);

fn twice() -> [Sent<'static>; 2] {
    [("letter.jpg", photo(&LETTER, 240), WORDS), ("again.jpg", photo(&LETTER, 170), WORDS)]
}

/// A tray with these, read and looked at.
async fn with(sent: &[Sent<'_>]) -> (Family, Browser) {
    let family = Family::new().await;
    let programs = reader::folder(&family.house);
    reader::installed(&programs);
    let mut ines = family.browser("Ines").await;
    let pile: Vec<_> = sent.iter().map(|it| (it.0, it.1.clone())).collect();
    put_in(&mut ines, &family, &pile).await;
    sent.iter().for_each(|(_, bytes, words)| stands(&programs, bytes, words));
    ines.open(&family.at("/papers/tray")).await.does_not_see("Looks like");
    reads(&family.house).await;
    looks(&family.house).await;
    (family, ines)
}

#[tokio::test]
async fn the_same_letter_taken_twice_is_found_and_one_of_them_struck() {
    let [letter, again] = twice();
    let other = ("other.jpg", photo(&OTHER, 240), WORDS);
    let (family, mut ines) = with(&[letter, again, other]).await;
    ines.open(&family.at("/papers/tray")).await.sees("Looks like letter.jpg");
    ines.sees("Looks like again.jpg").does_not_see("Looks like other.jpg");
    ines.open(&family.at("/papers/1/file"))
        .await
        .fill("Kind", "letter")
        .fill("Title", "The letter");
    ines.press("File it").await.answers(200);
    ines.open(&family.at("/papers/2")).await.press("Looks like The letter").await;
    ines.sees("These two look alike: ").sees("of their look agrees, and 100 % of their words");
    ines.sees("This one").sees("again.jpg").sees("It looks like this").sees("is filed");
    ines.fill("Why it is struck", "").press("It is the same paper: strike this one").await;
    ines.answers(422).sees("Enter why it is struck.").fill("Why it is struck", "Sent twice");
    ines.press("It is the same paper: strike this one").await.answers(200);
    ines.sees("Struck; its history keeps it").sees("1 paper waits").does_not_see("Looks like");
    ines.open(&family.at("/papers/2"))
        .await
        .sees("Sent twice")
        .sees("The same paper is The letter");
    ines.get(&family.at("/papers/2/alike")).await.answers(404);
    ines.open(&family.at("/history")).await;
    ines.sees("Ines said of The letter and again.jpg that they are the same paper");
    // It was not: it comes back, and is shown again.
    ines.open(&family.at("/papers/2")).await.press("Bring back").await.press("Bring back").await;
    ines.answers(200).sees("Looks like The letter").does_not_see("The same paper is");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_was_said_to_be_two_papers_is_asked_of_nobody_again_until_it_is_taken_back() {
    let (family, mut ines) = with(&twice()).await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/papers/tray")).await.press("Looks like letter.jpg").await;
    bram.press("They are two papers").await.answers(200).sees("nobody is asked again");
    for browser in [&mut ines, &mut bram] {
        browser.open(&family.at("/papers/tray")).await.does_not_see("Looks like");
    }
    ines.open(&family.at("/papers/1/alike"))
        .await
        .sees("Bram said")
        .sees("that they are two papers");
    ines.press("Ask again about again.jpg").await.answers(200).sees("It is asked again");
    ines.sees("These two look alike").does_not_see("Said to be another paper");
    ines.open(&family.at("/history")).await;
    ines.sees("Bram said of letter.jpg and again.jpg that they are two papers");
    ines.sees("Ines took back what was said of letter.jpg and again.jpg");
    // An answer to what has changed meanwhile is not taken.
    let mut stale = family.browser("Ines").await;
    stale.open(&family.at("/papers/1/alike")).await;
    bram.open(&family.at("/papers/1")).await.press("Turn page 1").await;
    bram.open(&family.at("/papers/1/file")).await.fill("Kind", "letter").fill("Title", "L");
    bram.press("File it").await.answers(200);
    stale.press("It is the same paper: strike this one").await.answers(409);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_newer_version_is_filed_in_the_place_of_what_it_looks_like() {
    let (family, mut ines) = with(&twice()).await;
    ines.open(&family.at("/papers/2/alike")).await.sees("file the older one first");
    ines.open(&family.at("/papers/1/file")).await.fill("Kind", "letter").fill("Title", "Of March");
    ines.press("File it").await.answers(200);
    ines.open(&family.at("/papers/2/alike")).await.press("It is a newer version").await;
    assert_eq!(ines.value("It is a newer version of"), "1");
    ines.fill("Kind", "letter").fill("Title", "Of April").press("File it").await.answers(200);
    ines.open(&family.at("/papers/1")).await.sees("A newer version is in its place: Of April");
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_does_not_see_one_of_them_is_told_nothing_of_it() {
    let (family, mut ines) = with(&twice()).await;
    let mut bram = family.browser("Bram").await;
    ines.open(&family.at("/papers/1/file")).await.fill("Kind", "letter").fill("Title", "Secret");
    ines.tick("Only stewards and the person see it").press("File it").await.answers(200);
    ines.open(&family.at("/papers/tray")).await.sees("Looks like Secret");
    for page in ["/papers/tray", "/papers/2", "/papers/2/alike"] {
        bram.open(&family.at(page))
            .await
            .answers(200)
            .does_not_see("Looks like")
            .does_not_see("Secret");
    }
    bram.sees("No other paper that you see looks like it.");
    bram.get(&family.at("/papers/1/alike")).await.answers(404);
    let (_, address, form) =
        ines.open(&family.at("/papers/2/alike")).await.pressed("They are two papers");
    bram.open(&family.at("/papers/2/file")).await;
    let key = bram.pressed("File it").2.into_iter().find(|it| it.0 == "form_key").expect("a key");
    let form: Vec<_> = form.into_iter().filter(|it| it.0 != "form_key").chain([key]).collect();
    bram.send(&address, &form).await.answers(404);
    ines.send(&address, &form).await.answers(303);
    bram.open(&family.at("/history")).await.answers(200).does_not_see("two papers");
    bram.open(&family.at("/papers/2/alike")).await.does_not_see("Said to be another paper");
    ines.open(&family.at("/history")).await.sees("Ines said of Secret and again.jpg");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_next_of_its_kind_is_another_paper_and_without_words_only_the_nearest_are_shown() {
    let next = WORDS
        .replace("March 3, 2026 at 10:30", "May 8, 2027 at 14:45")
        .replace("March 9, 2026", "May 1");
    let [letter, again] = twice();
    let (family, mut ines) = with(&[letter, (again.0, again.1, &next)]).await;
    ines.open(&family.at("/papers/tray")).await.does_not_see("Looks like");
    // A PDF of it, on which nothing can be read, is as near as can be.
    let programs = reader::folder(&family.house);
    std::fs::write(programs.join("page.jpg"), photo(&LETTER, 240)).expect("a picture");
    program(&programs, "pdftoppm", r#"cp "$(dirname "$0")/page.jpg" first.png"#);
    program(&programs, "pdftotext", r#"for last; do :; done; : > "$last""#);
    put_in(&mut ines, &family, &[("scan.pdf", pdf("scan", ""))]).await;
    reads(&family.house).await;
    looks(&family.house).await;
    ines.open(&family.at("/papers/3/alike")).await.sees("These two look alike");
    ines.sees("their words were not compared, for too few were read")
        .sees("Save the PDF and open it");
    // What cannot be unpacked is said to be so, on its own page alone.
    put_in(&mut ines, &family, &[("odd.png", crate::support::paper::picture(7))]).await;
    looks(&family.house).await;
    ines.open(&family.at("/papers/4/alike")).await.sees("its picture is damaged");
    family.house.is_sound().await;
}
