//! What stands now: which directives are in force, which are over, which two disagree, and what is
//! amiss with an agent. It never says which of two is right, and never whether one holds: the paper,
//! the clinician and the law of the state do.

use super::{kind::Kind, model::Directive};
use crate::base::{
    day,
    ids::{ContactId, DirectiveId},
    text::Line,
};
use time::Date;

/// What is known of a contact who is named in a directive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    Listed,
    /// Struck from the contacts.
    Struck,
    /// Died on this day, as it was written down.
    Died(Date),
    /// Not shown to the reader: nothing is said of her.
    NotShown,
}

/// Two that are in force and disagree.
#[derive(Clone, Debug, PartialEq)]
pub struct Pair {
    pub one: DirectiveId,
    pub other: DirectiveId,
    /// Never empty.
    pub whys: Vec<Why>,
}

#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// The family marked that one says something else than the other, and in what.
    Marked(Line),
    SameKind(Kind),
    /// They give the same power to different agents.
    Agents,
}

impl Why {
    pub fn words(&self) -> String {
        match self {
            Why::Marked(what) => format!("marked by the family: {what}"),
            Why::SameKind(kind) => format!("both are a {kind}, and both are in force"),
            Why::Agents => "they name different agents".to_owned(),
        }
    }
}

/// What is amiss with one that is in force.
#[derive(Clone, Debug, PartialEq)]
pub struct Trouble {
    pub directive: DirectiveId,
    pub with: With,
}

#[derive(Clone, Debug, PartialEq)]
pub enum With {
    /// It gives a power, and no agent is written down.
    NoAgent,
    /// What she is in it, and who.
    Struck(&'static str, ContactId),
    Died(&'static str, ContactId, Date),
}

impl With {
    /// "the agent, Emeric Varga, is struck from the contacts"
    pub fn words(&self, name: impl Fn(ContactId) -> String) -> String {
        match self {
            With::NoAgent => "no agent is written down".to_owned(),
            With::Struck(what, id) => {
                format!("the {what}, {}, is struck from the contacts", name(*id))
            }
            With::Died(what, id, on) => {
                format!("the {what}, {}, died on {}", name(*id), day::words(*on))
            }
        }
    }
}

/// All that are not struck, as they stand.
#[derive(Debug, PartialEq)]
pub struct Standing<'a> {
    pub in_force: Vec<&'a Directive>,
    pub drafts: Vec<&'a Directive>,
    /// Superseded or voided.
    pub over: Vec<&'a Directive>,
    pub pairs: Vec<Pair>,
    pub troubles: Vec<Trouble>,
}

impl<'a> Standing<'a> {
    /// Orders first, then powers, then wishes; of a kind the newest first.
    pub fn of(all: &'a [Directive], fate: impl Fn(ContactId) -> Fate) -> Standing<'a> {
        let sorted = |which: fn(&Directive) -> bool| {
            let mut those: Vec<&Directive> = all.iter().filter(|it| which(it)).collect();
            those.sort_by_key(|it| (it.kind, std::cmp::Reverse((it.signed_on, it.id))));
            those
        };
        let in_force = sorted(Directive::is_in_force);
        Standing {
            drafts: sorted(Directive::is_draft),
            over: sorted(Directive::is_over),
            pairs: pairs(&in_force),
            troubles: in_force.iter().flat_map(|it| troubles(it, &fate)).collect(),
            in_force,
        }
    }

    pub fn find(&self, id: DirectiveId) -> Option<&'a Directive> {
        let all = self.in_force.iter().chain(&self.drafts).chain(&self.over);
        all.copied().find(|it| it.id == id)
    }

    /// "Two papers disagree: show both to the clinician. Living will of .. and Living will of ..:
    /// both are a living will, and both are in force"
    pub fn sentence(&self, pair: &Pair) -> Option<String> {
        let (one, other) = (self.find(pair.one)?, self.find(pair.other)?);
        let whys: Vec<_> = pair.whys.iter().map(Why::words).collect();
        Some(format!(
            "Two papers disagree: show both to {}. {} and {}: {}",
            one.kind.show_to(),
            one.title(),
            other.title(),
            whys.join("; ")
        ))
    }
}

fn pairs(in_force: &[&Directive]) -> Vec<Pair> {
    let mut pairs = Vec::new();
    for (at, one) in in_force.iter().enumerate() {
        for other in &in_force[at + 1..] {
            let whys = whys(one, other);
            if !whys.is_empty() {
                pairs.push(Pair { one: one.id, other: other.id, whys });
            }
        }
    }
    pairs
}

fn whys(one: &Directive, other: &Directive) -> Vec<Why> {
    let marked = |it: &Directive, than: &Directive| {
        it.differs_in.clone().filter(|_| it.differs_from == Some(than.id)).map(Why::Marked)
    };
    let same = one.kind == other.kind && one.kind.stands_alone();
    let power = one.kind.power().is_some() && one.kind.power() == other.kind.power();
    let agents = match (one.agent_id, other.agent_id) {
        (Some(one), Some(other)) => power && one != other,
        _ => false,
    };
    let whys = [
        marked(one, other),
        marked(other, one),
        same.then_some(Why::SameKind(one.kind)),
        agents.then_some(Why::Agents),
    ];
    whys.into_iter().flatten().collect()
}

fn troubles(it: &Directive, fate: &impl Fn(ContactId) -> Fate) -> Vec<Trouble> {
    let missing = (it.kind.power().is_some() && it.agent_id.is_none()).then_some(With::NoAgent);
    let named = it.named().filter_map(|(what, id)| match fate(id) {
        Fate::Struck => Some(With::Struck(what, id)),
        Fate::Died(on) => Some(With::Died(what, id, on)),
        Fate::Listed | Fate::NotShown => None,
    });
    let with = missing.into_iter().chain(named);
    with.map(|with| Trouble { directive: it.id, with }).collect()
}

#[cfg(test)]
mod tests;
