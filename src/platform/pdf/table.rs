//! What a sheet can see while it is set: its own source, the frame, its data, the photos it is given and the fonts.
//! Everything else is refused.
//!
//! This is typst's `World`: the compiler asks it for files by id, and has no other way out.

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, PathError, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, World};

use super::Stock;

/// So many photos on one sheet: both sides of a stack of cards.
pub const MOST_PHOTOS: usize = 60;

/// All that one sheet can see while it is set.
pub struct Table<'a> {
    stock: &'a Stock,
    sheet: FileId,
    files: Vec<(FileId, Bytes)>,
}

impl<'a> Table<'a> {
    pub fn laid(
        stock: &'a Stock,
        (sheet, frame): (&'static str, &'static str),
        data: String,
        photos: Vec<Vec<u8>>,
    ) -> Result<Table<'a>, PathError> {
        let mut files = vec![
            (file("sheet.typ")?, Bytes::from_string(sheet)),
            (file("frame.typ")?, Bytes::from_string(frame)),
            (file("data.json")?, Bytes::from_string(data)),
        ];
        for (at, photo) in photos.into_iter().enumerate().take(MOST_PHOTOS) {
            files.push((file(&format!("photo-{}", at + 1))?, Bytes::new(photo)));
        }
        Ok(Table { stock, sheet: files[0].0, files })
    }
}

impl World for Table<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.stock.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.stock.book
    }

    fn main(&self) -> FileId {
        self.sheet
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let text = self.file(id)?.into_string().map_err(|_| FileError::InvalidUtf8)?;
        Ok(Source::new(id, text))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let found = self.files.iter().find(|(known, _)| *known == id);
        found.map(|(_, bytes)| bytes.clone()).ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.stock.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// Ids are kept for ever by typst: only the three fixed names and those of so many photos may come here.
fn file(name: &str) -> Result<FileId, PathError> {
    let path = VirtualPath::new(name)?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_sees_no_other_file_and_no_clock() {
        let stock = Stock::open();
        let table = Table::laid(&stock, ("", ""), "{}".into(), vec![vec![1]]).unwrap();
        assert!(table.file(file("photo-1").unwrap()).is_ok());
        assert_eq!(table.file(file("photo-2").unwrap()), Err(FileError::AccessDenied));
        assert!(table.file(file("data.json").unwrap()).is_ok());
        assert_eq!(table.file(file("Cargo.toml").unwrap()), Err(FileError::AccessDenied));
        assert!(table.today(None).is_none());
    }
}
