//! A backup that is not whole, not as it was made, or not for this program becomes no folder at
//! all, and the one who runs the server is told what is wrong with it.

use crate::support::{
    archive::{Archive, backed_up},
    server::{Server, ran, said},
};
use kinsheaf::platform::{
    backup::{self, Trouble, Unsound},
    db::latest,
};
use sqlx::{AssertSqlSafe, Connection, SqliteConnection, sqlite::SqliteConnectOptions};
use std::{
    fs,
    path::{Path, PathBuf},
};

/// Tries to restore it; nothing may come of it, not even a folder that is half there.
#[track_caller]
fn refused(trouble: Option<Trouble>, place: &Path) -> Trouble {
    let trouble = trouble.expect("it was restored");
    let left: Vec<_> = fs::read_dir(place).expect("a folder").flatten().collect();
    assert!(left.iter().all(|it| it.path().is_file()), "{trouble}: {left:?}");
    trouble
}

async fn restored(file: &Path) -> Trouble {
    let place = file.parent().expect("a folder");
    let made = backup::restore(file, &place.join("restored"), Unsound::Refused).await;
    refused(made.err(), place)
}

async fn with_bytes(place: &Path, bytes: &[u8]) -> Trouble {
    let file = place.join("bad.zip");
    fs::write(&file, bytes).expect("written");
    restored(&file).await
}

async fn altered(archive: Archive, place: &Path, words: &str) {
    let file = place.join("bad.zip");
    archive.write(&file);
    let trouble = restored(&file).await;
    let found = matches!(&trouble, Trouble::Altered(what) if what.contains(words));
    assert!(found, "{words:?}: {trouble}");
}

#[tokio::test]
async fn one_that_is_cut_short_is_refused_at_every_length() {
    let (_house, place, file) = backed_up().await;
    let whole = fs::read(&file).expect("a file");
    let lengths = (0..whole.len()).step_by(whole.len() / 60);
    for length in lengths.chain(whole.len() - 90..whole.len()) {
        let trouble = with_bytes(place.path(), &whole[..length]).await;
        match length {
            0..30 => assert!(matches!(trouble, Trouble::NotABackup), "{length}: {trouble}"),
            _ => assert!(matches!(trouble, Trouble::CutShort), "{length}: {trouble}"),
        }
    }
}

#[tokio::test]
async fn one_flipped_bit_anywhere_is_found() {
    let (_house, place, file) = backed_up().await;
    let whole = fs::read(&file).expect("a file");
    let mut files_named = 0;
    let places = (0..whole.len()).step_by(whole.len() / 120);
    // The header of the first entry byte by byte, then the directory and the end.
    for at in places.chain(0..60).chain((whole.len() - 480..whole.len()).step_by(3)) {
        let mut bytes = whole.clone();
        bytes[at] ^= 1 << (at % 8);
        match with_bytes(place.path(), &bytes).await {
            Trouble::Altered(what) => {
                files_named += usize::from(what.contains("kinsheaf.db is not what"));
            }
            Trouble::NotABackup if at < 43 => {}
            Trouble::CutShort if at >= whole.len() - 86 => {}
            other => panic!("byte {at} of {}: {other}", whole.len()),
        }
    }
    assert!(files_named > 60, "the database was named {files_named} times");
}

#[tokio::test]
async fn one_whose_parts_do_not_fit_is_refused_by_name() {
    let (_house, place, file) = backed_up().await;
    let (place, whole) = (place.path(), Archive::read(&file));
    let edited = |change: fn(&mut Archive)| {
        let mut archive = whole.clone();
        change(&mut archive);
        archive
    };
    altered(edited(|it| it.entries[3].1[2] ^= 1), place, "secret.key is not what").await;
    altered(edited(|it| it.entries[3].1.push(0)), place, "secret.key is not what").await;
    altered(edited(|it| it.entries[1].1.truncate(4096)), place, "kinsheaf.db is not what").await;
    let renamed = edited(|it| it.entries[2].0 = "data/papers/ab/other.pdf".into());
    altered(renamed, place, "data/papers/ab/card.pdf is missing").await;
    altered(edited(|it| drop(it.entries.pop())), place, "data/secret.key is missing").await;
    altered(edited(|it| it.entries.swap(2, 3)), place, "is not where it belongs").await;
    let more = edited(|it| it.entries.push(("data/papers/more".into(), vec![1])));
    altered(more, place, "data/papers/more is not in its manifest").await;
    altered(edited(|it| it.entries[0].1.truncate(50)), place, "manifest cannot be read").await;
    let older = latest() - 1;
    let older = whole.clone().with_manifest(|it| it["database"] = older.into());
    altered(older, place, "not of the version that its manifest says").await;
}

