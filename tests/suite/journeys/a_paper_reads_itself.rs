//! A photographed bill says by itself what it probably is: a person confirms or changes it, its words are
//! found, and nothing is filed before that. The reader of pictures is one of the tests' own.

use super::a_pile_is_sorted::put_in;
use crate::support::{
    Browser, Family,
    paper::{pdf, picture},
    reader::{self, reads, stands},
};
use time::Duration;

const BILL: &str = "Birch Lane Electric\n12 Canal Street, Duluth\nDate: October 2, 2026\nCustomer: Ottoline Varga\n\n\
    Amount due: $41.20\nPlease pay the balance of your account by November 20, 2026.\nPayment by check. Kilowatt hours: 310.";

/// A house with a reader, and a tray with these pictures, on which this stands.
async fn with(papers: &[(&str, u16, &str)]) -> (Family, Browser) {
    let family = Family::new().await;
    let programs = reader::folder(&family.house);
    reader::installed(&programs);
    let mut ines = family.browser("Ines").await;
    let pile: Vec<_> = papers.iter().map(|it| (it.0, picture(it.1))).collect();
    put_in(&mut ines, &family, &pile).await;
    for (_, width, words) in papers {
        stands(&programs, &picture(*width), words);
    }
    (family, ines)
}

#[tokio::test]
async fn a_bill_is_read_proposed_with_why_and_filed_with_one_press() {
    let (family, mut ines) = with(&[("bill.png", 1, BILL), ("next.png", 2, BILL)]).await;
    ines.open(&family.at("/papers/tray")).await.sees("Its words are still to be read");
    ines.does_not_see("File it so");
    reads(&family.house).await;
    ines.open(&family.at("/papers/tray")).await.sees("bill or receipt");
    ines.sees("by words that are usual on such papers").sees("2 October 2026");
    ines.sees("it stands behind “Date”, written October 2, 2026; another date stands on it too");
    ines.sees("it is the first line of the letterhead, and nobody among the contacts");
    ines.sees("Ottoline’s name stands on it").sees("2 papers wait");
    // Nothing is filed by itself.
    ines.open(&family.at("/papers")).await.does_not_see("Birch Lane Electric");
    ines.open(&family.at("/papers/tray")).await.press("File it so : bill.png").await.answers(200);
    ines.sees("Filed Bill or receipt from Birch Lane Electric");
    // The next one stands in the fields already, and was learned from the first.
    ines.sees("by the 1 paper that was filed before");
    assert_eq!(ines.value("Title"), "Bill or receipt from Birch Lane Electric");
    assert_eq!(ines.value("Date on the paper"), "2 October 2026");
    ines.fill("Kind", "letter")
        .fill("Title", "A letter after all")
        .press("File it")
        .await
        .answers(200);
    ines.open(&family.at("/papers/1")).await.sees("bill or receipt").sees("Kilowatt hours: 310.");
    ines.sees("a letter or a digit may be wrong").does_not_see("What its words propose");
    ines.open(&family.at("/papers/2")).await.sees("letter");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_can_be_meant_in_two_ways_is_not_filled_in() {
    let either = BILL.replace("October 2, 2026", "3/4/2026");
    let his = BILL.replace("Ottoline", "Emeric");
    let (family, mut ines) =
        with(&[("a.png", 1, &either), ("b.png", 2, &his), ("c.png", 3, "9")]).await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Birch Lane Electric");
    ines.fill("Phone", "218-555-0111").press("Add this contact").await.answers(200);
    reads(&family.house).await;
    ines.open(&family.at("/papers/1")).await.sees("4 March 2026 or 3 April 2026");
    ines.sees("3/4/2026 can be read both ways: a person says which").does_not_see("File it so");
    ines.open(&family.at("/papers/1/file")).await;
    assert_eq!(
        (ines.value("Date on the paper"), ines.value("From whom")),
        (String::new(), "1".into())
    );
    ines.sees("the letterhead says “Birch Lane Electric”");
    ines.open(&family.at("/papers/2")).await.sees("“Emeric Varga”. Is it about Ottoline?");
    ines.does_not_see("File it so");
    ines.open(&family.at("/papers/3")).await.sees("too few of its words are known");
    ines.sees("Ottoline’s name was not found on it").does_not_see("File it so");
    family.house.is_sound().await;
}

#[tokio::test]
async fn words_find_a_paper_for_those_alone_who_see_it() {
    let other = BILL.replace("Kilowatt hours: 310", "Thank you");
    let (family, mut ines) = with(&[("a.png", 1, BILL), ("b.png", 2, &other)]).await;
    let mut bram = family.browser("Bram").await;
    reads(&family.house).await;
    ines.open(&family.at("/papers")).await.press("What was read").await.answers(200);
    ines.sees("2 papers were read").press("search").await.answers(200);
    ines.fill("Words to find", "kilowatt bal").press("Find these").await.answers(200);
    ines.sees("a.png").sees("Paper, page 1").does_not_see("b.png");
    bram.open(&family.at("/search?q=kilowatt")).await.sees("a.png");
    ines.open(&family.at("/visibility/paper/1"))
        .await
        .tick("Bram")
        .press("Save")
        .await
        .answers(200);
    bram.open(&family.at("/search?q=kilowatt")).await.does_not_see("a.png");
    bram.sees("Nothing was found.");
    bram.open(&family.at("/papers/words")).await.sees("1 paper was read");
    // What he does not see teaches him nothing either.
    ines.open(&family.at("/papers/1/file")).await.press("File it").await.answers(200);
    bram.open(&family.at("/papers/2")).await.sees("by words that are usual on such papers");
    ines.open(&family.at("/papers/2")).await.sees("by the 1 paper that was filed before");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_fails_is_tried_three_times_and_then_said_and_filed_all_the_same() {
    let (family, mut ines) = with(&[("a.png", 1, BILL)]).await;
    reader::program(&reader::folder(&family.house), "tesseract", "exit 3");
    for minutes in [0, 4, 2, 20] {
        family.house.pass(Duration::minutes(minutes));
        ines.open(&family.at("/papers/1")).await.sees("Its words are still to be read");
        reads(&family.house).await;
    }
    ines.open(&family.at("/papers/1"))
        .await
        .sees("Not read: it is damaged, or too large to be read");
    ines.open(&family.at("/papers/words")).await.sees("Could not be read").sees("a.png");
    ines.open(&family.at("/papers/1/file"))
        .await
        .fill("Kind", "letter")
        .fill("Title", "From Aunt Ilka");
    ines.press("File it").await.answers(200).sees("Filed From Aunt Ilka");
    // The program was put in order: it is tried once more.
    reader::installed(&reader::folder(&family.house));
    reads(&family.house).await;
    ines.open(&family.at("/papers/words")).await.press("Read it again : From Aunt Ilka").await;
    ines.answers(200).sees("It is read again within a few minutes");
    ines.sees("Its words are still to be read").does_not_see("Read it again");
    reads(&family.house).await;
    ines.open(&family.at("/papers/1")).await.sees("Kilowatt hours: 310.").does_not_see("Not read");
    family.house.is_sound().await;
}

#[tokio::test]
async fn without_a_reader_those_who_decide_are_told_and_all_else_works() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let says = "The words of papers are not read: tesseract is not on the server";
    ines.open(&family.at("/today")).await.does_not_see(says);
    put_in(&mut ines, &family, &[("a.png", picture(1)), ("b.pdf", pdf("b", ""))]).await;
    reads(&family.house).await;
    ines.open(&family.at("/today")).await.press(says).await.sees("apt install tesseract-ocr");
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/today")).await.does_not_see(says);
    bram.open(&family.at("/papers/words")).await.sees("tesseract is not on the server");
    bram.does_not_see("apt install");
    // It comes, and what waited is read; a PDF has its words in it.
    let programs = reader::folder(&family.house);
    reader::installed(&programs);
    stands(&programs, &picture(1), BILL);
    reads(&family.house).await;
    ines.open(&family.at("/today")).await.does_not_see(says);
    ines.open(&family.at("/papers/2")).await.sees("Words of a PDF as they stand in it");
    ines.sees("As they stand in the file.");
    family.house.is_sound().await;
}
