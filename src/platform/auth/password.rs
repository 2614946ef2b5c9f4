//! Passwords: which are good enough to be set, and how they are kept.
//!
//! Length and being hard to guess count; there are no rules about kinds of characters (NIST SP 800-63B-4, 2025,
//! section 3.1.1.2). Accents are brought to one spelling (NFC), so that every keyboard types the same password.
//! A `Password` is never printed; what is stored is the work of the `Hasher`.

mod hasher;

use std::fmt;

use unicode_normalization::UnicodeNormalization;
use zxcvbn::{Score, zxcvbn};

pub use hasher::Hasher;

/// One a line, lower case, most common first; the heading in `#` lines says where they are from.
const COMMON: &str = include_str!("common_passwords.txt");

/// A password that long needs no further strength.
const LONG_ENOUGH: usize = 15;

/// In bytes, so that nobody makes us hash a book.
const MOST: usize = 1_000;

/// A password good enough to be set.
#[derive(Clone, PartialEq, Eq)]
pub struct Password(String);

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PasswordError {
    Missing,
    TooLong,
    /// Among the 3,000 most common.
    Common,
    /// Short and easy to guess.
    Weak,
    /// Long, yet one pattern, or nothing but the member's own name or address.
    Guessable,
}

/// `about` is what others know of the member: name, e-mail address.
pub fn accept(typed: &str, about: &[&str]) -> Result<Password, PasswordError> {
    let password: String = typed.nfc().collect();
    if password.is_empty() {
        return Err(PasswordError::Missing);
    }
    if password.len() > MOST {
        return Err(PasswordError::TooLong);
    }
    if is_common(&password) {
        return Err(PasswordError::Common);
    }
    let known: Vec<&str> = about.iter().flat_map(|known| with_its_words(known)).collect();
    let is_long = password.chars().count() >= LONG_ENOUGH;
    match zxcvbn(&password, &known).score() {
        Score::Zero if is_long => Err(PasswordError::Guessable),
        score if is_long || score >= Score::Three => Ok(Password(password)),
        _ => Err(PasswordError::Weak),
    }
}

fn is_common(password: &str) -> bool {
    let password = password.to_lowercase();
    COMMON.lines().filter(|line| !line.starts_with('#')).any(|common| common == password)
}

fn with_its_words(known: &str) -> impl Iterator<Item = &str> {
    let words = known.split(|one: char| !one.is_alphanumeric());
    std::iter::once(known).chain(words).filter(|word| !word.is_empty())
}

impl fmt::Debug for Password {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Password(hidden)")
    }
}

impl fmt::Display for PasswordError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Missing => "Please type a password.",
            Self::TooLong => "This password is too long; at most 1,000 letters fit.",
            Self::Common => "This is one of the passwords everyone tries first. Please choose another.",
            Self::Weak => {
                "This password is easy to guess. Make it 15 characters or longer, for example four words that have \
                 nothing to do with each other."
            }
            Self::Guessable => {
                "This password is long but easy to guess: it repeats itself, or it is your own name or address. Please \
                 choose another."
            }
        })
    }
}

impl std::error::Error for PasswordError {}

#[cfg(test)]
mod tests {
    use super::*;

    const INES: [&str; 2] = ["Ines Varga", "ines.varga@example.org"];

    fn refused(typed: &str) -> PasswordError {
        accept(typed, &INES).expect_err(typed)
    }

    #[test]
    fn long_or_hard_to_guess_is_good_enough() {
        for typed in [
            "maple kettle violin",
            "aaaa bbbb cccc dddd e",
            "rK7#vq2!mZ",
            "ﬁddle bow rosin",
            "скрипка и смычок",
        ] {
            assert!(accept(typed, &INES).is_ok(), "{typed}");
        }
    }

    #[test]
    fn what_is_easy_to_guess_is_refused() {
        assert_eq!(refused(""), PasswordError::Missing);
        assert_eq!(refused("violin1944"), PasswordError::Weak);
        assert_eq!(refused("ines1982"), PasswordError::Weak);
        assert_eq!(refused("varga.ines"), PasswordError::Weak);
        assert_eq!(refused("ines.varga@example.org"), PasswordError::Guessable);
        assert_eq!(refused("aaaaaaaaaaaaaaaaaaaa"), PasswordError::Guessable);
    }

    #[test]
    fn the_most_common_are_refused_in_any_case() {
        let common: Vec<&str> = COMMON.lines().filter(|line| !line.starts_with('#')).collect();
        assert_eq!(common.len(), 3_000);
        assert!(common.iter().all(|one| *one == one.to_lowercase() && *one == one.trim()));
        for typed in [common[0], common[2_999], "Password", "TRUSTNO1"] {
            assert_eq!(refused(typed), PasswordError::Common, "{typed}");
        }
    }

    #[test]
    fn length_is_limited_in_bytes() {
        let words = "maple kettle violin ".repeat(50);
        assert_eq!(words.len(), 1_000);
        assert!(accept(&words, &[]).is_ok());
        let accented = words.replace('k', "é");
        assert_eq!(accented.chars().count(), 1_000);
        assert_eq!(refused(&accented), PasswordError::TooLong);
    }

    #[test]
    fn is_never_printed() {
        let password = accept("maple kettle violin", &[]).unwrap();
        assert!(!format!("{password:?}").contains("maple"));
    }
}
