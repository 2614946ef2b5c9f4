//! A backup taken apart and put together again, sealed by what the format says and not by the
//! program's own code: so that a wrong backup can be made in which only one thing is wrong.

use super::{Family, TestHouse};
use kinsheaf::{base::clock::Instant, platform::backup};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::{
    fs,
    io::{Cursor, Read, Write},
    path::{Path, PathBuf},
};
use tempfile::TempDir;
use zip::{ZipArchive, ZipWriter, write::SimpleFileOptions};

#[derive(Clone)]
pub struct Archive {
    /// Each entry in order: its name and what it holds.
    pub entries: Vec<(String, Vec<u8>)>,
}

impl Archive {
    pub fn read(file: &Path) -> Archive {
        let mut zip = ZipArchive::new(fs::File::open(file).expect("a file")).expect("a zip");
        let mut entries = Vec::new();
        for number in 0..zip.len() {
            let name = zip.name_for_index(number).expect("an entry").expect("a name").into_owned();
            let mut bytes = Vec::new();
            zip.by_index(number).expect("an entry").read_to_end(&mut bytes).expect("its bytes");
            entries.push((name, bytes));
        }
        Archive { entries }
    }

    pub fn write(&self, file: &Path) {
        let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
        zip.set_comment("-".repeat(64)).expect("a comment");
        for (name, bytes) in &self.entries {
            zip.start_file(name, SimpleFileOptions::default()).expect("an entry");
            zip.write_all(bytes).expect("its bytes");
        }
        let mut whole = zip.finish().expect("a zip").into_inner();
        let before = whole.len() - 64;
        let seal = hex::encode(Sha256::digest(&whole[..before]));
        whole[before..].copy_from_slice(seal.as_bytes());
        fs::write(file, whole).expect("written");
    }

    pub fn names(&self) -> Vec<&str> {
        self.entries.iter().map(|(name, _)| name.as_str()).collect()
    }

    pub fn manifest(&self) -> Value {
        serde_json::from_slice(&self.entries[0].1).expect("a manifest")
    }

    /// Another manifest, made from this one.
    pub fn with_manifest(mut self, change: impl FnOnce(&mut Value)) -> Archive {
        let mut manifest = self.manifest();
        change(&mut manifest);
        self.entries[0].1 = manifest.to_string().into_bytes();
        self
    }

    /// One more file, and rightly listed.
    pub fn with_file(mut self, path: &str, bytes: &[u8]) -> Archive {
        self.entries.push((format!("data/{path}"), bytes.to_vec()));
        self.with_manifest(|it| {
            let listed = serde_json::json!({
                "path": path, "size": bytes.len(), "sha256": hex::encode(Sha256::digest(bytes)),
            });
            it["files"].as_array_mut().expect("files").push(listed);
        })
    }

    /// Another content of a file that is there, and rightly listed.
    pub fn with_content(mut self, path: &str, bytes: Vec<u8>) -> Archive {
        let (size, sum) = (bytes.len(), hex::encode(Sha256::digest(&bytes)));
        let name = format!("data/{path}");
        let entry = self.entries.iter_mut().find(|(it, _)| *it == name).expect("an entry");
        entry.1 = bytes;
        self.with_manifest(|it| {
            let files = it["files"].as_array_mut().expect("files");
            let listed = files.iter_mut().find(|it| it["path"] == path).expect("listed");
            (listed["size"], listed["sha256"]) = (size.into(), sum.into());
        })
    }
}

/// A house with a few rows, two files beside the database, and a backup of it.
pub async fn backed_up() -> (TestHouse, TempDir, PathBuf) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for name in ["Warfarin", "Furosemide"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200);
    }
    let data = family.house.folder();
    fs::create_dir_all(data.join("papers/ab")).expect("a folder");
    let paper: Vec<u8> = (0..9000u32).map(|it| ((it * it) >> 3) as u8).collect();
    fs::write(data.join("papers/ab/card.pdf"), paper).expect("a file");
    fs::write(data.join("secret.key"), "rosin").expect("a file");
    let place = TempDir::new().expect("a folder");
    let file = place.path().join("whole.zip");
    backup::make(data, &file, Instant::from_unix(1_795_619_520)).await.expect("made");
    (family.house, place, file)
}
