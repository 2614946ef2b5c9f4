//! Programs in the place of tesseract, for a house without it: what stands on a picture is told before.

use super::TestHouse;
use kinsheaf::{
    across::papers::{alike, words::job},
    platform::audit::sha256,
};
use std::{fs, os::unix::fs::PermissionsExt, path::Path};

/// The house's own folder of programs, in which nothing lies at first.
pub fn folder(house: &TestHouse) -> std::path::PathBuf {
    house.folder().join("programs")
}

/// Puts a program there.
pub fn program(folder: &Path, name: &str, script: &str) {
    fs::create_dir_all(folder).expect("a folder");
    let file = folder.join(name);
    fs::write(&file, format!("#!/bin/sh\n{script}\n")).expect("a script");
    fs::set_permissions(&file, fs::Permissions::from_mode(0o755)).expect("runs");
}

/// All three programs; tesseract gives of each picture what was told of it.
pub fn installed(folder: &Path) {
    program(folder, "tesseract", r#"cp "$0.$(sha256sum < "$1" | cut -c 1-64)" "$2.txt""#);
    program(
        folder,
        "pdftotext",
        r#"for last; do :; done; printf 'Words of a PDF as they stand in it\f' > "$last""#,
    );
    program(folder, "pdftoppm", "exit 1");
}

/// What stands on a picture.
pub fn stands(folder: &Path, picture: &[u8], words: &str) {
    fs::write(folder.join(format!("tesseract.{}", sha256(picture))), words).expect("told");
}

/// Reads what waits, as the house does every minute.
pub async fn reads(house: &TestHouse) {
    job::work(&house.house).await.expect("read");
}

/// Looks at what waits to be compared, as the house does every minute after that.
pub async fn looks(house: &TestHouse) {
    alike::job::work(&house.house).await.expect("looked at");
}
