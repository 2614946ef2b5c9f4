//! From whom a paper is: which of the contacts its letterhead names, or else the name that stands there.

use super::tokens::{self, stand_in};

/// A contact as it can be found on a paper: all by which it is known.
#[derive(Clone, Debug)]
pub struct Known<I> {
    pub id: I,
    pub name: String,
    pub organization: Option<String>,
    /// As they are typed.
    pub phones: Vec<String>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sender<I> {
    Contact {
        id: I,
        name: String,
        why: String,
    },
    /// Two or more that are named alike well: a person chooses.
    Several(Vec<String>),
    /// Of nobody among the contacts: the line at the head.
    Name {
        name: String,
        why: String,
    },
}

/// So many lines with letters are taken for the letterhead.
const HEAD: usize = 6;
/// Digits by which a number is the same: without the country, and the area where it is left out.
const DIGITS: usize = 7;

/// By the names in the letterhead; by a phone number; by a name elsewhere in the text; by the first line.
/// `not` are names that stand at the head because the paper is to them.
pub fn of<I: Copy>(known: &[Known<I>], not: &[String], text: &str) -> Option<Sender<I>> {
    let lines = text.lines().map(str::trim).filter(|it| has_letters(it));
    // A letterhead ends where the letter begins.
    let head: Vec<&str> = lines.take_while(|it| !greets(it)).take(HEAD).collect();
    let in_head = |words: &str| {
        head.iter().find(|line| stand_in(&tokens::parts(words), &tokens::parts(line)))
    };
    let named = |it: &Known<I>| {
        let mut all = names(it).filter(|name| tells(name));
        all.find_map(&in_head).map(|line| format!("the letterhead says “{}”", short(line)))
    };
    let numbers = digits(text);
    let phoned = |it: &Known<I>| {
        let found = it.phones.iter().find(|it| has_number(&numbers, it))?;
        Some(format!("its number {found} stands on it"))
    };
    let whole = tokens::parts(text);
    let said = |it: &Known<I>| {
        let mut all = names(it).filter(|name| tells(name));
        let found = all.find(|name| stand_in(&tokens::parts(name), &whole))?;
        Some(format!("“{found}” stands in its text"))
    };
    one(known, named)
        .or_else(|| one(known, phoned))
        .or_else(|| first_line(&head, not))
        .or_else(|| one(known, said))
}

/// The one for which there is a reason, or all of them.
fn one<I: Copy>(
    known: &[Known<I>],
    why: impl Fn(&Known<I>) -> Option<String>,
) -> Option<Sender<I>> {
    let mut found: Vec<(&Known<I>, String)> =
        known.iter().filter_map(|it| Some((it, why(it)?))).collect();
    // A clinician and the clinic, say: the longer name is the more exact one only where it holds the other.
    if let [(a, _), (b, _)] = &found[..] {
        let (inner, outer) = (tokens::parts(&a.name), tokens::parts(&b.name));
        if inner != outer && stand_in(&inner, &outer) {
            found.remove(0);
        } else if inner != outer && stand_in(&outer, &inner) {
            found.remove(1);
        }
    }
    match found.len() {
        0 => None,
        1 => found.pop().map(|(it, why)| Sender::Contact { id: it.id, name: it.name.clone(), why }),
        _ => Some(Sender::Several(found.into_iter().map(|it| it.0.name.clone()).collect())),
    }
}

fn names<I>(it: &Known<I>) -> impl Iterator<Item = &str> {
    [Some(it.name.as_str()), it.organization.as_deref()].into_iter().flatten()
}

/// Whether a name says enough to be looked for: two words, or one of six letters.
fn tells(name: &str) -> bool {
    let parts = tokens::parts(name);
    parts.len() > 1 || parts.iter().any(|it| it.chars().count() >= 6)
}

fn has_letters(line: &str) -> bool {
    line.chars().filter(|it| it.is_alphabetic()).count() >= 3
}

fn greets(line: &str) -> bool {
    tokens::parts(line).first().is_some_and(|it| it == "dear")
}

fn short(line: &str) -> String {
    crate::base::text::first_words(line.split("  ").next().unwrap_or(line), 60)
}

/// Each run of digits that could be a phone number, with what stands between them left out.
fn digits(text: &str) -> Vec<String> {
    let parts = text.split(|it: char| !it.is_ascii_digit() && !"()+-. ".contains(it));
    parts.map(|it| it.chars().filter(char::is_ascii_digit).collect()).collect()
}

fn has_number(numbers: &[String], phone: &str) -> bool {
    let plain: String = phone.chars().filter(char::is_ascii_digit).collect();
    let last = plain.get(plain.len().saturating_sub(10)..).unwrap_or_default();
    last.len() >= DIGITS && numbers.iter().any(|it| it.contains(last))
}

/// Words that a line at the head begins with and that is no name of a sender.
const NO_NAME: [&str; 17] = [
    "dear",
    "to",
    "re",
    "date",
    "page",
    "statement",
    "invoice",
    "patient",
    "name",
    "member",
    "account",
    "your",
    "this",
    "from",
    "phone",
    "tel",
    "www",
];

fn first_line<I>(head: &[&str], not: &[String]) -> Option<Sender<I>> {
    let line = head.iter().take(2).map(|it| short(it)).find(|line| is_name(line, not))?;
    Some(Sender::Name { why: "it is the first line of the letterhead".into(), name: line })
}

fn is_name(line: &str, not: &[String]) -> bool {
    let parts = tokens::parts(line);
    let letters = line.chars().filter(|it| it.is_alphabetic()).count();
    let others = line.chars().filter(|it| !it.is_alphabetic() && !it.is_whitespace()).count();
    let plain = (1..=7).contains(&parts.len()) && letters >= 5 && others * 3 <= letters;
    let begins = parts.first().is_some_and(|it| NO_NAME.contains(&it.as_str()));
    let capital =
        line.split_whitespace().next().is_some_and(|it| it.starts_with(char::is_uppercase));
    let theirs = not.iter().any(|it| stand_in(&tokens::parts(it), &parts));
    plain
        && !begins
        && capital
        && !theirs
        && !line.ends_with([':', ',', '?'])
        && super::dates::all(line).is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn contacts() -> Vec<Known<i64>> {
        let of = |id, name: &str, organization: Option<&str>, phone: &str| Known {
            id,
            name: name.into(),
            organization: organization.map(String::from),
            phones: vec![phone.into()],
        };
        vec![
            of(1, "Dr. Lind", Some("Lakeshore Clinic"), "+1 218-555-0110"),
            of(2, "Harbor Pharmacy", None, "(218) 555-0111"),
            of(3, "Lakeshore Hospital", None, "218-555-0112"),
        ]
    }

    fn sender(text: &str) -> Option<Sender<i64>> {
        of(&contacts(), &["Ottoline Varga".into()], text)
    }

    fn contact(text: &str) -> Option<(i64, String)> {
        match sender(text) {
            Some(Sender::Contact { id, why, .. }) => Some((id, why)),
            _ => None,
        }
    }

    #[test]
    fn a_contact_is_found_by_its_letterhead_its_organization_or_its_number() {
        let (id, why) =
            contact("LAKESHORE HOSPITAI\n12 Harbor Street\nDear Mrs. Varga").expect("found");
        assert_eq!((id, why.as_str()), (3, "the letterhead says “LAKESHORE HOSPITAI”"));
        assert_eq!(contact("Lakeshore Clinic\nDuluth").expect("found").0, 1);
        let far = "A message\none\ntwo\nthree\nfour\nfive\nsix\nCall us: 218 555 0111";
        assert_eq!(contact(far).expect("found").1, "its number (218) 555-0111 stands on it");
    }

    #[test]
    fn where_two_are_named_neither_is_taken() {
        let both = sender("Harbor Pharmacy\nwith Lakeshore Hospital");
        assert_eq!(
            both,
            Some(Sender::Several(vec!["Harbor Pharmacy".into(), "Lakeshore Hospital".into()]))
        );
    }

    #[test]
    fn who_is_no_contact_is_named_by_the_first_line_and_the_person_herself_is_not_the_sender() {
        let named = sender("North Shore Assurance\nPO Box 4, Duluth\n");
        let why = "it is the first line of the letterhead".to_owned();
        assert_eq!(
            named,
            Some(Sender::Name { name: "North Shore Assurance".into(), why: why.clone() })
        );
        let second = sender("Ottoline Varga\nNorth Shore Assurance\n");
        assert_eq!(second, Some(Sender::Name { name: "North Shore Assurance".into(), why }));
        for none in ["Dear Ottoline,\nthank you", "Date: 3 March 2026\n1234", "", "12\n34"] {
            assert_eq!(sender(none), None, "{none}");
        }
        let far = "Dear Ottoline,\nthe bottle from Harbor Pharmacy is here, all the best";
        assert_eq!(contact(far).expect("found").1, "“Harbor Pharmacy” stands in its text");
    }
}
