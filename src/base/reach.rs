//! How to reach someone: an `Email` and a `Phone`.
//!
//! Both are checked for form only; whether anyone answers is for the family to find out.
//! `From<String>` is for rows of the database and checks nothing.

use std::fmt;

use serde::Serialize;

/// An e-mail address in lower case, of plain ASCII letters, digits and the usual marks.
#[derive(Clone, PartialEq, Eq, Hash, Debug, Serialize, sqlx::Type)]
#[sqlx(transparent)]
#[serde(transparent)]
pub struct Email(String);

/// A telephone number as it was typed, with its extension.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, sqlx::Type)]
#[sqlx(transparent)]
#[serde(transparent)]
pub struct Phone(String);

impl Email {
    /// In bytes; RFC 3696, erratum 1690.
    pub const MOST: usize = 254;

    /// Takes the unquoted form of RFC 5322 (2008), section 3.4.1: quotes, comments and bare IP addresses are refused.
    /// The domain has a dot or is "localhost".
    pub fn parse(typed: &str) -> Option<Email> {
        let email = typed.trim().to_ascii_lowercase();
        let (local, domain) = email.split_once('@')?;
        let fits = email.len() <= Self::MOST && local.len() <= 64;
        let reachable = domain == "localhost"
            || (domain.contains('.') && domain.split('.').all(is_domain_label));
        (fits && reachable && local.split('.').all(is_atom)).then_some(Email(email))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

fn is_atom(part: &str) -> bool {
    let allowed = |one: char| one.is_ascii_alphanumeric() || "!#$%&'*+-/=?^_`{|}~".contains(one);
    !part.is_empty() && part.chars().all(allowed)
}

fn is_domain_label(label: &str) -> bool {
    let allowed = |one: char| one.is_ascii_alphanumeric() || one == '-';
    !label.is_empty()
        && label.len() <= 63
        && label.chars().all(allowed)
        && !label.starts_with('-')
        && !label.ends_with('-')
}

impl Phone {
    /// In characters.
    pub const MOST: usize = 40;

    /// Fifteen of ITU-T E.164 (2010), and up to four that lead out of a country: more are two numbers in one field.
    const MOST_DIGITS: usize = 19;

    /// At least three digits, with blanks, dots, hyphens, slashes, round brackets and one leading plus as people write
    /// them, and an extension after "x", "ext", "extension" or "#". Other letters are refused, since what is dialled
    /// would not be what is read ("555-0100 or 555-0101"), and a keypad's letters differ between phones. What is kept is
    /// what was typed, without marks that cannot be seen: they come along when a number is copied.
    pub fn parse(typed: &str) -> Option<Phone> {
        let kept: String = typed.trim().chars().filter(|one| !is_unseen(*one)).collect();
        let plain = plain(&kept);
        let (number, extension) = split(&plain);
        let all_plain = number.chars().all(|one| one.is_ascii_digit() || " .-/()+".contains(one));
        let plus_leads = number.trim_start_matches(['(', ' ']).rfind('+').is_none_or(|at| at == 0);
        let whole = extension.is_none_or(|digits| {
            !digits.is_empty() && digits.chars().all(|one| one.is_ascii_digit())
        });
        let digits = dialled(number).chars().filter(char::is_ascii_digit).count();
        let fits = kept.chars().count() <= Self::MOST && (3..=Self::MOST_DIGITS).contains(&digits);
        (all_plain && plus_leads && whole && fits).then_some(Phone(kept))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// What follows "tel:" in a link: digits, a leading plus, and ";ext=12" (IETF RFC 3966 (2004), section 3).
    pub fn dial(&self) -> String {
        let plain = plain(&self.0);
        let (number, extension) = split(&plain);
        let mut dial = dialled(number);
        if let Some(extension) = extension {
            dial.push_str(";ext=");
            dial.push_str(extension);
        }
        dial
    }

    /// In the groups in which it is usually written, so that it is found in a text: "218-555-0122" for
    /// the ten digits of a number of North America (common practice, no source), with or without the 1
    /// before them; all other numbers as their digits. Without an extension.
    pub fn groups(&self) -> String {
        let dial = self.dial();
        let number = dial.split(';').next().unwrap_or_default();
        let ours = number.strip_prefix("+1").or_else(|| number.strip_prefix('1')).unwrap_or(number);
        match ours.len() == 10 && ours.chars().all(|it| it.is_ascii_digit()) {
            true => format!("{}-{}-{}", &ours[..3], &ours[3..6], &ours[6..]),
            false => number.chars().filter(char::is_ascii_digit).collect(),
        }
    }
}

/// With the letters of a plain keyboard in place of their wide and typographic kin.
fn plain(typed: &str) -> String {
    let one = |it: char| match it {
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(it) - 0xfee0).unwrap_or(it),
        '\u{2010}'..='\u{2015}' | '\u{2212}' => '-',
        it if it.is_whitespace() => ' ',
        it => it,
    };
    typed.chars().map(one).collect()
}

/// Joiners, direction marks, embeddings and isolates, a byte order mark.
fn is_unseen(one: char) -> bool {
    matches!(one, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}

/// Digits and the leading plus. "(0)" after a country's number is not dialled from outside: +44 (0)20 is +44 20.
fn dialled(number: &str) -> String {
    let leads =
        number.find("(0)").filter(|at| number[..*at].contains(|it: char| it.is_ascii_digit()));
    let number = leads.map_or(number.to_owned(), |_| number.replacen("(0)", "", 1));
    number.chars().filter(|one| one.is_ascii_digit() || *one == '+').collect()
}

/// The number and what stands after the mark of an extension.
fn split(plain: &str) -> (&str, Option<&str>) {
    let Some(at) = plain.find(['x', 'X', 'e', 'E', '#']) else {
        return (plain, None);
    };
    let (number, rest) = plain.split_at(at);
    let mark = rest.find(|one: char| one.is_ascii_digit()).unwrap_or(rest.len());
    let (mark, extension) = rest.split_at(mark);
    match mark.trim_end().trim_end_matches(['.', ':']).to_ascii_lowercase().as_str() {
        "x" | "ext" | "extension" | "#" => (number.trim_end_matches([' ', ',']), Some(extension)),
        _ => (plain, None),
    }
}

impl fmt::Display for Email {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl AsRef<str> for Email {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl From<String> for Email {
    fn from(kept: String) -> Self {
        Self(kept)
    }
}

impl fmt::Display for Phone {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl AsRef<str> for Phone {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl From<String> for Phone {
    fn from(kept: String) -> Self {
        Self(kept)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_number_is_looked_for_in_the_groups_in_which_it_is_written() {
        let of = |typed: &str| Phone::parse(typed).expect("a number").groups();
        for typed in ["218-555-0122", "(218) 555.0122", "+1 218 555 0122 ext. 4", "12185550122"] {
            assert_eq!(of(typed), "218-555-0122", "{typed}");
        }
        assert_eq!((of("988"), of("+44 20 7946 0018")), ("988".into(), "442079460018".into()));
    }

    #[test]
    fn an_email_is_kept_in_lower_case() {
        assert_eq!(
            Email::parse(" Ines.Varga+care@Example.ORG ").unwrap().as_str(),
            "ines.varga+care@example.org"
        );
        assert!(Email::parse("root@localhost").is_some());
    }

    #[test]
    fn what_is_no_email_is_refused() {
        let long_local = format!("{}@example.org", "a".repeat(65));
        let long_label = format!("ines@{}.org", "a".repeat(64));
        let long = format!("{}@{}.org", "a".repeat(60), "b.".repeat(100));
        for typed in [
            "",
            "ines",
            "@example.org",
            "ines@",
            "ines@example",
            "ines@@example.org",
            "ines@a@example.org",
            "in es@example.org",
            "ines@example..org",
            ".ines@example.org",
            "ines@-example.org",
            "ines@example.org\r\nBcc: x@example.org",
            "Ines <ines@example.org>",
            "\"ines\"@example.org",
            "ines@[127.0.0.1]",
            "ines@exam\u{202e}ple.org",
            &long,
            &long_local,
            &long_label,
        ] {
            assert_eq!(Email::parse(typed), None, "{typed:?}");
        }
    }

    #[test]
    fn a_phone_is_kept_as_typed_and_dials() {
        for (typed, dialled) in [
            ("(218) 555-0100", "2185550100"),
            ("+1 218.555.0100", "+12185550100"),
            ("(+1) 218 555 0100", "+12185550100"),
            ("218/555-0100 x12", "2185550100;ext=12"),
            ("555-0100 ext. 12", "5550100;ext=12"),
            ("555-0100, Ext 12", "5550100;ext=12"),
            ("(218) 555-0101 ext. 4", "2185550101;ext=4"),
            ("555-0101 ext: 12", "5550101;ext=12"),
            ("+44 20 7946 0000", "+442079460000"),
            ("+44 (0)20 7946 0000", "+442079460000"),
            ("(0)20 7946 0000", "02079460000"),
            ("0049 30/901820", "004930901820"),
            ("1\u{a0}218\u{a0}555\u{2011}0101", "12185550101"),
            ("218\u{2013}555\u{2013}0101", "2185550101"),
            ("\u{ff0b}\u{ff11}（２１８）５５５－０１０１", "+12185550101"),
            ("555-0100 extension 7", "5550100;ext=7"),
            ("555-0100#7", "5550100;ext=7"),
            ("911", "911"),
        ] {
            let phone = Phone::parse(&format!(" {typed} ")).expect(typed);
            assert_eq!(phone.as_str(), typed);
            assert_eq!(phone.dial(), dialled, "{typed}");
        }
    }

    #[test]
    fn what_would_dial_wrongly_is_refused() {
        for typed in [
            "",
            "12",
            "555-0100 or 555-0101",
            "555-0100, 555-0101",
            "1-800-LUTHIER",
            "1-800-FLOWERS",
            "218-555-0101 / 218-555-0102",
            "555-0100 x",
            "555-0100 x12 x13",
            "555+0100",
            "++555 0100",
            "555-0100 exit 3",
            "٥٥٥٠١٠٠",
            "5550100;ext=1",
            "x12 555 0100 0100 0100",
        ] {
            assert_eq!(Phone::parse(typed), None, "{typed}");
        }
        assert!(Phone::parse(&"5".repeat(19)).is_some());
        assert_eq!(Phone::parse(&"5".repeat(20)), None);
        assert_eq!(Phone::parse(&format!("555{}0100", " ".repeat(34))), None);
    }

    #[test]
    fn marks_that_cannot_be_seen_are_not_kept() {
        let copied = Phone::parse("\u{202a}+1 218-555-0101\u{202c}").expect("a number");
        assert_eq!((copied.as_str(), copied.dial().as_str()), ("+1 218-555-0101", "+12185550101"));
    }

    proptest! {
        #[test]
        fn a_link_holds_only_what_a_link_may_hold(typed in "[0-9+x# ().a-z-]{0,20}") {
            if let Some(phone) = Phone::parse(&typed) {
                let dialled = phone.dial().replace(";ext=", "");
                prop_assert!(dialled.trim_start_matches('+').bytes().all(|byte| byte.is_ascii_digit()), "{}", dialled);
            }
        }
    }
}
