//! Of which kind a paper probably is: learned from the papers that this family has filed, and from a few
//! words of ours for each kind, so that the first proposal is not blind.
//!
//! Nothing that was learned is kept: it is counted anew from the texts of the filed papers that the
//! reader sees, so a paper that is put right, struck or hidden takes its words along.

use super::{
    super::kind::Kind,
    bayes::{Bayes, Counts, counted},
    tokens,
};
use crate::platform::web::form::Choice;

/// Words that the trade puts on papers of each kind (common practice, no source).
const STARTERS: [(Kind, &str); 17] = [
    (
        Kind::MedicalOrder,
        "order orders resuscitation cpr treatment intubation clinician signature comfort physician portable",
    ),
    (
        Kind::Directive,
        "directive advance attorney agent alternate health care decisions witness notary principal living wishes",
    ),
    (
        Kind::Release,
        "authorization authorize release disclose disclosure information records revoke protected hipaa recipient",
    ),
    (Kind::InsuranceCard, "member card group plan copay rxbin rxpcn subscriber coverage customer"),
    (
        Kind::IdentityCard,
        "license driver passport identification state class sex height eyes nationality issued",
    ),
    (
        Kind::Result,
        "result results laboratory specimen reference range collected test units report impression findings",
    ),
    (
        Kind::Discharge,
        "discharge discharged admitted hospital instructions follow stay summary diagnosis home return",
    ),
    (
        Kind::Prescription,
        "prescription refill refills tablet dispense sig prescriber pharmacy quantity take daily",
    ),
    (Kind::Letter, "dear sincerely regards writing letter thank enclosed please"),
    (
        Kind::Bill,
        "amount due pay payment balance invoice receipt total statement charges account paid",
    ),
    (
        Kind::Policy,
        "policy insured premium coverage policyholder beneficiary insurer liability endorsement benefits exclusions",
    ),
    (
        Kind::Warranty,
        "warranty product purchase repair defects serial model replacement manufacturer warrants",
    ),
    (
        Kind::Military,
        "discharge service army navy air force separation veteran rank honorable duty grade",
    ),
    (
        Kind::Vital,
        "certificate birth marriage death registrar county certified divorce decree vital",
    ),
    (
        Kind::Funeral,
        "funeral burial cremation casket cemetery prearranged preneed services contract grave",
    ),
    (
        Kind::Tax,
        "tax income form wages return irs withheld filing taxable employer property assessment",
    ),
    (
        Kind::Deed,
        "deed grantor grantee title property parcel county recorded warranty vehicle lien owner",
    ),
];

/// A text of fewer known words than this says too little.
const FEW: usize = 4;
/// Below this the second is named beside the first.
const SURE: f64 = 0.6;

pub struct Kinds {
    bayes: Bayes<&'static str>,
    confirmed: usize,
}

/// What a paper probably is.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposed {
    pub kind: Kind,
    /// The next likely one, where the two are near each other.
    pub or: Option<Kind>,
    /// The words that spoke most for it.
    pub words: Vec<String>,
    /// How many filed papers it was learned from.
    pub confirmed: usize,
}

impl Proposed {
    /// "Its words “copay”, “group” and “member” speak for it, beside 12 papers that were filed."
    pub fn why(&self) -> String {
        let words: Vec<String> = self.words.iter().map(|it| format!("“{it}”")).collect();
        let words = match words.as_slice() {
            [] => "its words taken together speak for it".to_owned(),
            [one] => format!("the word {one} speaks for it"),
            [all @ .., last] => format!("the words {} and {last} speak for it", all.join(", ")),
        };
        match self.confirmed {
            0 => format!("{words}, by words that are usual on such papers"),
            1 => format!("{words}, by the 1 paper that was filed before"),
            many => format!("{words}, by the {many} papers that were filed before"),
        }
    }
}

/// The words of a paper, each once: that a bill says "amount" nine times makes it no more of a bill.
pub fn counts(text: &str) -> Counts {
    let mut counts = counted(tokens::words(text));
    counts.values_mut().for_each(|it| *it = 1);
    counts
}

impl Kinds {
    /// With our own words, before anything was confirmed.
    pub fn starting() -> Kinds {
        let mut bayes = Bayes::default();
        for (kind, words) in STARTERS {
            bayes.learn(kind.words(), &counts(words));
        }
        Kinds { bayes, confirmed: 0 }
    }

    /// A paper that someone filed.
    pub fn confirm(&mut self, kind: Kind, text: &str) {
        self.bayes.learn(kind.words(), &counts(text));
        self.confirmed += 1;
    }

    /// What a text is probably, or nothing where it says too little.
    pub fn propose(&self, text: &str) -> Option<Proposed> {
        let counts = counts(text);
        if self.bayes.knows(&counts) < FEW {
            return None;
        }
        let held = self.bayes.held(&counts);
        let kind = |at: usize| held.get(at).and_then(|it| named(it.label));
        Some(Proposed {
            kind: kind(0)?,
            or: if held[0].share < SURE { kind(1) } else { None },
            words: self.bayes.spoke(held[0].label, &counts, 3),
            confirmed: self.confirmed,
        })
    }

    pub fn bayes(&self) -> &Bayes<&'static str> {
        &self.bayes
    }
}

fn named(words: &str) -> Option<Kind> {
    Kind::ALL.iter().copied().find(|it| it.words() == words)
}

/// The starting words of each kind, for whoever compares the counts with another program's.
pub fn starters() -> impl Iterator<Item = (Kind, Counts)> {
    STARTERS.iter().map(|(kind, words)| (*kind, counts(words)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const BILL: &str = "Harbor Utilities. Statement of your account. Balance forward. Amount due: $41.20. \
        Please pay within thirty days.";

    #[test]
    fn the_first_proposal_is_not_blind_and_says_its_words() {
        let it = Kinds::starting().propose(BILL).expect("a proposal");
        assert_eq!((it.kind, it.confirmed), (Kind::Bill, 0));
        assert_eq!(it.words.len(), 3);
        assert!(it.words.iter().all(|word| BILL.to_lowercase().contains(word.as_str())), "{it:?}");
        assert!(it.why().ends_with("speak for it, by words that are usual on such papers"));
    }

    #[test]
    fn what_the_family_confirmed_outweighs_what_is_usual() {
        let mut kinds = Kinds::starting();
        for _ in 0..4 {
            kinds.confirm(Kind::Letter, BILL);
        }
        let it = kinds.propose(BILL).expect("a proposal");
        assert_eq!((it.kind, it.confirmed), (Kind::Letter, 4));
        assert!(it.why().ends_with("by the 4 papers that were filed before"));
    }

    #[test]
    fn too_little_says_nothing() {
        for text in ["", "Ottoline Varga", "12 34 56", "amount"] {
            assert_eq!(Kinds::starting().propose(text), None, "{text}");
        }
    }

    #[test]
    fn every_kind_but_other_has_words_to_begin_with() {
        for kind in Kind::ALL {
            let many = STARTERS.iter().filter(|it| it.0 == *kind).count();
            assert_eq!(many, usize::from(*kind != Kind::Other), "{kind}");
        }
        for (kind, counts) in starters() {
            assert!(counts.len() >= 7, "{kind}");
        }
    }
}