#[tokio::test]
async fn no_file_leaves_the_folder_or_slips_in_beside_the_database() {
    let (_house, place, file) = backed_up().await;
    let (place, whole) = (place.path(), Archive::read(&file));
    let outside = place.join("evil").display().to_string();
    for path in ["../evil", "papers/../../evil", &outside, "..\\evil"] {
        altered(whole.clone().with_file(path, b"evil"), place, "leaves the data folder").await;
        assert!(!place.join("evil").exists());
    }
    for path in ["kinsheaf.db-wal", "kinsheaf.db-journal", "serving.lock"] {
        altered(whole.clone().with_file(path, b"evil"), place, "not a file that a backup").await;
    }
    // What the other archives differ from is a good one.
    let good = place.join("good.zip");
    whole.with_file("papers/more", b"more").write(&good);
    let made = backup::restore(&good, &place.join("restored"), Unsound::Refused).await;
    assert_eq!(made.expect("restored").manifest.files.len(), 4);
    assert_eq!(fs::read(place.join("restored/papers/more")).expect("a file"), b"more");
}

#[tokio::test]
async fn one_of_a_newer_program_is_refused_and_one_of_an_older_is_brought_up() {
    let (_house, place, file) = backed_up().await;
    let whole = Archive::read(&file);
    let bad = place.path().join("bad.zip");
    for (field, value) in [("format", 2), ("database", latest() + 1)] {
        whole.clone().with_manifest(|it| it[field] = value.into()).write(&bad);
        let trouble = restored(&bad).await;
        assert!(matches!(trouble, Trouble::Newer(_)), "{field}: {trouble}");
        assert!(trouble.to_string().contains("made by a newer program"), "{trouble}");
    }
    // As the very first program says of its own. (The tables are those of today.)
    let older = "delete from _sqlx_migrations where version > 1";
    let archive = with_database(&whole, place.path(), older).await;
    archive.with_manifest(|it| it["database"] = 1.into()).write(&bad);
    let restored = backup::restore(&bad, &place.path().join("restored"), Unsound::Refused)
        .await
        .expect("restored");
    assert_eq!(restored.look.version, 1);
}

#[tokio::test]
async fn one_whose_record_is_not_sound_is_refused() {
    let (house, place, file) = backed_up().await;
    let whole = Archive::read(&file);
    let tamper = "update medicine set name = 'Metoprolol' where id = 1";
    let archive = with_database(&whole, place.path(), tamper).await;
    let bad = place.path().join("bad.zip");
    archive.write(&bad);
    let trouble = restored(&bad).await;
    let words = "medicine 1 was changed without an entry: name";
    assert!(matches!(&trouble, Trouble::Unsound(it) if it == &[words]), "{trouble}");
    // An index that differs from its table is for SQLite to find: no history tells of it. In the
    // row the name stands before the address, in the history a quotation mark.
    let (mut bytes, address) = (whole.entries[1].1.clone(), b"bram@example.org");
    let found = bytes.windows(17).position(|it| it.ends_with(address) && !b"m\"".contains(&it[0]));
    bytes[found.expect("an index of addresses") + 1] = b'c';
    whole.with_content("kinsheaf.db", bytes).write(&bad);
    let trouble = restored(&bad).await;
    let broken = |it: &[String]| it.iter().any(|it| it.contains("missing from index"));
    assert!(matches!(&trouble, Trouble::Unsound(it) if broken(it)), "{trouble}");

    // Such a record is backed up all the same, and not in silence.
    sqlx::raw_sql(tamper).execute(&mut house.outside().await).await.expect("tampered");
    let (data, kept) = (house.folder().display().to_string(), place.path().join("unsound.zip"));
    let output = ran(&["backup", &kept.display().to_string()], &[("KINSHEAF_DATA", &data)]);
    assert_eq!(output.status.code(), Some(1));
    assert!(said(&output).contains("`restore` will refuse this backup"), "{}", said(&output));
    assert!(said(&output).contains(words) && kept.exists());
    even_so(&kept, words).await;
}

