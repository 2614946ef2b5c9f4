//! A word that stands nowhere, taken for one that does: a letter too many or too few, another one,
//! or two that changed places.
//!
//! It is looked up among the words that the reader may see, so a word of what is hidden from her is
//! neither proposed nor makes a difference. Words with a digit are never taken for others: 50 is not 5.

use super::{store, words::Word};
use crate::platform::{db::View, error::Result, words::Shelf};
use std::{
    cmp::Reverse,
    collections::{BTreeSet, HashSet},
};

/// The letters that stay when accents are folded.
const LETTERS: &str = "abcdefghijklmnopqrstuvwxyzßæøœđðþłı";
/// Shorter words are a letter away from too many others; longer ones are no words.
const LENGTH: std::ops::RangeInclusive<usize> = 4..=40;

/// The word that is shown for it: of several the one that stands in most places, then the first in
/// the alphabet.
pub async fn forgiven<A>(view: &View<A>, shelf: &Shelf, typed: &str) -> Result<Option<Word>> {
    let plain = typed.chars().all(char::is_alphabetic);
    if !plain || !LENGTH.contains(&typed.chars().count()) {
        return Ok(None);
    }
    let near = within_one(typed);
    let on_leaves = shelf.known().await?;
    let on_pages = match shelf.pages.is_empty() {
        true => &HashSet::new(),
        false => shelf.known_on_pages.get_or_try_init(|| store::known(view)).await?,
    };
    let mut words = Vec::new();
    for text in near.into_iter().filter(|it| on_leaves.contains(it) || on_pages.contains(it)) {
        words.push(Word::look(view, shelf, &text).await?);
    }
    words.retain(|it| !it.leaves.whole.is_empty() || !it.pages.whole.is_empty());
    words.sort_by_key(|it| Reverse(it.leaves.whole.len() + it.pages.whole.len()));
    let best = words.into_iter().next();
    Ok(best.map(|it| Word { typed: Some(typed.to_owned()), ..it }))
}

/// Every word that is one edit away.
fn within_one(word: &str) -> BTreeSet<String> {
    let letters: Vec<char> = word.chars().collect();
    let mut near = BTreeSet::new();
    for at in 0..=letters.len() {
        let (before, rest) = letters.split_at(at);
        let with = |middle: &[char], rest: &[char]| [before, middle, rest].concat();
        if let [first, rest @ ..] = rest {
            near.insert(with(&[], rest));
            near.extend(LETTERS.chars().map(|it| with(&[it], rest)));
            if let [second, rest @ ..] = rest {
                near.insert(with(&[*second, *first], rest));
            }
        }
        near.extend(LETTERS.chars().map(|it| with(&[it], rest)));
    }
    near.remove(&letters);
    near.into_iter().map(String::from_iter).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_edit_of_each_kind_and_no_second_one() {
        let near = within_one("warfrin");
        for word in ["warfarin", "arfrin", "warrfin", "warfrim", "warfrina", "wałfrin"] {
            assert!(near.contains(word), "{word}");
        }
        for word in ["warfrin", "warfarim", "farfarin", ""] {
            assert!(!near.contains(word), "{word}");
        }
        // One less: 4; changed places: 3; another of 35 letters: 34 each; one more: 35 at 5 places, of
        // which 4 come about twice.
        assert_eq!(within_one("abcd").len(), 4 + 3 + 34 * 4 + 35 * 5 - 4);
    }
}
