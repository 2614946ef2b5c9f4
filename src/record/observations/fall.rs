//! The few plain things that are asked of a fall, each as it was stated: nothing is concluded.
//!
//! A clinician asks how a fall came about and whether it did harm (CDC, STEADI: the circumstances
//! of a fall, injuries; from memory). Getting up alone and the head: common practice, no source.

use crate::base::text::Line;
use crate::platform::web::form::Choice;
use std::fmt;

/// "Not known" is an answer too: nobody guesses what she did not see.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Known {
    #[serde(rename = "yes")]
    #[sqlx(rename = "yes")]
    Yes,
    #[serde(rename = "no")]
    #[sqlx(rename = "no")]
    No,
    #[serde(rename = "not known")]
    #[sqlx(rename = "not known")]
    NotKnown,
}

impl Choice for Known {
    const ALL: &'static [Known] = &[Known::Yes, Known::No, Known::NotKnown];

    fn words(self) -> &'static str {
        match self {
            Known::Yes => "yes",
            Known::No => "no",
            Known::NotKnown => "not known",
        }
    }
}

impl fmt::Display for Known {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum GotUp {
    #[serde(rename = "alone")]
    #[sqlx(rename = "alone")]
    Alone,
    #[serde(rename = "helped")]
    #[sqlx(rename = "helped")]
    Helped,
    #[serde(rename = "not known")]
    #[sqlx(rename = "not known")]
    NotKnown,
}

impl Choice for GotUp {
    const ALL: &'static [GotUp] = &[GotUp::Alone, GotUp::Helped, GotUp::NotKnown];

    fn words(self) -> &'static str {
        match self {
            GotUp::Alone => "alone",
            GotUp::Helped => "was helped up",
            GotUp::NotKnown => "not known",
        }
    }
}

impl fmt::Display for GotUp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// A fall, as it was stated.
#[derive(Clone, Debug, PartialEq)]
pub struct Fall {
    pub place: Option<Line>,
    pub up: GotUp,
    pub head: Known,
    pub hurt: Known,
}

impl Fall {
    /// "in the bathroom; got up: alone; hit the head: no; hurt: not known"
    pub fn sentence(&self) -> String {
        let place = self.place.as_ref().map(|it| format!("{it}; ")).unwrap_or_default();
        format!("{place}got up: {}; hit the head: {}; hurt: {}", self.up, self.head, self.hurt)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fall_is_said_as_it_was_stated() {
        let place = Some(Line::from("in the bathroom".to_owned()));
        let fall = Fall { place, up: GotUp::Helped, head: Known::No, hurt: Known::NotKnown };
        let said = "in the bathroom; got up: was helped up; hit the head: no; hurt: not known";
        assert_eq!(fall.sentence(), said);
        assert!(Fall { place: None, ..fall }.sentence().starts_with("got up: was helped up;"));
    }
}
