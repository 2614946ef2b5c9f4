//! What stands on the pages of papers is found by those who see papers, page by page; a backup leaves
//! the index out, and a house that is opened builds it anew.

use super::{
    a_pile_is_sorted::put_in,
    a_thing_is_found_again::{read, titles},
};
use crate::support::{Browser, Family, archive::Archive, html, paper, server::ran};
use sqlx::{Connection, SqliteConnection, sqlite::SqliteConnectOptions};
use tempfile::TempDir;

async fn run(family: &Family, statement: &'static str) {
    let mut db = family.house.outside().await;
    sqlx::query(statement).execute(&mut db).await.expect("done");
}

/// Two papers, as they are filed, and three pages of them, as the reader of papers writes them.
async fn papers() -> Family {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let pages = [("7.png", paper::picture(7)), ("8.png", paper::picture(8))];
    put_in(&mut ines, &family, &pages).await;
    for (id, title) in [("1", "Paper 7"), ("2", "Paper 8")] {
        ines.open(&family.at(&format!("/papers/{id}/file"))).await.fill("Kind", "letter");
        ines.fill("Title", title).press("File it").await.answers(200);
    }
    run(
        &family,
        "insert into page_text (person_id, paper, place, text) values
            (1, 1, 1, 'Discharge summary. Métoprolol 25 mg, <b>furosemide</b> 20 mg'),
            (1, 1, 2, 'Weigh every morning; phone when two pounds more'),
            (1, 2, 1, 'Furosemide stopped. Potassium 4.1')",
    )
    .await;
    family
}

async fn find<'a>(family: &Family, browser: &'a mut Browser, words: &str) -> &'a mut Browser {
    browser.open(&family.at("/search")).await.fill("Words to find", words);
    browser.press("Find these").await.answers(200)
}

fn places(browser: &Browser) -> Vec<String> {
    html::select(&browser.page(), ".found .when").into_iter().map(html::text).collect()
}

#[tokio::test]
async fn a_page_is_found_by_those_who_see_papers() {
    let family = papers().await;
    let mut bram = family.browser("Bram").await;
    find(&family, &mut bram, "furosemide").await.sees("2 things were found.");
    assert_eq!(titles(&bram), ["Paper 7", "Paper 8"]);
    assert_eq!(places(&bram), ["Paper, page 1", "Paper, page 1"]);
    let page = bram.page();
    let texts: Vec<_> = html::select(&page, ".found p:not(.when)").into_iter().map(read).collect();
    assert!(texts[0].ends_with("<b>furosemide</b> 20 mg"), "{texts:?}");
    assert_eq!(html::select(&bram.page(), ".found mark").len(), 2);
    find(&family, &mut bram, "two pounds weigh").await.sees("One thing");
    assert_eq!(places(&bram), ["Paper, page 2"]);
    // By the number of the paper and a word of its page; without an accent; with a wrong letter.
    assert_eq!(places(find(&family, &mut bram, "7 metoprolol").await), ["Paper, page 1"]);
    find(&family, &mut bram, "potasium").await.sees("shown for “potassium”").sees("Paper 8");
    // An aide and a reader see no papers: not their words, not that there are any.
    for who in ["Delia", "Rosalind"] {
        let mut browser = family.browser(who).await;
        for words in ["furosemide", "potasium", "paper", "weigh"] {
            find(&family, &mut browser, words).await.sees("Nothing was found.");
            browser.does_not_see("shown for").does_not_see("Papers and their pages");
        }
    }
    // A page that is read once more, and one that is taken away.
    run(&family, "update page_text set text = 'Torsemide' where paper = 2").await;
    run(&family, "delete from page_text where paper = 1 and place = 2").await;
    assert_eq!(titles(find(&family, &mut bram, "torsemide").await), ["Paper 8"]);
    find(&family, &mut bram, "potassium").await.sees("Nothing was found.");
    find(&family, &mut bram, "pounds").await.sees("Nothing was found.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_paper_that_is_hidden_has_no_pages_and_no_words() {
    let family = papers().await;
    run(
        &family,
        "insert into hidden (person_id, member_id, kind, item, on_behalf, standing)
        select 1, id, 'paper', 2, 0, 1 from member where name = 'Bram'",
    )
    .await;
    let mut bram = family.browser("Bram").await;
    find(&family, &mut bram, "furosemide").await.sees("One thing was found.");
    assert_eq!(titles(&bram), ["Paper 7"]);
    for words in ["potassium", "potasium", "potass", "stopped"] {
        find(&family, &mut bram, words).await.sees("Nothing was found.").does_not_see("shown for");
    }
    let mut ines = family.browser("Ines").await;
    find(&family, &mut ines, "potasium").await.sees("shown for “potassium”").sees("Paper 8");
}

#[tokio::test]
async fn a_backup_has_no_index_and_a_restored_house_finds_the_same() {
    let family = papers().await;
    let place = TempDir::new().expect("a folder");
    let (file, folder) = (place.path().join("kept.zip"), place.path().join("restored"));
    let (file, folder) = (file.display().to_string(), folder.display().to_string());
    let data = family.house.folder().display().to_string();
    let said = ran(&["backup", &file], &[("KINSHEAF_DATA", &data)]);
    assert!(said.status.success(), "{said:?}");
    let kept = Archive::read(file.as_ref());
    assert!(kept.names().contains(&"data/kinsheaf.db"));
    assert!(ran(&["restore", &file, "--data", &folder], &[]).status.success());
    let database = format!("{folder}/kinsheaf.db");
    let found = async || {
        let options = SqliteConnectOptions::new().filename(&database);
        let mut db = SqliteConnection::connect_with(&options).await.expect("a database");
        let count = "select count(*) from page_word where page_word match 'furosemide'";
        let count: i64 = sqlx::query_scalar(count).fetch_one(&mut db).await.expect("a count");
        count
    };
    assert_eq!(found().await, 0, "the index came along");
    let settings = [("KINSHEAF_DATA", folder.as_str())];
    assert!(ran(&["verify"], &settings).status.success());
    let clock = family.house.house.clock.clone();
    let db = kinsheaf::platform::db::Db::open(folder.as_ref(), clock).await.expect("a house");
    db.close().await;
    assert_eq!(found().await, 2);
}
