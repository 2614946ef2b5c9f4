//! What was lowered for one member: fewer areas than her role may have.
//!
//! Kept, and told in the history, as people read it: "clinical: see only, directives: nothing".
//! A level that cannot be read counts as nothing.

use super::{area::AreaName, policy::Level};
use serde::Serialize;

/// For each area of `AreaName::ALL`, the level it was lowered to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(into = "String")]
pub struct Lowered([Option<Level>; AreaName::ALL.len()]);

const SEE_ONLY: &str = "see only";
const NOTHING: &str = "nothing";

impl Lowered {
    pub fn level(self, area: AreaName) -> Option<Level> {
        self.0.get(area as usize).copied().flatten()
    }

    /// With this area lowered to a level, or (`None`) as the role has it.
    pub fn with(mut self, area: AreaName, level: Option<Level>) -> Lowered {
        if let Some(place) = self.0.get_mut(area as usize) {
            *place = level;
        }
        self
    }

    /// The areas that are lowered, with the words for how far.
    pub fn each(self) -> impl Iterator<Item = (AreaName, &'static str)> {
        AreaName::ALL.into_iter().filter_map(move |area| Some((area, words(self.level(area)?))))
    }
}

/// The words for a level that an area is lowered to.
pub fn words(level: Level) -> &'static str {
    match level {
        Level::None => NOTHING,
        Level::See | Level::Change => SEE_ONLY,
    }
}

/// The level these words say.
pub fn said(words: &str) -> Option<Level> {
    match words {
        NOTHING => Some(Level::None),
        SEE_ONLY => Some(Level::See),
        _ => None,
    }
}

impl std::fmt::Display for Lowered {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let each = self.each().map(|(area, words)| format!("{}: {words}", area.name()));
        f.write_str(&each.collect::<Vec<_>>().join(", "))
    }
}

impl From<Lowered> for String {
    fn from(lowered: Lowered) -> String {
        lowered.to_string()
    }
}

impl From<String> for Lowered {
    fn from(kept: String) -> Lowered {
        let parts = kept.split(", ").filter_map(|it| it.split_once(": "));
        parts.fold(Lowered::default(), |lowered, (name, words)| {
            let area = AreaName::ALL.into_iter().find(|it| it.name() == name);
            let level = said(words).unwrap_or(Level::None);
            area.map_or(lowered, |area| lowered.with(area, Some(level)))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_lowered_reads_back_as_it_was_kept() {
        let lowered = Lowered::default()
            .with(AreaName::Directives, Some(Level::None))
            .with(AreaName::Clinical, Some(Level::See));
        assert_eq!(lowered.to_string(), "clinical: see only, directives: nothing");
        assert_eq!(Lowered::from(lowered.to_string()), lowered);
        assert_eq!(Lowered::from(String::new()), Lowered::default());
        assert_eq!(lowered.with(AreaName::Directives, None).to_string(), "clinical: see only");
    }

    #[test]
    fn a_level_that_cannot_be_read_counts_as_nothing() {
        let odd = Lowered::from("history: sometimes".to_owned());
        assert_eq!(odd.level(AreaName::History), Some(Level::None));
    }

    #[test]
    fn each_area_has_a_place_of_its_own() {
        for (at, area) in AreaName::ALL.into_iter().enumerate() {
            assert_eq!(area as usize, at);
        }
        assert_eq!(Lowered::default().level(AreaName::House), None);
    }
}
