//! A backup: one zip file with all of a data folder that belongs to the record.
//!
//! In it: `manifest.json`, then each file below `data/` in the order of the manifest, then the
//! seal. The zip is a plain one, so that a family without this program can still open it. A
//! restore is promised to be all or nothing: every byte is accounted for before a folder appears.
//!
//! `contents` says what belongs, `manifest` and `seal` say what must be there, `pack` makes a
//! backup, `restore` reads one. A record whose history does not hold is restored only on an explicit
//! word, and `unsound` has the history tell of it.

mod contents;
mod manifest;
mod pack;
mod restore;
mod seal;
mod sum;
mod unsound;

use crate::platform::{
    db::{Look, OpenError},
    error::Error,
};
pub use manifest::{Listed, Manifest};
pub use pack::make;
pub use restore::{Unsound, restore};
use std::{error, fmt, io, path::Path};

/// Where the manifest stands in the archive: first, so that it can be read before all else.
const MANIFEST: &str = "manifest.json";
/// What stands before the path of each file of the data folder.
const DATA: &str = "data/";

/// A backup that was made or restored: what it holds, and what its database says of itself.
pub struct Kept {
    pub manifest: Manifest,
    pub look: Look,
}

/// Why there is no backup, or why one is not restored. The text is for the one at the command
/// line.
#[derive(Debug)]
pub enum Trouble {
    /// A file stands where the backup should go.
    Taken(String),
    /// The backup would lie in the folder that it is made of.
    Inside,
    /// Another backup of the same folder is being made.
    UnderWay,
    /// Something in the data folder that an archive cannot keep as it is.
    Odd(String),
    /// A file of the data folder is not the same at the second look.
    Moved(String),
    NotEmpty(String),
    NotABackup,
    CutShort,
    /// What in the backup is not as it was made.
    Altered(String),
    /// The format or the database is newer than this program.
    Newer(String),
    Unsound(Vec<String>),
    Database(String),
    File(String, io::Error),
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::Taken(file) => write!(f, "{file} is there already and is left as it is."),
            Trouble::Inside => f.write_str(
                "The backup would lie in the data folder, and be part of the next one. Choose a place outside.",
            ),
            Trouble::UnderWay => f.write_str("Another backup of this folder is being made."),
            Trouble::Odd(path) => write!(
                f,
                "{path} in the data folder cannot be backed up: it is not a plain file or folder, or its name cannot be kept in an archive."
            ),
            Trouble::Moved(path) => {
                write!(f, "{path} changed while it was read. Nothing was kept; try again.")
            }
            Trouble::NotEmpty(folder) => write!(
                f,
                "{folder} is not an empty folder. A backup is restored into a new or an empty one only, so that nothing is overwritten."
            ),
            Trouble::NotABackup => f.write_str("This is not a backup made by Kinsheaf."),
            Trouble::CutShort => f.write_str(
                "The backup is cut short: its end is missing. Nothing was restored; take another one.",
            ),
            Trouble::Altered(what) => write!(
                f,
                "The backup is not as it was made: {what}. Nothing was restored; take another one."
            ),
            Trouble::Newer(what) => write!(
                f,
                "The backup was made by a newer program: {what}. Nothing was restored; use that program."
            ),
            Trouble::Unsound(faults) => write!(
                f,
                "The record in the backup is not sound. Nothing was restored.\n  {}\nTry an earlier backup. If you have none, add --even-if-unsound: this one is then restored as it is, and the history tells so.",
                faults.join("\n  ")
            ),
            Trouble::Database(e) => write!(f, "The database cannot be read: {e}"),
            Trouble::File(what, e) => write!(f, "{what}: {e}"),
        }
    }
}

impl error::Error for Trouble {}

impl From<OpenError> for Trouble {
    fn from(e: OpenError) -> Self {
        Trouble::Database(e.to_string())
    }
}

impl From<Error> for Trouble {
    fn from(e: Error) -> Self {
        Trouble::Database(format!("{e:?}"))
    }
}

/// An error of the file system, with the path it happened at.
fn at(path: &Path) -> impl FnOnce(io::Error) -> Trouble {
    let path = path.display().to_string();
    |e| Trouble::File(path, e)
}
