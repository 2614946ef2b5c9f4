//! The facts that were checked longest ago, those never checked in front.

use super::facts::{Facts, Treated};
use crate::{
    base::check::Check,
    platform::web::urls::{self, Address},
    record::baseline::model::usually_is,
};

/// How many are shown: more than one sitting's worth helps nobody.
const MOST: usize = 5;

pub struct Fact {
    pub title: String,
    pub check: Option<Check>,
    pub to: Address,
}

pub fn oldest(facts: &Facts) -> Vec<Fact> {
    let mut all = essentials(facts);
    all.extend(facts.treated.iter().flat_map(clinical));
    first(all)
}

fn first(mut facts: Vec<Fact>) -> Vec<Fact> {
    facts.sort_by_key(|it| it.check.as_ref().map(|it| it.at));
    facts.truncate(MOST);
    facts
}

fn essentials(facts: &Facts) -> Vec<Fact> {
    let Facts { person, usual, .. } = facts;
    let fact = |title: String, check, to| Fact { title, check, to };
    let mut all = vec![fact(person.name.to_string(), person.check(), urls::person())];
    if !usual.is_empty() {
        all.push(fact(usually_is(person.name.as_str()), usual.check(), urls::usual()));
    }
    for it in facts.allergies.listed() {
        all.push(fact(it.substance.to_string(), it.check(), urls::allergy(it.id)));
    }
    for it in &facts.contacts {
        all.push(fact(it.name.to_string(), it.check(), urls::contact(it.id)));
    }
    all
}

fn clinical(treated: &Treated) -> Vec<Fact> {
    let fact = |title: String, check, to| Fact { title, check, to };
    let mut all = Vec::new();
    for it in &treated.medicines {
        all.push(fact(it.title(), it.check(), urls::medicine(it.id)));
    }
    for it in &treated.conditions {
        all.push(fact(it.name.to_string(), it.check(), urls::condition(it.id)));
    }
    for it in &treated.operations {
        all.push(fact(it.name.to_string(), it.check(), urls::operation(it.id)));
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{clock::Instant, ids::MemberId, text::Line};

    #[test]
    fn never_checked_comes_before_checked_long_ago() {
        let fact = |title: &str, at: Option<i64>| Fact {
            title: title.into(),
            check: at.map(|at| Check {
                at: Instant::from_unix(at),
                by: MemberId::from(1),
                against: Line::from("the label".to_owned()),
            }),
            to: urls::person(),
        };
        let facts = [("b", Some(9)), ("a", Some(3)), ("never", None), ("c", Some(12))];
        let all = first(facts.map(|(title, at)| fact(title, at)).into());
        let titles: Vec<_> = all.iter().map(|it| it.title.as_str()).collect();
        assert_eq!(titles, ["never", "a", "b", "c"]);
        assert_eq!(first((0..9).map(|_| fact("x", None)).collect()).len(), MOST);
    }
}
