//! Which papers are expected to be there, for whom, and what follows where one is missing: a dated file.
//!
//! What follows is common practice and has no source, but where one stands beside it. How long a copy
//! takes is known of none of them: the issuer says.

use super::word::{Answer, PaperWord};
use crate::platform::web::form::Choice;

/// What is asked about the person, because it decides which papers there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fact {
    Veteran,
    Driver,
    Medicare,
}

impl Fact {
    pub const ALL: [Fact; 3] = [Fact::Veteran, Fact::Driver, Fact::Medicare];

    /// Its name in an address, and as it is kept.
    pub fn name(self) -> &'static str {
        match self {
            Fact::Veteran => "veteran",
            Fact::Driver => "driver",
            Fact::Medicare => "medicare",
        }
    }

    pub fn named(name: &str) -> Option<Fact> {
        Fact::ALL.into_iter().find(|it| it.name() == name)
    }

    pub fn subject(self) -> &'static str {
        match self {
            Fact::Veteran => "Served in the armed forces?",
            Fact::Driver => "Drives a car?",
            Fact::Medicare => "Which Medicare?",
        }
    }
}

/// For whom a paper is expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum When {
    Always,
    Veteran,
    Driver,
    /// Where an implant is stated, or listed with an operation.
    Implant,
    Advantage,
}

#[derive(Clone, Debug, serde::Deserialize)]
pub struct Expected {
    pub name: String,
    pub title: String,
    pub when: When,
    /// How much follows from it, the most first.
    pub rank: u8,
    pub without: String,
    pub step: String,
    /// Days that a copy usually takes, where that has a source.
    pub takes_days: Option<i64>,
    pub source: Option<String>,
    /// What is kept that answers it: "paper/military record".
    pub fits: Vec<String>,
}

#[derive(Default, serde::Deserialize)]
struct Listed {
    as_of: String,
    expected: Vec<Expected>,
}

fn read() -> Listed {
    serde_json::from_str(include_str!("expected.json")).unwrap_or_default()
}

/// The day as of which the file was looked through.
pub fn as_of() -> String {
    read().as_of
}

pub fn find(name: &str) -> Option<Expected> {
    read().expected.into_iter().find(|it| it.name == name)
}

/// What decides for whom papers are expected.
pub struct Ground<'a> {
    pub words: &'a [PaperWord],
    /// Whether an implant is stated or listed, as far as the reader sees it.
    pub implant: bool,
}

impl Ground<'_> {
    pub fn answer(&self, about: &str) -> Answer {
        let found = self.words.iter().find(|it| it.about == about);
        found.map_or(Answer::NotAsked, |it| it.answer)
    }

    fn fits(&self, when: When) -> bool {
        let is = |fact: Fact, answer| self.answer(fact.name()) == answer;
        match when {
            When::Always => true,
            When::Veteran => is(Fact::Veteran, Answer::Yes),
            When::Driver => is(Fact::Driver, Answer::Yes),
            When::Implant => self.implant,
            When::Advantage => is(Fact::Medicare, Answer::Advantage),
        }
    }
}

/// What is expected for this person: what most follows from first, then what takes longest.
pub fn expected(ground: &Ground) -> Vec<Expected> {
    let mut all: Vec<_> = read().expected.into_iter().filter(|it| ground.fits(it.when)).collect();
    all.sort_by_key(|it| (it.rank, std::cmp::Reverse(it.takes_days)));
    all
}

impl Expected {
    pub fn without(&self, name: &str) -> String {
        self.without.replace("{name}", name)
    }

    pub fn step(&self, name: &str) -> String {
        self.step.replace("{name}", name)
    }

    /// Who says what follows.
    pub fn source(&self) -> &str {
        self.source.as_deref().unwrap_or("common practice, no source")
    }

    /// How long a copy takes, in words.
    pub fn takes(&self) -> String {
        match self.takes_days {
            Some(days) => format!("Getting it usually takes {days} days."),
            None => "How long getting it takes, the issuer says.".into(),
        }
    }
}

/// The words of the answers that can be given.
pub fn answers(fact: Option<Fact>) -> impl Iterator<Item = &'static str> {
    Answer::to(fact).iter().map(|it| it.words())
}

#[cfg(test)]
mod tests {
    use super::super::word::Said;
    use super::*;
    use crate::base::{day, text::Line};
    use time::macros::date;

    fn word(about: &str, answer: Answer) -> PaperWord {
        let today = date!(2026 - 11 - 25);
        let said = Said { answer, detail: None, by: Line::from("Ines".to_owned()), on: today };
        let unasked = PaperWord::not_asked(1.into(), about);
        unasked.said(said, Fact::named(about), today).expect("said")
    }

    fn names(words: &[PaperWord], implant: bool) -> Vec<String> {
        expected(&Ground { words, implant }).into_iter().map(|it| it.name).collect()
    }

    #[test]
    fn the_file_is_dated_and_every_line_says_what_follows_and_what_to_do() {
        assert!(day::iso(&as_of()).is_some());
        assert_eq!(read().expected.len(), 10);
        for it in read().expected {
            assert!(!it.without.is_empty() && !it.step.is_empty(), "{}", it.name);
            assert_eq!(find(&it.name).map(|it| it.title), Some(it.title));
            assert!(Fact::named(&it.name).is_none());
            let said = format!("{} {}", it.without, it.step);
            assert!(!said.contains('%'), "no score, no percentage: {said}");
            // Whoever gives a lead time names who says so.
            assert!(it.takes_days.is_none() || it.source.is_some(), "{}", it.name);
        }
    }

    #[test]
    fn a_paper_is_expected_only_of_whom_it_is_for() {
        let always = [
            "health-care-power",
            "medicine-list",
            "insurance-card",
            "identity-card",
            "policy",
            "funeral-contract",
        ];
        assert_eq!(names(&[], false), always);
        let has = |words: &[PaperWord], implant, name: &str| {
            names(words, implant).iter().any(|it| it == name)
        };
        assert!(has(&[word("veteran", Answer::Yes)], false, "discharge-paper"));
        assert!(!has(&[word("veteran", Answer::No)], false, "discharge-paper"));
        assert!(has(&[word("driver", Answer::Yes)], false, "driver-license"));
        assert!(has(&[], true, "implant-card"));
        assert!(has(&[word("medicare", Answer::Advantage)], false, "medicare-notice"));
        assert!(!has(&[word("medicare", Answer::Original)], false, "medicare-notice"));
    }

    #[test]
    fn what_most_follows_from_stands_first() {
        let all = expected(&Ground { words: &[word("veteran", Answer::Yes)], implant: true });
        let ranks: Vec<_> = all.iter().map(|it| it.rank).collect();
        let mut sorted = ranks.clone();
        sorted.sort_unstable();
        assert_eq!(ranks, sorted);
        assert_eq!(all[2].name, "implant-card");
    }
}
