//! The words of papers, as a program read them off their files: each file once, and what is still to be
//! read.
//!
//! They are not the record, and no history tells of them: they say what a machine made out, the search
//! finds a paper by them, and they are what a proposal is made from. Who does not see a paper does not see its words.

pub mod store;

use crate::base::ids::PaperId;
use std::collections::HashMap;
use time::Duration;

/// How often a file is tried before it is left: once, and twice again.
pub const TRIES: i64 = 3;

/// How long it rests after so many tries that failed.
pub fn rest(tries: i64) -> Duration {
    Duration::minutes(5 * tries.max(1))
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, sqlx::Type)]
#[sqlx(rename_all = "lowercase")]
pub enum State {
    Waiting,
    Read,
    #[sqlx(rename = "not read")]
    NotRead,
}

/// What became of one page.
#[derive(Clone, Debug)]
pub struct PageText {
    pub paper_id: PaperId,
    /// `None`: nobody has put it into the queue yet.
    pub state: Option<State>,
    pub words: Option<String>,
    pub recognized: bool,
    pub goes_on: bool,
    pub reason: Option<String>,
}

/// What stands on a paper, all its pages together.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PaperText {
    pub words: String,
    /// Pages that are still to be read.
    pub waits: usize,
    /// Letters were made out from a picture, and may be wrong.
    pub recognized: bool,
    /// There are more pages than were read.
    pub goes_on: bool,
    /// Why a page was not read.
    pub not_read: Option<String>,
}

impl PaperText {
    /// All that can be read was read: a proposal can be made from it.
    pub fn is_whole(&self) -> bool {
        self.waits == 0
    }

    pub fn is_empty(&self) -> bool {
        self.words.trim().is_empty()
    }

    /// What is said of it while nothing can be proposed.
    pub fn unread(&self) -> Option<String> {
        match (&self.not_read, self.is_whole(), self.is_empty()) {
            (_, false, _) => Some("Its words are still to be read".into()),
            (Some(why), ..) => Some(format!("Not read: {why}")),
            (None, true, true) => Some("No words were found on it".into()),
            _ => None,
        }
    }

    fn with(mut self, page: PageText) -> PaperText {
        match page.state {
            None | Some(State::Waiting) => self.waits += 1,
            Some(State::NotRead) => self.not_read = page.reason.or(self.not_read),
            Some(State::Read) => {
                let words = page.words.unwrap_or_default();
                let gap = if self.words.is_empty() || words.is_empty() { "" } else { "\n\n" };
                self.words = format!("{}{gap}{words}", self.words);
                self.recognized |= page.recognized;
                self.goes_on |= page.goes_on;
            }
        }
        self
    }
}

/// The pages of each paper together, in their order.
pub fn together(pages: Vec<PageText>) -> HashMap<PaperId, PaperText> {
    let mut all: HashMap<PaperId, PaperText> = HashMap::new();
    for page in pages {
        let it = all.entry(page.paper_id).or_default();
        *it = std::mem::take(it).with(page);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(paper: i64, state: Option<State>, words: &str) -> PageText {
        PageText {
            paper_id: paper.into(),
            state,
            words: (state == Some(State::Read)).then(|| words.to_owned()),
            recognized: true,
            goes_on: false,
            reason: (state == Some(State::NotRead)).then(|| words.to_owned()),
        }
    }

    #[test]
    fn the_pages_of_a_paper_are_one_text() {
        let pages = vec![
            page(1, Some(State::Read), "Dear Ottoline,"),
            page(1, Some(State::Read), "with kind regards"),
            page(2, Some(State::Read), "Amount due"),
            page(2, Some(State::NotRead), "it is damaged"),
            page(3, Some(State::Read), "first"),
            page(3, None, ""),
        ];
        let all = together(pages);
        let of = |id: i64| &all[&PaperId::from(id)];
        assert_eq!(of(1).words, "Dear Ottoline,\n\nwith kind regards");
        assert!(of(1).is_whole() && of(1).not_read.is_none());
        assert_eq!(
            (of(2).words.as_str(), of(2).not_read.as_deref()),
            ("Amount due", Some("it is damaged"))
        );
        assert!(of(2).is_whole() && !of(3).is_whole());
    }
}
