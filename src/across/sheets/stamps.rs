//! Checks as a sheet says them: by date, by whom and against what, and "not checked yet" where
//! nobody did. One stamp stands for a block; what differs from it is marked by itself.

use crate::{
    base::{check::Check, day, zone::Zone},
    platform::audit::Names,
};

/// Checks in words, by date.
pub struct Stamps<'a> {
    pub names: &'a Names,
    pub zone: &'a Zone,
}

impl Stamps<'_> {
    pub fn of(&self, check: Option<Check>) -> String {
        check.map_or("not checked yet".into(), |it| {
            let (on, by) = (day::short_words(self.zone.day(it.at)), self.names.of(it.by));
            format!("checked {on} by {by}, against {}", it.against)
        })
    }

    /// One stamp for a block whose items bear no marks: what says otherwise is named here.
    pub fn naming(
        &self,
        items: impl IntoIterator<Item = (String, Option<Check>)>,
    ) -> Option<String> {
        let all: Vec<_> = items.into_iter().map(|(name, it)| (name, self.of(it))).collect();
        let count = |text: &String| all.iter().filter(|(_, it)| it == text).count();
        let most = all.iter().rev().map(|(_, it)| it).max_by_key(|it| count(it))?;
        let others = all.iter().filter(|(_, it)| it != most);
        let others: Vec<String> = others.map(|(name, it)| format!("{name}: {it}")).collect();
        Some(match others.is_empty() {
            true => most.clone(),
            false => format!("{} of {} {most}; {}", count(most), all.len(), others.join("; ")),
        })
    }

    /// One stamp for a block: what most of it says; what says otherwise is marked by itself.
    pub fn block(&self, checks: impl IntoIterator<Item = Option<Check>>) -> Block {
        let all: Vec<String> = checks.into_iter().map(|it| self.of(it)).collect();
        let count = |text: &String| all.iter().filter(|it| *it == text).count();
        let Some(most) = all.iter().rev().max_by_key(|it| count(it)).cloned() else {
            return Block::default();
        };
        let stamp = match (count(&most), all.len()) {
            (some, all) if some == all => most.clone(),
            (some, all) => format!("{some} of {all} {most}; the others are marked"),
        };
        Block { stamp: Some(stamp), most }
    }
}

/// The stamp of a block, and what most of its items say.
#[derive(Default)]
pub struct Block {
    pub stamp: Option<String>,
    most: String,
}

impl Block {
    /// An item's own stamp, where it says otherwise.
    pub fn mark(&self, own: String) -> Option<String> {
        (own != self.most).then_some(own)
    }
}
