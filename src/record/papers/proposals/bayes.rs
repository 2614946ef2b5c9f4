//! Naive Bayes over the words of a text: which of several labels its words speak for.
//!
//! The multinomial form with Laplace's smoothing: each word of each label is counted once more than it
//! was seen, so that none is impossible (Manning, Raghavan and Schütze, Introduction to Information
//! Retrieval, 2008, 13.2). Reckoned in logarithms, since the products are too small for a number. A word
//! that was never seen says nothing. The same counts through scikit-learn give the same logarithms
//! (`tests/outside/kinds.py`).

use std::collections::{BTreeMap, BTreeSet};

/// How often each word stands in a text.
pub type Counts = BTreeMap<String, u32>;

/// How often each word stands there.
pub fn counted(words: impl Iterator<Item = String>) -> Counts {
    let mut counts = Counts::new();
    for word in words {
        *counts.entry(word).or_default() += 1;
    }
    counts
}

#[derive(Clone, Debug)]
pub struct Bayes<L> {
    labels: BTreeMap<L, Learned>,
    known: BTreeSet<String>,
}

#[derive(Clone, Debug, Default)]
struct Learned {
    texts: u32,
    words: Counts,
    total: u32,
}

/// What is held of one label.
#[derive(Clone, Debug, PartialEq)]
pub struct Held<L> {
    pub label: L,
    /// The logarithm of the label's share and of each word under it, added up.
    pub log: f64,
    /// Its probability beside the other labels.
    pub share: f64,
}

impl<L> Default for Bayes<L> {
    fn default() -> Self {
        Bayes { labels: BTreeMap::new(), known: BTreeSet::new() }
    }
}

impl<L: Copy + Ord> Bayes<L> {
    pub fn learn(&mut self, label: L, text: &Counts) {
        let it = self.labels.entry(label).or_default();
        it.texts += 1;
        for (word, many) in text {
            *it.words.entry(word.clone()).or_default() += many;
            it.total += many;
            self.known.insert(word.clone());
        }
    }

    /// The labels, the likeliest first. Of two that are as likely the lesser label is first.
    pub fn held(&self, text: &Counts) -> Vec<Held<L>> {
        let logs: Vec<(L, f64)> = self.labels.keys().map(|it| (*it, self.log(*it, text))).collect();
        let most = logs.iter().map(|it| it.1).fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = logs.iter().map(|it| (it.1 - most).exp()).sum();
        let share = |log: f64| (log - most).exp() / sum;
        let mut all: Vec<Held<L>> =
            logs.into_iter().map(|(label, log)| Held { label, log, share: share(log) }).collect();
        all.sort_by(|a, b| b.log.total_cmp(&a.log).then(a.label.cmp(&b.label)));
        all
    }

    fn log(&self, label: L, text: &Counts) -> f64 {
        let texts: u32 = self.labels.values().map(|it| it.texts).sum();
        let share = f64::from(self.labels[&label].texts) / f64::from(texts);
        let seen = text.iter().filter(|it| self.known.contains(it.0));
        share.ln() + seen.map(|(word, many)| f64::from(*many) * self.of(label, word)).sum::<f64>()
    }

    /// The logarithm of a word's probability under a label.
    fn of(&self, label: L, word: &str) -> f64 {
        let it = &self.labels[&label];
        let seen = f64::from(it.words.get(word).copied().unwrap_or_default()) + 1.0;
        (seen / (f64::from(it.total) + self.known.len() as f64)).ln()
    }

    /// How many different words of a text are known at all.
    pub fn knows(&self, text: &Counts) -> usize {
        text.keys().filter(|it| self.known.contains(*it)).count()
    }

    /// The words that spoke most for a label: by how much likelier each is under it than, on the
    /// whole, under the others.
    pub fn spoke(&self, label: L, text: &Counts, most: usize) -> Vec<String> {
        let others: Vec<L> = self.labels.keys().copied().filter(|it| *it != label).collect();
        let mut all: Vec<(f64, &String)> = text
            .iter()
            .filter(|it| self.known.contains(it.0) && !others.is_empty())
            .map(|(word, many)| {
                let rest: f64 = others.iter().map(|it| self.of(*it, word).exp()).sum();
                let rest = (rest / others.len() as f64).ln();
                (f64::from(*many) * (self.of(label, word) - rest), word)
            })
            .filter(|it| it.0 > 0.0)
            .collect();
        all.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(b.1)));
        all.into_iter().take(most).map(|it| it.1.clone()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(words: &str) -> Counts {
        counted(words.split_whitespace().map(str::to_lowercase))
    }

    /// Manning, Raghavan and Schütze, example 13.1: four texts, of which three are of China; the fifth
    /// is of China with 3/4 · (3/7)³ · 1/14 · 1/14 and not with 1/4 · (2/9)³ · 2/9 · 2/9.
    #[test]
    fn the_example_of_the_textbook_comes_out() {
        let mut bayes = Bayes::default();
        for (china, words) in [
            (true, "Chinese Beijing Chinese"),
            (true, "Chinese Chinese Shanghai"),
            (true, "Chinese Macao"),
            (false, "Tokyo Japan Chinese"),
        ] {
            bayes.learn(china, &text(words));
        }
        let fifth = text("Chinese Chinese Chinese Tokyo Japan");
        let held = bayes.held(&fifth);
        let (yes, no) = (
            0.75 * (3.0_f64 / 7.0).powi(3) / 14.0 / 14.0,
            0.25 * (2.0_f64 / 9.0).powi(3) * (2.0 / 9.0) * (2.0 / 9.0),
        );
        assert_eq!((held[0].label, held[1].label), (true, false));
        assert!((held[0].log - yes.ln()).abs() < 1e-12 && (held[1].log - no.ln()).abs() < 1e-12);
        assert!((held[0].share - yes / (yes + no)).abs() < 1e-12);
        assert_eq!(bayes.spoke(true, &fifth, 3), ["chinese"]);
        assert_eq!(bayes.spoke(false, &fifth, 3), ["japan", "tokyo"]);
    }

    #[test]
    fn what_was_never_seen_says_nothing_and_nothing_learned_holds_nothing() {
        let mut bayes = Bayes::default();
        assert!(bayes.held(&text("amount due")).is_empty());
        bayes.learn(1, &text("amount due"));
        bayes.learn(2, &text("dear mother"));
        let strange = text("zyx");
        assert_eq!(bayes.knows(&strange), 0);
        assert!(bayes.held(&strange).iter().all(|it| (it.share - 0.5).abs() < 1e-12));
        assert!(bayes.spoke(1, &strange, 3).is_empty());
        let long = counted((0..20_000).map(|_| "amount".to_owned()));
        assert!(bayes.held(&long).iter().all(|it| it.log.is_finite() && it.share.is_finite()));
    }
}
