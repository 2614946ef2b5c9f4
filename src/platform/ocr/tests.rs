//! Programs of our own in the place of the real ones: what a child may do, and that it ends.

use super::*;
use std::{
    os::unix::fs::PermissionsExt,
    time::{Duration, Instant},
};

/// A folder with a program of this name.
fn with(name: &str, script: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join(name);
    fs::write(&file, format!("#!/bin/sh\n{script}\n")).expect("a script");
    fs::set_permissions(&file, fs::Permissions::from_mode(0o755)).expect("runs");
    folder
}

fn ocr(folder: &tempfile::TempDir) -> Ocr {
    Ocr::on(format!("{}:/usr/bin:/bin", folder.path().display()))
}

fn sent(folder: &tempfile::TempDir) -> PathBuf {
    let file = folder.path().join("sent");
    fs::write(&file, "a picture").expect("a file");
    file
}

#[tokio::test]
async fn a_picture_is_read_by_the_program_under_names_of_ours() {
    let folder = with("tesseract", r#"{ echo "$@"; cat "$1"; pwd; } > "$2.txt""#);
    let read = ocr(&folder).read(&sent(&folder), Form::Picture).await.expect("read");
    assert!(read.recognized && read.pages == 1 && !read.goes_on);
    let lines: Vec<&str> = read.words.lines().collect();
    assert_eq!(lines[0], "paper read -l eng --psm 1 txt");
    assert!(lines[1].starts_with("a picture"), "{lines:?}");
    assert!(!read.words.contains(&folder.path().display().to_string()), "{lines:?}");
}

#[tokio::test]
async fn what_fails_is_missing_or_writes_without_end_is_told_apart() {
    let folder = with("tesseract", "exit 3");
    let (it, file) = (ocr(&folder), sent(&folder));
    assert_eq!(it.read(&file, Form::Picture).await, Err(Unread::Broken));
    let gone = folder.path().join("gone");
    assert_eq!(it.read(&gone, Form::Picture).await, Err(Unread::NoFile));
    let none = Ocr::on(folder.path().join("nowhere"));
    assert_eq!(none.read(&file, Form::Picture).await, Err(Unread::Missing("tesseract")));
    assert!(!none.reads(Form::Pdf) && none.missing() == Some("tesseract"));
    let writes = with("tesseract", r#"yes a long line of words | head -c 200000000 > "$2.txt""#);
    let read = ocr(&writes).read(&file, Form::Picture).await;
    assert!(read.is_err() || read.is_ok_and(|it| it.words.len() as u64 <= MOST_TEXT));
    let eats =
        with("tesseract", r#"x=$(head -c 3000000000 /dev/zero | tr '\0' a); echo "$x" > "$2.txt""#);
    // On a busy machine its time may be over before its memory is.
    let read = ocr(&eats).read(&file, Form::Picture).await;
    assert!(matches!(read, Err(Unread::Broken | Unread::TooLong)), "{read:?}");
}

#[test]
fn one_that_does_not_end_is_ended_with_what_it_started() {
    let folder = with("slow", "sleep 300 & echo $! > started; sleep 300");
    let (began, ends) = (Instant::now(), AtomicBool::new(false));
    let (program, path) = (folder.path().join("slow"), OsString::from("/usr/bin:/bin"));
    let most = Duration::from_millis(500);
    let ran = child::within(most, (&program, &[]), (folder.path(), &path), &ends);
    assert_eq!(ran, Err(Unread::TooLong));
    assert!(began.elapsed() < Duration::from_secs(20));
    let started = fs::read_to_string(folder.path().join("started")).expect("a number");
    let state = || fs::read_to_string(format!("/proc/{}/stat", started.trim())).unwrap_or_default();
    let is_gone = |it: &str| it.is_empty() || it.contains(") Z ");
    // What was killed is gone soon, and not at once.
    let soon = (0..100).any(|_| {
        std::thread::sleep(Duration::from_millis(50));
        is_gone(&state())
    });
    assert!(soon, "it still runs: {}", state());
}

#[tokio::test]
async fn one_that_is_being_read_ends_when_the_house_does() {
    let folder = with("tesseract", "sleep 300");
    let (it, file) = (Arc::new(ocr(&folder)), sent(&folder));
    let ending = it.clone();
    let read = tokio::spawn(async move { it.read(&file, Form::Picture).await });
    tokio::time::sleep(Duration::from_millis(200)).await;
    ending.end();
    let read = tokio::time::timeout(Duration::from_secs(20), read).await.expect("in time");
    assert_eq!(read.expect("no panic"), Err(Unread::Ended));
}

#[tokio::test]
async fn a_pdf_is_read_as_text_and_its_pictures_by_eye() {
    let folder =
        with("pdftotext", r#"printf 'A letter with its words in it as plain text\f\f' > read.txt"#);
    for (name, script) in [
        ("pdftoppm", r#"[ "$3" = 2 ] && echo picture > page.png"#),
        ("tesseract", r#"cat "$1" > "$2.txt""#),
    ] {
        let other = with(name, script);
        fs::copy(other.path().join(name), folder.path().join(name)).expect("copied");
    }
    let read = ocr(&folder).read(&sent(&folder), Form::Pdf).await.expect("read");
    assert_eq!(read.words, "A letter with its words in it as plain text\n\u{c}\npicture");
    assert!(read.recognized && read.pages == 2 && !read.goes_on);
}
