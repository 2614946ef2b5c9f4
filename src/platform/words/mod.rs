//! Words looked up among texts, by SQLite's own index of words (FTS5).
//!
//! What one reader may see of a record lies on a [`Shelf`] of hers, an index in memory. So nothing
//! that is hidden from her is in it, and neither what is found, nor how many, nor a word that is
//! proposed can tell of it. [`Shelves`] keeps the last few; they are laid anew when anything in the
//! record has changed. Nothing of it is written to the disk, so it is in no backup.

mod sheets;
mod shelf;
mod shelves;

pub use sheets::{Sheet, Sheets};
pub use shelf::{Excerpt, Shelf, ids, json};
pub use shelves::{Key, Known, Shelves};
use time::Date;

/// One item, as it is found.
#[derive(Clone, Debug, Default)]
pub struct Leaf {
    pub kind: &'static str,
    pub item: i64,
    pub title: String,
    /// What it says, of which a part is shown.
    pub text: String,
    /// What it is found by and is never shown: a number without its blanks.
    pub also: String,
    pub day: Option<Date>,
}
