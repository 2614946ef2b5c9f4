//! A data folder with many reminders that are due by the machine's clock, for the outside check of
//! mail (`tests/steps/mail.sh`): `KINSHEAF_REMINDERS` is the folder, `KINSHEAF_REMINDERS_MANY` how
//! many members and medicines. Without them a few, to see that the folder is what it should be.

use crate::support::{Family, TestHouse, mail::many};
use std::{env, fs};

#[tokio::test]
async fn a_folder_with_reminders_that_are_due_is_laid_out() {
    let asked = env::var("KINSHEAF_REMINDERS_MANY").unwrap_or_else(|_| "2x2".to_owned());
    let (members, medicines) = asked.split_once('x').expect("members x medicines");
    let (members, medicines) = (members.parse().expect("one"), medicines.parse().expect("two"));
    let house = TestHouse::new().await;
    house.pass(time::OffsetDateTime::now_utc() - house.now().utc());
    let family = Family::in_house(house).await;
    family.runs_out("Warfarin", 1).await;
    let count = many(&family, members, medicines).await;
    let due = family.house.would_remind().await;
    let theirs = due.iter().filter(|it| it.starts_with("Member ")).count();
    assert_eq!(theirs, count);
    family.house.is_sound().await;
    let Ok(folder) = env::var("KINSHEAF_REMINDERS") else { return };
    family.house.house.db.close().await;
    fs::create_dir_all(&folder).expect("a folder");
    for entry in fs::read_dir(family.house.folder()).expect("a folder") {
        let from = entry.expect("an entry").path();
        if from.is_file() {
            let to = std::path::Path::new(&folder).join(from.file_name().expect("a name"));
            fs::copy(&from, to).expect("copied");
        }
    }
    println!("{count} reminders are due");
}
