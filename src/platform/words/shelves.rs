//! The shelves of those who searched last. One is good for as long as nothing has changed: neither
//! the record, nor the pages of its papers, nor how far the reader's place reaches.

use super::Shelf;
use crate::base::ids::{MemberId, PersonId};
use std::{
    collections::HashSet,
    sync::{Arc, Mutex, PoisonError},
};
use tokio::sync::OnceCell;

/// Whose shelf, of which record, as it stood when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Key {
    pub person: PersonId,
    pub member: MemberId,
    /// What has changed since, if anything has: another mark, another shelf.
    pub stands: String,
}

/// So many at once: each is some hundred kilobytes after a year.
const MOST: usize = 16;

/// The words that stand on some page, read when they are first asked for: to look up the hundreds that are one
/// edit away from a word in the index takes longer than all the rest of a search.
pub type Known = OnceCell<HashSet<String>>;

#[derive(Default)]
pub struct Shelves {
    all: Mutex<Vec<(Key, Arc<Shelf>)>>,
    /// As the pages stood at this mark.
    known: Mutex<(i64, Arc<Known>)>,
}

impl Shelves {
    pub fn of(&self, key: &Key) -> Option<Arc<Shelf>> {
        let all = self.all.lock().unwrap_or_else(PoisonError::into_inner);
        all.iter().find(|it| it.0 == *key).map(|it| it.1.clone())
    }

    /// In place of what the same reader had of this record.
    pub fn keep(&self, key: Key, shelf: Arc<Shelf>) {
        let mut all = self.all.lock().unwrap_or_else(PoisonError::into_inner);
        all.retain(|(it, _)| (it.person, it.member) != (key.person, key.member));
        if all.len() >= MOST {
            all.remove(0);
        }
        all.push((key, shelf));
    }

    /// One for all readers, for as long as no page has changed.
    pub fn known(&self, mark: i64) -> Arc<Known> {
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        if known.0 != mark {
            *known = (mark, Arc::default());
        }
        known.1.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::platform::words::Sheets;

    #[tokio::test]
    async fn a_reader_has_one_shelf_of_a_record_and_the_oldest_goes() {
        let shelves = Shelves::default();
        let laid = Shelf::laid(Vec::new(), Sheets::default(), Arc::default()).await;
        let shelf = Arc::new(laid.expect("a shelf"));
        let key = |member: i64, stands: &str| Key {
            person: 1.into(),
            member: member.into(),
            stands: stands.into(),
        };
        shelves.keep(key(1, "a"), shelf.clone());
        shelves.keep(key(1, "b"), shelf.clone());
        assert!(shelves.of(&key(1, "a")).is_none() && shelves.of(&key(1, "b")).is_some());
        for member in 2..=17 {
            shelves.keep(key(member, "b"), shelf.clone());
        }
        assert!(shelves.of(&key(1, "b")).is_none() && shelves.of(&key(17, "b")).is_some());
    }

    #[tokio::test]
    async fn the_words_of_pages_are_read_once_until_a_page_changes() {
        let shelves = Shelves::default();
        let words = |known: Arc<Known>, word: &'static str| async move {
            let read = known.get_or_init(|| async { HashSet::from([word.to_owned()]) }).await;
            read.iter().cloned().collect::<Vec<_>>()
        };
        assert_eq!(words(shelves.known(7), "first").await, ["first"]);
        assert_eq!(words(shelves.known(7), "second").await, ["first"]);
        assert_eq!(words(shelves.known(8), "third").await, ["third"]);
    }
}
