//! What people type, made fit to keep: a `Line`, a `Note` of several lines.
//!
//! Parsing trims, folds runs of blanks, and brings accents to one spelling (Unicode Standard Annex 15, NFC), so that
//! two members who type the same name have typed the same text. Emoji and right-to-left scripts are welcome; control
//! characters are refused, and so are the marks that make text read in another order than it is stored.
//! `From<String>` is for rows of the database, which were parsed when they were written: it checks nothing.

use std::fmt;

use serde::Serialize;
use unicode_normalization::UnicodeNormalization;

pub use super::reach::{Email, Phone};

/// One line of text, never empty.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, sqlx::Type)]
#[sqlx(transparent)]
#[serde(transparent)]
pub struct Line(String);

/// Text of one or several lines, never empty; lines end in LF.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, sqlx::Type)]
#[sqlx(transparent)]
#[serde(transparent)]
pub struct Note(String);

#[derive(Clone, PartialEq, Eq, Debug)]
pub enum TextError {
    /// Both in characters.
    TooLong {
        most: usize,
        was: usize,
    },
    Control(char),
}

/// The first line of a text, cut at a word where it has more than so many letters.
pub fn first_words(text: &str, most: usize) -> String {
    let line = text.lines().next().unwrap_or_default();
    if line.chars().count() <= most {
        return line.to_owned();
    }
    let cut: String = line.chars().take(most).collect();
    let end = cut.rfind(' ').filter(|it| *it > 0).unwrap_or(cut.len());
    format!("{} …", cut[..end].trim_end_matches([',', ';', ':']))
}

impl Line {
    /// In characters.
    pub const MOST: usize = 300;

    /// None when nothing was typed. A line break counts as a blank.
    pub fn parse(typed: &str) -> Result<Option<Line>, TextError> {
        kept(folded(typed), Self::MOST).map(|text| text.map(Line))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Note {
    /// In characters.
    pub const MOST: usize = 4000;

    /// None when nothing was typed. Line breaks stay, whichever way they were typed.
    pub fn parse(typed: &str) -> Result<Option<Note>, TextError> {
        let typed = typed.replace("\r\n", "\n").replace('\r', "\n");
        let lines: Vec<String> = typed.split('\n').map(folded).collect();
        kept(lines.join("\n").trim_matches('\n').to_owned(), Self::MOST).map(|text| text.map(Note))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

fn folded(line: &str) -> String {
    let composed: String = line.nfc().collect();
    composed.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn kept(text: String, most: usize) -> Result<Option<String>, TextError> {
    if text.chars().all(is_unseen) {
        return Ok(None);
    }
    if let Some(refused) = text.chars().find(|&one| is_refused(one)) {
        return Err(TextError::Control(refused));
    }
    match text.chars().count() {
        was if was > most => Err(TextError::TooLong { most, was }),
        _ => Ok(Some(text)),
    }
}

/// Leaves nothing to see when it stands alone: blanks, joiners, direction marks, variation selectors, a byte order mark.
fn is_unseen(one: char) -> bool {
    one.is_whitespace()
        || matches!(one, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}')
}

/// Controls, embeddings, overrides and isolates (Unicode Standard Annex 9), and code points that are no characters.
fn is_refused(one: char) -> bool {
    let turns_the_order = matches!(one, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    let is_no_character =
        matches!(one, '\u{fdd0}'..='\u{fdef}') || u32::from(one) & 0xfffe == 0xfffe;
    (one.is_control() && one != '\n') || turns_the_order || is_no_character
}

impl fmt::Display for TextError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong { most, was } => {
                write!(out, "This is {was} characters long; at most {most} fit here.")
            }
            Self::Control(one) => {
                let code = u32::from(*one);
                write!(
                    out,
                    "There is an invisible character in this (U+{code:04X}). Please type it again by hand."
                )
            }
        }
    }
}

impl std::error::Error for TextError {}

impl fmt::Display for Line {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl AsRef<str> for Line {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl From<String> for Line {
    fn from(kept: String) -> Self {
        Self(kept)
    }
}

impl fmt::Display for Note {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl AsRef<str> for Note {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl From<String> for Note {
    fn from(kept: String) -> Self {
        Self(kept)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn line(typed: &str) -> String {
        Line::parse(typed).unwrap().unwrap().0
    }

    #[test]
    fn a_line_is_trimmed_and_folded() {
        assert_eq!(line("  Ottoline \t\u{a0} Varga\r\n"), "Ottoline Varga");
        assert_eq!(line("e\u{301}t\u{e9}"), "\u{e9}t\u{e9}");
    }

    #[test]
    fn a_note_keeps_its_lines() {
        let note =
            Note::parse("\r\n  Slept  well.\r\n\r\nAte little.\rDrank tea. \n\n").unwrap().unwrap();
        assert_eq!(note.as_str(), "Slept well.\n\nAte little.\nDrank tea.");
    }

    #[test]
    fn nothing_to_see_is_nothing() {
        for typed in ["", "  ", "\r\n\t\r\n", "\u{a0}", "\u{200b}\u{feff}", "\u{200f} \u{200d}"] {
            assert_eq!(Line::parse(typed), Ok(None), "{typed:?}");
            assert_eq!(Note::parse(typed), Ok(None), "{typed:?}");
        }
    }

    #[test]
    fn what_turns_or_hides_text_is_refused() {
        for one in [
            '\0',
            '\u{7}',
            '\u{1b}',
            '\u{7f}',
            '\u{9b}',
            '\u{202a}',
            '\u{202e}',
            '\u{2066}',
            '\u{2069}',
            '\u{fffe}',
            '\u{ffff}',
            '\u{1ffff}',
        ] {
            let typed = format!("Delia{one}Delia");
            assert_eq!(Line::parse(&typed), Err(TextError::Control(one)));
            assert_eq!(Note::parse(&typed), Err(TextError::Control(one)));
        }
        let said = TextError::Control('\u{202e}').to_string();
        assert_eq!(
            said,
            "There is an invisible character in this (U+202E). Please type it again by hand."
        );
    }

    #[test]
    fn emoji_and_other_scripts_are_kept() {
        for typed in [
            "👩\u{200d}👧",
            "❤\u{fe0f}",
            "שלום",
            "مرحبا\u{200f}!",
            "Ágota",
            "½ tablet",
            "陳",
            "می\u{200c}خواهم",
        ] {
            assert_eq!(line(typed), typed);
        }
    }

    #[test]
    fn length_is_counted_in_characters() {
        assert!(Line::parse(&"é".repeat(300)).is_ok());
        assert_eq!(Line::parse(&"é".repeat(301)), Err(TextError::TooLong { most: 300, was: 301 }));
        assert!(Note::parse(&"é".repeat(4000)).is_ok());
        let said = Line::parse(&"a".repeat(10_000)).unwrap_err().to_string();
        assert_eq!(said, "This is 10000 characters long; at most 300 fit here.");
    }

    proptest! {
        #[test]
        fn parsing_twice_changes_nothing(typed in any::<String>()) {
            if let Ok(Some(note)) = Note::parse(&typed) {
                prop_assert_eq!(Note::parse(note.as_str()), Ok(Some(note.clone())));
                prop_assert!(!note.as_str().contains('\r'));
            }
            if let Ok(Some(line)) = Line::parse(&typed) {
                prop_assert_eq!(Line::parse(line.as_str()), Ok(Some(line.clone())));
                prop_assert!(!line.as_str().contains('\n'));
            }
        }
    }
}