/// On an explicit word it is restored as it is, loudly, and the history tells so from then on.
async fn even_so(backup: &Path, words: &str) {
    let folder = backup.with_file_name("even so");
    let (file, data) = (backup.display().to_string(), folder.display().to_string());
    let output = ran(&["restore", &file, "--data", &data], &[]);
    assert_eq!(output.status.code(), Some(1));
    assert!(said(&output).contains("--even-if-unsound") && !folder.exists(), "{}", said(&output));
    let output = ran(&["restore", &file, "--data", &data, "--even-if-unsound"], &[]);
    assert_eq!(output.status.code(), Some(0), "{}", said(&output));
    assert!(said(&output).contains("THIS RECORD IS NOT SOUND"), "{}", said(&output));
    assert!(said(&output).contains(words), "{}", said(&output));
    // What was wrong before is still found, and nothing more.
    let settings = [("KINSHEAF_DATA", data.as_str())];
    let output = ran(&["verify"], &settings);
    assert_eq!(output.status.code(), Some(1));
    assert!(said(&output).contains("from a backup that was not sound:"), "{}", said(&output));
    assert_eq!(said(&output).matches(words).count(), 2, "{}", said(&output));
    assert_eq!(said(&output).matches("NOT sound").count(), 1, "{}", said(&output));
    let server = Server::start(&folder);
    assert!(server.get("/sign-in").contains("200 OK"));
}

#[tokio::test]
async fn nothing_is_restored_over_anything() {
    let (_house, place, file) = backed_up().await;
    let there = place.path().join("there");
    fs::create_dir(&there).expect("a folder");
    fs::write(there.join("note"), "mine").expect("a file");
    let restore = |file: &Path, folder: &Path| {
        let (file, folder) = (file.display().to_string(), folder.display().to_string());
        ran(&["restore", &file, "--data", &folder], &[])
    };
    for (file, folder, words) in [
        (&file, &there, "is not an empty folder"),
        (&file, &there.join("note"), "is not an empty folder"),
        (&file, &place.path().join("gone/there"), "No such file"),
        (&there.join("note"), &place.path().join("new"), "not a backup made by Kinsheaf"),
        (&place.path().join("gone"), &place.path().join("new"), "No such file"),
    ] {
        let output = restore(file, folder);
        assert_eq!(output.status.code(), Some(1), "{}", said(&output));
        assert!(said(&output).contains(words), "{words:?} is not in {}", said(&output));
    }
    assert_eq!(fs::read(there.join("note")).expect("a file"), b"mine");
    let left: Vec<PathBuf> =
        fs::read_dir(place.path()).expect("a folder").map(|it| it.expect("one").path()).collect();
    assert_eq!(left.len(), 2, "{left:?}");
    assert_eq!(ran(&["restore", "x.zip"], &[]).status.code(), Some(2));
}

/// The same backup with its database changed by another program, and rightly listed.
async fn with_database(archive: &Archive, place: &Path, sql: &str) -> Archive {
    let file = place.join("database");
    fs::write(&file, &archive.entries[1].1).expect("written");
    let options = SqliteConnectOptions::new().filename(&file);
    let mut db = SqliteConnection::connect_with(&options).await.expect("a database");
    sqlx::raw_sql(AssertSqlSafe(sql.to_owned())).execute(&mut db).await.expect("changed");
    db.close().await.expect("closed");
    let bytes = fs::read(&file).expect("a file");
    fs::remove_file(&file).expect("removed");
    archive.clone().with_content("kinsheaf.db", bytes)
}
