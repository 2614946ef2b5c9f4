//! The shelves of those who searched last. One is good for as long as nothing has changed: neither
//! the record, nor the pages of its papers, nor how far the reader's place reaches.

use super::Shelf;
use crate::base::ids::{MemberId, PersonId};
use std::sync::{Arc, Mutex, PoisonError};

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

#[derive(Default)]
pub struct Shelves(Mutex<Vec<(Key, Arc<Shelf>)>>);

impl Shelves {
    pub fn of(&self, key: &Key) -> Option<Arc<Shelf>> {
        let all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.iter().find(|it| it.0 == *key).map(|it| it.1.clone())
    }

    /// In place of what the same reader had of this record.
    pub fn keep(&self, key: Key, shelf: Arc<Shelf>) {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.retain(|(it, _)| (it.person, it.member) != (key.person, key.member));
        if all.len() >= MOST {
            all.remove(0);
        }
        all.push((key, shelf));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashMap;

    #[tokio::test]
    async fn a_reader_has_one_shelf_of_a_record_and_the_oldest_goes() {
        let shelves = Shelves::default();
        let shelf = Arc::new(Shelf::laid(Vec::new(), HashMap::new()).await.expect("a shelf"));
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
}
