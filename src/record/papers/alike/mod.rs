//! Papers that look alike: the same letter photographed twice, which is no longer the same file.
//!
//! How a page looks from afar says whether it is laid out the same; letters of one sender are. So where the
//! words of both were read, these decide. What is kept of the looks is machinery, like the words; what
//! someone said of two papers is the record's (`pair`).
//!
//! Nothing is concluded: that two look alike is a question to a person.

#[cfg(test)]
mod measured;
pub mod pair;
pub mod pair_store;
pub mod store;

use super::proposals::tokens::parts;
use crate::platform::look::{BITS, Look};
use std::collections::HashMap;

// Measured on papers that are made (`tests/outside/papers_alike.py`, 60 letters, seed 20261126); `tests/run
// papers` measures a part of them anew and fails where they do not part. The README has the figures.

/// At most so many of the bits differ, where the words decide between those that are laid out alike.
pub const NEAR: u32 = 84;
/// At most so many, where the words of one were not read and nothing else decides.
pub const NEAR_ALONE: u32 = 40;
/// At least so much of the words they have in common.
pub const WORDS: f64 = 0.65;
/// And of the numbers: the bill of the next month has the same words.
pub const NUMBERS: f64 = 0.75;
/// With fewer words than this too little was read.
const FEWEST: usize = 12;
/// With fewer numbers than this they say nothing.
const FEW: usize = 3;

/// The words and the numbers on a page, each as often as it stands there.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    words: HashMap<String, usize>,
    numbers: HashMap<String, usize>,
}

impl Said {
    /// Nothing where too little was read.
    pub fn of(text: &str) -> Option<Said> {
        let (numbers, words): (Vec<_>, Vec<_>) =
            parts(text).into_iter().partition(|it| it.contains(|it: char| it.is_ascii_digit()));
        let words: Vec<_> = words.into_iter().filter(|it| it.chars().count() >= 3).collect();
        let enough = words.len() >= FEWEST;
        enough.then(|| Said { words: counted(words), numbers: counted(numbers) })
    }

    /// How much of the words they have in common, and of the numbers where there are enough.
    fn shares(&self, other: &Said) -> (f64, Option<f64>) {
        let enough = many(&self.numbers).max(many(&other.numbers)) >= FEW;
        let numbers = enough.then(|| share(&self.numbers, &other.numbers));
        (share(&self.words, &other.words), numbers)
    }
}

fn counted(all: Vec<String>) -> HashMap<String, usize> {
    let mut counts = HashMap::new();
    all.into_iter().for_each(|it| *counts.entry(it).or_default() += 1);
    counts
}

fn many(counts: &HashMap<String, usize>) -> usize {
    counts.values().sum()
}

/// Of the longer one so much stands on both.
fn share(a: &HashMap<String, usize>, b: &HashMap<String, usize>) -> f64 {
    let both: usize = a.iter().map(|(it, many)| (*many).min(b.get(it).copied().unwrap_or(0))).sum();
    both as f64 / many(a).max(many(b)).max(1) as f64
}

/// Why two pages are taken to look alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Why {
    /// Of the bits.
    differs: u32,
    /// What they have in common of the words; nothing where those of one were not read.
    words: Option<f64>,
}

impl Why {
    /// "91 % of their look agrees, and 98 % of their words"
    pub fn says(&self) -> String {
        let looks = percent(f64::from(BITS - self.differs) / f64::from(BITS));
        match self.words {
            Some(words) => {
                format!("{looks} of their look agrees, and {} of their words", percent(words))
            }
            None => format!(
                "{looks} of their look agrees; their words were not compared, for too few were read"
            ),
        }
    }
}

fn percent(share: f64) -> String {
    format!("{:.0} %", 100.0 * share)
}

/// Whether two looks are near enough for their words to be asked.
pub fn are_near(a: &Look, b: &Look) -> bool {
    a.distance(b) <= NEAR
}

/// Whether two pages look alike, with the words that were read of each.
pub fn alike(a: (&Look, Option<&Said>), b: (&Look, Option<&Said>)) -> Option<Why> {
    by(a.0.distance(b.0), a.1.zip(b.1))
}

fn by(differs: u32, said: Option<(&Said, &Said)>) -> Option<Why> {
    let Some((a, b)) = said else {
        return (differs <= NEAR_ALONE).then_some(Why { differs, words: None });
    };
    let (words, numbers) = a.shares(b);
    let agree = words >= WORDS && numbers.is_none_or(|it| it >= NUMBERS);
    (differs <= NEAR && agree).then_some(Why { differs, words: Some(words) })
}

/// Which of two comes closer.
pub fn nearer(a: &Why, b: &Why) -> std::cmp::Ordering {
    let words = |it: &Why| it.words.unwrap_or(0.0);
    words(b).total_cmp(&words(a)).then(a.differs.cmp(&b.differs))
}

#[cfg(test)]
mod tests {
    use super::*;

    const LETTER: &str = "Quarry Street Family Practice. Dear Ottoline Varga, we could not reach you by \
        telephone about your visit on March 3, 2026 at 10:30. Please call 218-555-0111 before March 9.";

    fn said(text: &str) -> Said {
        Said::of(text).expect("enough")
    }

    #[test]
    fn the_same_letter_is_alike_with_a_letter_made_out_wrong() {
        let (a, b) = (said(LETTER), said(&LETTER.replace("telephone", "te1ephone")));
        let found = by(60, Some((&a, &b))).expect("alike");
        assert!(found.says().starts_with("77 % of their look agrees, and 9"));
        assert_eq!(by(NEAR, Some((&a, &a))).and_then(|it| it.words), Some(1.0));
        assert_eq!(by(NEAR + 1, Some((&a, &a))), None, "laid out otherwise");
    }

    #[test]
    fn letters_of_one_sender_with_other_words_or_other_numbers_are_not() {
        let other = LETTER.replace(
            "we could not reach you by telephone about your visit on",
            "the result of your test has come and there is nothing to do since",
        );
        assert_eq!(by(0, Some((&said(LETTER), &said(&other)))), None);
        let next = LETTER.replace("March 3, 2026 at 10:30", "May 8, 2027 at 14:45");
        assert_eq!(by(0, Some((&said(LETTER), &said(&next)))), None, "the next of its kind");
        let (a, b) = (LETTER.replace(char::is_numeric, ""), LETTER.replace(char::is_numeric, ""));
        assert!(by(9, Some((&said(&a), &said(&b)))).is_some(), "without numbers the words do");
    }

    #[test]
    fn without_words_only_the_nearest_are() {
        assert_eq!(Said::of("Thank you 1 2 3"), None);
        assert!(by(NEAR_ALONE, None).is_some_and(|it| it.says().contains("were not compared")));
        assert_eq!(by(NEAR_ALONE + 1, None), None);
        let why = |differs, words| Why { differs, words };
        assert!(nearer(&why(50, Some(0.9)), &why(3, None)).is_lt());
        assert!(nearer(&why(50, Some(0.9)), &why(3, Some(0.9))).is_gt());
    }
}
