//! A page of a paper: a picture, or all of a PDF, with its place and how far it is turned.

use crate::audited;
use crate::base::ids::{PaperId, PaperPageId, PersonId};
use crate::platform::files::{arriving::Arrival, paper::Media};

#[derive(Clone, Debug, PartialEq)]
pub struct PaperPage {
    pub id: PaperPageId,
    pub person_id: PersonId,
    pub paper_id: PaperId,
    pub place: i64,
    /// The sum of the file, among the house's files.
    pub file: String,
    pub media: Media,
    pub bytes: i64,
    /// Clockwise, in degrees: 0, 90, 180 or 270.
    pub turned: i64,
    pub version: i64,
}

audited!(PaperPage as "paper_page" {
    paper_id: "", place: "", file: "", media: "", bytes: "", turned: "",
} skip { id, person_id, version });

impl PaperPage {
    /// The only page of a paper that has just arrived.
    pub fn arrived(person_id: PersonId, paper_id: PaperId, file: &Arrival) -> PaperPage {
        PaperPage {
            id: PaperPageId::default(),
            person_id,
            paper_id,
            place: 1,
            file: file.sum.clone(),
            media: file.media,
            bytes: file.bytes,
            turned: 0,
            version: 1,
        }
    }

    /// A quarter further, as the clock goes.
    pub fn turned(&self) -> Self {
        PaperPage { turned: (self.turned + 90) % 360, ..self.clone() }
    }

    pub fn at(&self, paper_id: PaperId, place: i64) -> Self {
        PaperPage { paper_id, place, ..self.clone() }
    }

    pub fn is_picture(&self) -> bool {
        self.media != Media::Pdf
    }

    /// The name under which it is handed out: our own, never the one it came with.
    pub fn file_name(&self) -> String {
        format!("paper-{}-page-{}.{}", self.paper_id, self.place, self.media.ending())
    }

    /// "PDF, 1.2 MB"
    pub fn words(&self) -> String {
        format!("{}, {}", self.media.words(), size(self.bytes))
    }
}

/// "1.2 MB"
pub fn size(bytes: i64) -> String {
    match bytes {
        ..100_000 => format!("{} KB", (bytes + 500) / 1000),
        bytes => format!("{}.{} MB", bytes / 1_000_000, bytes % 1_000_000 / 100_000),
    }
}

/// The pages in another order: one stands a place earlier or later. Only those that moved.
pub fn moved(pages: &[PaperPage], id: PaperPageId, later: bool) -> Vec<(PaperPage, PaperPage)> {
    let mut order: Vec<&PaperPage> = pages.iter().collect();
    if let Some(at) = order.iter().position(|it| it.id == id) {
        let to = if later { at + 1 } else { at.wrapping_sub(1) };
        if to < order.len() {
            order.swap(at, to);
        }
    }
    placed(&order)
}

/// Those that stay when one goes, each at its new place.
pub fn closed_up(pages: &[PaperPage], gone: PaperPageId) -> Vec<(PaperPage, PaperPage)> {
    placed(&pages.iter().filter(|it| it.id != gone).collect::<Vec<_>>())
}

fn placed(order: &[&PaperPage]) -> Vec<(PaperPage, PaperPage)> {
    let numbered = (1..).zip(order);
    let moved = numbered.filter(|(place, page)| page.place != *place);
    moved.map(|(place, page)| ((*page).clone(), page.at(page.paper_id, place))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(id: i64, place: i64) -> PaperPage {
        PaperPage {
            id: id.into(),
            person_id: 1.into(),
            paper_id: 5.into(),
            place,
            file: "ab".into(),
            media: Media::Jpeg,
            bytes: 1_250_000,
            turned: 0,
            version: 1,
        }
    }

    fn places(moved: Vec<(PaperPage, PaperPage)>) -> Vec<(i64, i64)> {
        moved.iter().map(|(_, it)| (it.id.into(), it.place)).collect()
    }

    #[test]
    fn a_page_changes_places_with_its_neighbor() {
        let pages = [page(7, 1), page(8, 2), page(9, 3)];
        assert_eq!(places(moved(&pages, 8.into(), false)), [(8, 1), (7, 2)]);
        assert_eq!(places(moved(&pages, 8.into(), true)), [(9, 2), (8, 3)]);
        assert_eq!(places(moved(&pages, 7.into(), false)), []);
        assert_eq!(places(moved(&pages, 9.into(), true)), []);
        assert_eq!(places(closed_up(&pages, 7.into())), [(8, 1), (9, 2)]);
    }

    #[test]
    fn four_quarters_are_a_whole_turn() {
        let it = page(7, 1);
        assert_eq!(it.turned().turned, 90);
        assert_eq!(it.turned().turned().turned().turned(), it);
        assert_eq!(it.words(), "JPEG, 1.2 MB");
        assert_eq!(it.file_name(), "paper-5-page-1.jpg");
    }
}
