//! The words of a picture or a PDF, as other people's programs read them: tesseract for pictures, poppler
//! for PDFs. Both run on this machine, and nothing leaves it.
//!
//! What a member sends is trusted with nothing: each program is a child with little time, little memory
//! and a folder of its own (`child`), and gets names that are ours. Two run at a time, behind everything
//! else. Where a program is missing, that is an answer, and nothing else in the house needs it.

mod child;
mod clean;
mod pdf;
#[cfg(test)]
mod tests;

use std::{
    ffi::OsString,
    fs::{self, File},
    io::{self, Read},
    path::{Path, PathBuf},
    sync::{
        Arc,
        atomic::{AtomicBool, Ordering},
    },
};
use tokio::sync::Semaphore;

/// How many papers are read at a time: there are pages to be answered beside it.
pub const AT_ONCE: usize = 2;
/// Of a long PDF so many pages are read: what a paper is stands on its first ones.
pub const MOST_PAGES: usize = 20;
/// So much text is kept of one file, in bytes; a dense page has about 5,000 (common practice, no source).
const MOST_TEXT: u64 = 400_000;

/// What a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    Picture,
    Pdf,
}

/// What stands on a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Text {
    pub words: String,
    /// How many pages were read, and whether there are more.
    pub pages: i64,
    pub goes_on: bool,
    /// Whether letters were made out from a picture, and may be wrong.
    pub recognized: bool,
}

/// Why there is no text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// This program is not on the machine: another day it may be.
    Missing(&'static str),
    /// The house was told to stop meanwhile.
    Ended,
    TooLong,
    NoFile,
    Broken,
}

impl Unread {
    pub fn says(self) -> &'static str {
        match self {
            Unread::Missing(_) => "the program that reads it is not on the server",
            Unread::Ended => "the server was stopped meanwhile",
            Unread::TooLong => "reading it took longer than two minutes",
            Unread::NoFile => "its file is not on the server's disk",
            Unread::Broken => "it is damaged, or too large to be read",
        }
    }
}

/// What reads: the folders in which the programs are looked for.
pub struct Ocr {
    path: OsString,
    turns: Semaphore,
    ends: Arc<AtomicBool>,
}

impl Ocr {
    /// With the programs on a search path, spelled as the system spells its own.
    pub fn on(path: impl Into<OsString>) -> Ocr {
        Ocr { path: path.into(), turns: Semaphore::new(AT_ONCE), ends: Arc::default() }
    }

    /// The first program that is missing for what is read, if any.
    pub fn missing(&self) -> Option<&'static str> {
        ["tesseract", "pdftotext", "pdftoppm"].into_iter().find(|it| self.program(it).is_err())
    }

    pub fn reads(&self, form: Form) -> bool {
        match form {
            Form::Picture => self.program("tesseract").is_ok(),
            Form::Pdf => self.program("pdftotext").is_ok(),
        }
    }

    /// Ends what is being read now, and all that would follow.
    pub fn end(&self) {
        self.ends.store(true, Ordering::SeqCst);
    }

    /// The words of a file of the house's own.
    pub async fn read(&self, file: &Path, form: Form) -> Result<Text, Unread> {
        let _turn = self.turns.acquire().await.map_err(|_| Unread::Ended)?;
        let (file, ends, path) = (file.to_owned(), self.ends.clone(), self.path.clone());
        let read = move || Desk::at(&file, path, ends).and_then(|desk| desk.read(form));
        match tokio::task::spawn_blocking(read).await {
            Ok(read) => read,
            Err(e) => {
                tracing::error!(error = %e, "a paper could not be read");
                Err(Unread::Broken)
            }
        }
    }

    /// Whether the house was told to stop.
    pub fn has_ended(&self) -> bool {
        self.ends.load(Ordering::SeqCst)
    }

    /// Whether PDFs can be drawn.
    pub fn draws(&self) -> bool {
        self.program("pdftoppm").is_ok()
    }

    /// The first page of a PDF as a small PNG.
    pub async fn first_page(&self, file: &Path) -> Result<Vec<u8>, Unread> {
        let _turn = self.turns.acquire().await.map_err(|_| Unread::Ended)?;
        let (file, ends, path) = (file.to_owned(), self.ends.clone(), self.path.clone());
        let draw = move || Desk::at(&file, path, ends).and_then(|desk| pdf::first_page(&desk));
        tokio::task::spawn_blocking(draw).await.unwrap_or(Err(Unread::Broken))
    }

    fn program(&self, name: &'static str) -> Result<PathBuf, Unread> {
        program(&self.path, name)
    }
}

fn program(path: &OsString, name: &'static str) -> Result<PathBuf, Unread> {
    let mut all = std::env::split_paths(path).map(|it| it.join(name));
    all.find(|it| it.is_absolute() && it.is_file()).ok_or(Unread::Missing(name))
}

/// What one file is read on: a folder of its own with the file in it under a name of ours.
struct Desk {
    folder: tempfile::TempDir,
    path: OsString,
    ends: Arc<AtomicBool>,
}

/// The name of the file in that folder.
const PAPER: &str = "paper";

impl Desk {
    fn at(file: &Path, path: OsString, ends: Arc<AtomicBool>) -> Result<Desk, Unread> {
        let file = fs::canonicalize(file).map_err(|_| Unread::NoFile)?;
        let folder = tempfile::Builder::new().prefix("kinsheaf-ocr-").tempdir().map_err(broken)?;
        std::os::unix::fs::symlink(file, folder.path().join(PAPER)).map_err(broken)?;
        Ok(Desk { folder, path, ends })
    }

    fn read(&self, form: Form) -> Result<Text, Unread> {
        match form {
            Form::Pdf => pdf::read(self),
            Form::Picture => {
                let words = clean::text(&self.picture(PAPER)?);
                Ok(Text { words, pages: 1, goes_on: false, recognized: true })
            }
        }
    }

    /// The letters of a picture in the folder. With `--psm 1` tesseract first finds out which side is up:
    /// a phone lays a photo on its side and only notes that beside it.
    fn picture(&self, name: &str) -> Result<String, Unread> {
        self.run("tesseract", &[name, "read", "-l", "eng", "--psm", "1", "txt"])?;
        self.text("read.txt")
    }

    fn run(&self, name: &'static str, arguments: &[&str]) -> Result<(), Unread> {
        let program = program(&self.path, name)?;
        child::run((&program, arguments), self.folder.path(), &self.path, &self.ends)
    }

    /// What a program wrote, as much of it as is kept.
    fn text(&self, name: &str) -> Result<String, Unread> {
        Ok(String::from_utf8_lossy(&self.bytes(name, MOST_TEXT)?).into_owned())
    }

    fn bytes(&self, name: &str, most: u64) -> Result<Vec<u8>, Unread> {
        let file = File::open(self.folder.path().join(name)).map_err(broken)?;
        let mut bytes = Vec::new();
        file.take(most).read_to_end(&mut bytes).map_err(broken)?;
        Ok(bytes)
    }
}

fn broken(e: io::Error) -> Unread {
    tracing::warn!(error = %e, "reading a paper");
    Unread::Broken
}
