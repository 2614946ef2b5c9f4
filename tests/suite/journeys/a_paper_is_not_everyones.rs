//! Who sees a paper: not an aide; of relatives not those for whom it is hidden, who see no directives, or
//! from whom the contact it came from is hidden; and some only stewards and the person.

use super::a_pile_is_sorted::put_in;
use crate::support::{
    Browser, Family,
    paper::{pdf, picture},
};
use kinsheaf::platform::backup::{self, Unsound};
use tempfile::TempDir;

const WORDS: &str = "Divorce of 1971";

/// Nothing of it is there for her.
async fn finds_nothing(browser: &mut Browser, family: &Family) {
    for page in ["/papers", "/papers?by=date", "/papers/tray", "/today", "/history"] {
        browser.open(&family.at(page)).await.answers(200).does_not_see(WORDS).does_not_see("a.png");
    }
    for page in ["", "/file", "/join", "/replace", "/strike", "/pages/1"] {
        browser.get(&family.at(&format!("/papers/1{page}"))).await.answers(404);
    }
    browser.get(&family.at("/history/paper/1")).await.answers(404);
    browser.send(&family.at("/papers/1/pages/1/turn"), &[]).await.answers(404);
}

async fn one_paper(kind: &str) -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    put_in(&mut ines, &family, &[("a.png", picture(1))]).await;
    ines.open(&family.at("/papers/1/file")).await.fill("Kind", kind).fill("Title", WORDS);
    ines.press("File it").await.answers(200);
    (family, ines)
}

