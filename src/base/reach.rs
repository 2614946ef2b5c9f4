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

    /// At least three digits, with blanks, dots, hyphens, slashes, round brackets and one leading plus as people write
    /// them, and an extension after "x", "ext", "extension" or "#". Other letters are refused, since what is dialled
    /// would not be what is read ("555-0100 or 555-0101").
    pub fn parse(typed: &str) -> Option<Phone> {
        let typed = typed.trim();
        let (number, extension) = split(typed);
        let digits = number.chars().filter(char::is_ascii_digit).count();
        let plain = number.chars().all(|one| one.is_ascii_digit() || " .-/()+".contains(one));
        let plus_leads = number.trim_start_matches(['(', ' ']).rfind('+').is_none_or(|at| at == 0);
        let whole = extension.is_none_or(|digits| {
            !digits.is_empty() && digits.chars().all(|one| one.is_ascii_digit())
        });
        let fits = typed.chars().count() <= Self::MOST;
        (digits >= 3 && plain && plus_leads && whole && fits).then(|| Phone(typed.to_owned()))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// What follows "tel:" in a link: digits, a leading plus, and ";ext=12" (IETF RFC 3966 (2004), section 3).
    pub fn dial(&self) -> String {
        let (number, extension) = split(&self.0);
        let mut dialled: String =
            number.chars().filter(|one| one.is_ascii_digit() || *one == '+').collect();
        if let Some(extension) = extension {
            dialled.push_str(";ext=");
            dialled.push_str(extension);
        }
        dialled
    }
}

/// The number and what stands after the mark of an extension.
fn split(typed: &str) -> (&str, Option<&str>) {
    let Some(at) = typed.find(['x', 'X', 'e', 'E', '#']) else {
        return (typed, None);
    };
    let (number, rest) = typed.split_at(at);
    let mark = rest.find(|one: char| one.is_ascii_digit()).unwrap_or(rest.len());
    let (mark, extension) = rest.split_at(mark);
    match mark.trim_end().to_ascii_lowercase().as_str() {
        "x" | "x." | "ext" | "ext." | "extension" | "#" => (number, Some(extension)),
        _ => (typed, None),
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
            ("555-0100, Ext 12".replace(',', "").as_str(), "5550100;ext=12"),
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
        assert!(Phone::parse(&"5".repeat(40)).is_some());
        assert_eq!(Phone::parse(&"5".repeat(41)), None);
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
