//! Printed sheets: data in, PDF out.
//!
//! A *sheet* is a typst source under `templates/sheets`; a *press* sets it over JSON that is already in words. Promises:
//! the sheet sees five things only (itself, the frame, `data.json`, the photos handed over, the fonts compiled in): no disk,
//! no network, no clock.
//! What people typed reaches it as data, never as markup. What comes out is PDF/UA-1 (ISO 14289-1:2014, tagged for
//! screen readers) or an error. A character that no font here can draw prints as □, and the sheet says so in its foot:
//! an emergency sheet must not fail over an emoji.

mod letters;
#[cfg(test)]
mod samples;
mod table;
#[cfg(test)]
mod tests;

use std::fmt;
use std::sync::{Arc, OnceLock};

use serde_json::Value;
use tokio::sync::Semaphore;
use tokio::task::spawn_blocking;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Bytes, Smart};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use self::table::Table;

/// Each render may hold some tens of megabytes while it runs; two at once keep a small machine small.
const AT_ONCE: usize = 2;

const FRAME: &str = include_str!("../../templates/sheets/frame.typ");

/// In the order in which a character looks for a font that has it.
const FONTS: [&[u8]; 3] = [
    include_bytes!("../../static/fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
    include_bytes!("../../static/fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
    include_bytes!("../../static/fonts/DejaVuSans.ttf"),
];

/// The sheets that can be printed. The data each wants is described at the head of its source.
#[derive(Clone, Copy, Debug)]
pub enum Sheet {
    Emergency,
    /// What is kept about the person, and who sees it: in large print, for her.
    Kept,
    /// Every medicine, for whoever prescribes, gives or checks.
    MedicineList,
    WalletCard,
    /// A week for the pill box.
    Week,
    /// What is taken in a day, with room for who gives it.
    Day,
    /// What changed among the medicines, for whoever has not been told.
    ChangeSlip,
    /// What to bring to a visit: changes, questions with room, what is overdue.
    Visit,
    /// The cards of insurance and identity, in their own size, with their numbers.
    Cards,
    /// Which directives stand, where the originals are, who has a copy.
    Directives,
}

impl Sheet {
    fn source(self) -> &'static str {
        match self {
            Sheet::Emergency => include_str!("../../templates/sheets/emergency.typ"),
            Sheet::Kept => include_str!("../../templates/sheets/kept.typ"),
            Sheet::MedicineList => include_str!("../../templates/sheets/medicines.typ"),
            Sheet::WalletCard => include_str!("../../templates/sheets/wallet.typ"),
            Sheet::Week => include_str!("../../templates/sheets/week.typ"),
            Sheet::Day => include_str!("../../templates/sheets/day.typ"),
            Sheet::ChangeSlip => include_str!("../../templates/sheets/slip.typ"),
            Sheet::Visit => include_str!("../../templates/sheets/visit.typ"),
            Sheet::Cards => include_str!("../../templates/sheets/cards.typ"),
            Sheet::Directives => include_str!("../../templates/sheets/directives.typ"),
        }
    }

    /// What its prints are called.
    pub fn name(self) -> &'static str {
        match self {
            Sheet::Emergency => "emergency sheet",
            Sheet::Kept => "sheet of what is kept",
            Sheet::MedicineList => "medicine list",
            Sheet::WalletCard => "wallet card",
            Sheet::Week => "week for the pill box",
            Sheet::Day => "sheet of a day",
            Sheet::ChangeSlip => "change slip",
            Sheet::Visit => "sheet before a visit",
            Sheet::Cards => "sheet of cards",
            Sheet::Directives => "register of directives",
        }
    }
}

/// Prints sheets. A clone shares the fonts and the two places; nothing is loaded before the first sheet.
#[derive(Clone)]
pub struct Press {
    stock: Arc<OnceLock<Stock>>,
    places: Arc<Semaphore>,
}

impl Press {
    #[expect(
        clippy::new_without_default,
        reason = "a press is made once, by the one who wires the program"
    )]
    pub fn new() -> Press {
        Press { stock: Arc::default(), places: Arc::new(Semaphore::new(AT_ONCE)) }
    }

    /// Sets `sheet` over `data` and returns the PDF. Waits for a place; runs on the blocking pool.
    ///
    /// # Errors
    /// When `data` lacks a key the sheet cannot do without, or the result would not be PDF/UA-1.
    pub async fn render(&self, sheet: Sheet, data: Value) -> Result<Vec<u8>, PressError> {
        self.render_with(sheet, data, Vec::new()).await
    }

    /// The same with photos, which the sheet sees as `photo-1`, `photo-2` and so on.
    ///
    /// # Errors
    /// As `render`, and when one of the photos is none that can be set.
    pub async fn render_with(
        &self,
        sheet: Sheet,
        data: Value,
        photos: Vec<Vec<u8>>,
    ) -> Result<Vec<u8>, PressError> {
        let place = self.places.clone().acquire_owned().await.map_err(PressError::said)?;
        let stock = self.stock.clone();
        let work = move || {
            // The place is held by the work itself: a request that goes away does not free it early.
            let _place = place;
            let pdf = stock.get_or_init(Stock::open).print(sheet, data, photos);
            comemo::evict(0);
            pdf
        };
        spawn_blocking(work).await.map_err(PressError::said)?
    }
}

/// Why there is no sheet. For the log, not for the reader of a page.
#[derive(Debug)]
pub struct PressError(String);

impl PressError {
    fn said(cause: impl fmt::Display) -> PressError {
        PressError(cause.to_string())
    }

    fn listed(problems: impl IntoIterator<Item = SourceDiagnostic>) -> PressError {
        let messages: Vec<_> =
            problems.into_iter().map(|problem| problem.message.to_string()).collect();
        PressError(messages.join("; "))
    }
}

impl fmt::Display for PressError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the sheet could not be set: {}", self.0)
    }
}

impl std::error::Error for PressError {}

/// What every render shares.
struct Stock {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

impl Stock {
    fn open() -> Stock {
        let fonts: Vec<Font> =
            FONTS.into_iter().flat_map(|face| Font::iter(Bytes::new(face))).collect();
        Stock {
            library: LazyHash::new(Library::default()),
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
        }
    }

    fn print(
        &self,
        sheet: Sheet,
        data: Value,
        photos: Vec<Vec<u8>>,
    ) -> Result<Vec<u8>, PressError> {
        let options = PdfOptions {
            creator: Smart::Custom(Some("Kinsheaf".into())),
            standards: PdfStandards::new(&[PdfStandard::Ua_1])
                .map_err(|e| PressError::said(e.message()))?,
            ..PdfOptions::default()
        };
        typst_pdf::pdf(&self.set_with(sheet, data, photos)?, &options).map_err(PressError::listed)
    }

    #[cfg(test)]
    fn set(&self, sheet: Sheet, data: Value) -> Result<PagedDocument, PressError> {
        self.set_with(sheet, data, Vec::new())
    }

    fn set_with(
        &self,
        sheet: Sheet,
        data: Value,
        photos: Vec<Vec<u8>>,
    ) -> Result<PagedDocument, PressError> {
        let data = letters::printable(&self.fonts, data);
        let table = Table::laid(self, (sheet.source(), FRAME), data.to_string(), photos)
            .map_err(PressError::said)?;
        typst::compile::<PagedDocument>(&table).output.map_err(PressError::listed)
    }
}