#[tokio::test]
async fn what_is_for_stewards_is_not_there_for_a_relative_not_even_for_the_one_who_filed_it() {
    let family = Family::new().await;
    let mut bram = family.browser("Bram").await;
    put_in(&mut bram, &family, &[("a.png", picture(1))]).await;
    bram.open(&family.at("/papers/1/file")).await.sees("then you do not see it any more yourself");
    bram.fill("Kind", "vital record").fill("Title", WORDS);
    bram.tick("Only stewards and the person see it").press("File it").await.answers(200);
    bram.sees("Only those who may see it find it now");
    // The line about it was shown once; from here on there is nothing.
    finds_nothing(&mut bram, &family).await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/papers")).await.sees(WORDS).sees("stewards only");
    ottoline.get(&family.at("/papers/1/pages/1")).await.answers(200);
    // He may send the same file: it is not told that it is there.
    put_in(&mut bram, &family, &[("a again.png", picture(1))]).await;
    bram.sees("1 of 1 put in the tray").does_not_see("same file");
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/papers/1/file")).await.untick("Only stewards and the person see it");
    ines.press("Save").await.answers(200);
    bram.open(&family.at("/papers")).await.sees(WORDS);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_hidden_paper_is_hidden_with_its_pages_and_with_the_contact_it_came_from() {
    let (family, mut ines) = one_paper("letter").await;
    let mut bram = family.browser("Bram").await;
    ines.open(&family.at("/papers/1")).await.press("Who sees this").await.tick("Bram");
    ines.press("Save").await.answers(200);
    finds_nothing(&mut bram, &family).await;
    ines.open(&family.at("/visibility/paper/1")).await.untick("Bram").press("Save").await;
    bram.open(&family.at("/papers/1")).await.answers(200);
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Halvard Lind");
    ines.fill("Phone", "218-555-0111").press("Add this contact").await.answers(200);
    ines.open(&family.at("/papers/1/file")).await.fill("From whom", "1");
    ines.fill("Or a name", "someone else").press("Save").await.answers(422);
    ines.sees("Choose a contact or enter a name, not both.").fill("Or a name", "");
    ines.press("Save").await.answers(200).sees("Halvard Lind");
    bram.open(&family.at("/papers")).await.sees("from Halvard Lind");
    ines.open(&family.at("/visibility/contact/1")).await.tick("Bram").press("Save").await;
    finds_nothing(&mut bram, &family).await;
    // Nobody names a contact that is not on her list.
    put_in(&mut bram, &family, &[("b.pdf", pdf("b", ""))]).await;
    bram.open(&family.at("/papers/2/file")).await.fill("Kind", "letter").fill("Title", "B");
    let (_, address, mut form) = bram.pressed("File it");
    form.iter_mut().filter(|it| it.0 == "contact_id").for_each(|it| it.1 = "1".into());
    bram.send(&address, &form).await.answers(422).sees("Choose from the contacts, or nobody.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_directive_is_for_those_who_see_directives() {
    let (family, mut ines) = one_paper("directive").await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/papers")).await.sees(WORDS);
    ines.open(&family.at("/family/3/areas")).await.fill("directives", "nothing");
    ines.press("Save").await.answers(200);
    finds_nothing(&mut bram, &family).await;
    ines.open(&family.at("/papers")).await.sees(WORDS);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_page_that_is_split_off_what_is_hidden_is_for_stewards_only() {
    let (family, mut ines) = one_paper("letter").await;
    put_in(&mut ines, &family, &[("back.png", picture(2))]).await;
    ines.open(&family.at("/papers/1/join")).await.tick("back.png").press("Join them").await;
    ines.answers(200)
        .open(&family.at("/visibility/paper/1"))
        .await
        .tick("Bram")
        .press("Save")
        .await;
    ines.open(&family.at("/papers/1")).await.press("Split off page 2").await.answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/papers/tray")).await.sees("Nothing waits here");
    bram.get(&family.at("/papers/3")).await.answers(404);
    ines.open(&family.at("/papers/tray")).await.sees("stewards only");
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_aide_finds_no_papers_and_nothing_of_hers_is_written() {
    let (family, _) = one_paper("letter").await;
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/today")).await.answers(200).does_not_see("Papers").does_not_see("tray");
    finds_no_papers(&mut delia, &family).await;
    let mut rosalind = family.browser("Rosalind").await;
    finds_no_papers(&mut rosalind, &family).await;
    // A pile that she sends all the same is not even read.
    delia.open("/me/edit").await.attach_named("Your name", "x.png", &picture(9));
    delia.send(&family.at("/papers/tray/add"), &[]).await.answers(404);
    let mut db = family.house.outside().await;
    let kept: Vec<String> =
        sqlx::query_scalar("select file from paper_page").fetch_all(&mut db).await.expect("rows");
    assert_eq!(kept.len(), 1);
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/history")).await.sees("asked for the papers, and was refused");
    family.house.is_sound().await;
}

async fn finds_no_papers(browser: &mut Browser, family: &Family) {
    for page in ["/papers", "/papers/tray", "/papers/tray/add", "/papers/1", "/papers/1/pages/1"] {
        browser.get(&family.at(page)).await.answers(404);
    }
}

#[tokio::test]
async fn a_backup_carries_the_pages_and_what_had_not_arrived_is_left_out() {
    let (family, mut ines) = one_paper("letter").await;
    put_in(&mut ines, &family, &[("b.pdf", pdf("b", ""))]).await;
    let halfway = family.house.folder().join("files/arriving/half.part");
    std::fs::write(&halfway, b"half").expect("written");
    let place = TempDir::new().expect("a folder");
    let (file, folder) = (place.path().join("b.zip"), place.path().join("again"));
    backup::make(family.house.folder(), &file, family.house.now()).await.expect("made");
    let kept = backup::restore(&file, &folder, Unsound::Refused).await.expect("restored");
    let mut carried: Vec<_> =
        kept.manifest.files.iter().filter(|it| it.path.starts_with("files/")).collect();
    carried.sort_by_key(|it| it.size);
    assert_eq!(carried.len(), 2);
    for (listed, bytes) in carried.iter().zip([picture(1), pdf("b", "")]) {
        assert_eq!(std::fs::read(folder.join(&listed.path)).expect("a file"), bytes);
        assert!(listed.path.ends_with(&listed.sha256), "{}", listed.path);
    }
}
