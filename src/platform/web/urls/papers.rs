//! The addresses of papers: those that are filed, and the tray.

use super::{Address, record};
use crate::base::ids::{ArrivalId, PaperId, PaperPageId};

pub fn papers() -> Address {
    record("/papers")
}

pub fn paper(id: impl Into<PaperId>) -> Address {
    let id = id.into();
    record(format!("/papers/{id}"))
}

/// A page as it was sent.
pub fn paper_page(id: impl Into<PaperId>, page: impl Into<PaperPageId>) -> Address {
    let page = page.into();
    paper(id).and(&format!("pages/{page}"))
}

/// What looks like it, side by side with it.
pub fn paper_alike(id: impl Into<PaperId>) -> Address {
    paper(id).and("alike")
}

/// What waits to be filed.
pub fn tray() -> Address {
    record("/papers/tray")
}

/// A file that comes in pieces.
pub fn sending(token: &str) -> Address {
    tray().and(&format!("sending/{token}"))
}

/// What was read of the papers.
pub fn paper_words() -> Address {
    record("/papers/words")
}

/// What became of a pile that the reader sent.
pub fn arrival(id: impl Into<ArrivalId>) -> Address {
    let id = id.into();
    tray().and(&format!("arrived/{id}"))
}
