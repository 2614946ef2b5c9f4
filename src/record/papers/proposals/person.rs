//! About whom a paper is: whether the person's name stands on it, and whether another's does.
//!
//! A paper of her husband's in her record is a mistake that is easily made and hard to see later. What
//! is found is said with the words in which it stands; that nothing was found is said as well.

use super::tokens::{self, alike};

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum About {
    /// Her name stands there.
    Her,
    /// Hers, and another's where a paper says whom it is about or to.
    HerAnd(String),
    /// Not hers, but this one's.
    Another(String),
    /// Only the family's name.
    FamilyName,
    Nobody,
}

impl About {
    /// What is said of it on the page, with her first name.
    pub fn says(&self, name: &str) -> String {
        match self {
            About::Her => format!("{name}’s name stands on it"),
            About::HerAnd(line) => format!("{name}’s name stands on it, and another’s: “{line}”"),
            About::Another(line) => {
                format!("{name}’s name was not found on it, but “{line}”. Is it about {name}?")
            }
            About::FamilyName => format!("Of {name}’s name only the family name was found on it"),
            About::Nobody => format!("{name}’s name was not found on it"),
        }
    }

    /// Whether someone should look twice.
    pub fn is_doubtful(&self) -> bool {
        matches!(self, About::HerAnd(_) | About::Another(_))
    }
}

/// Words before the name of the one a paper is about or for.
const BEFORE: [&str; 14] = [
    "patient",
    "patient name",
    "name",
    "name of patient",
    "member",
    "member name",
    "insured",
    "subscriber",
    "customer",
    "account holder",
    "resident",
    "policyholder",
    "re",
    "bill to",
];
const TITLES: [&str; 7] = ["mr", "mrs", "ms", "miss", "dr", "sr", "jr"];

/// By the person's name, the names of others who are known here, and the words of the paper.
pub fn about(name: &str, others: &[String], text: &str) -> About {
    let (hers, all) = (plain(name), tokens::parts(text));
    let is_hers = |row: &[String]| stands(&hers, row);
    let another = text
        .lines()
        .find_map(|line| labelled(line).filter(|it| !is_hers(&plain(it)) && !belongs(&hers, it)));
    let known = || {
        let found = others.iter().find(|it| !same(&hers, &plain(it)) && stands(&plain(it), &all));
        found.cloned()
    };
    match (is_hers(&all), another.or_else(known)) {
        (true, None) => About::Her,
        (true, Some(line)) => About::HerAnd(line),
        (false, Some(line)) => About::Another(line),
        (false, None) if hers.last().is_some_and(|last| all.iter().any(|it| alike(it, last))) => {
            About::FamilyName
        }
        (false, None) => About::Nobody,
    }
}

/// A name without titles.
fn plain(name: &str) -> Vec<String> {
    let mut parts = tokens::parts(name);
    parts.retain(|it| !TITLES.contains(&it.as_str()));
    parts
}

fn same(a: &[String], b: &[String]) -> bool {
    stands(a, b) && stands(b, a)
}

/// First and last name near each other, in either order, with an initial or a comma between.
fn stands(name: &[String], among: &[String]) -> bool {
    let (Some(first), Some(last)) = (name.first(), name.last()) else { return false };
    if name.len() == 1 {
        return among.iter().any(|it| alike(it, first));
    }
    among.iter().enumerate().any(|(at, it)| {
        let near = &among[at + 1..among.len().min(at + 4)];
        alike(it, first) && near.iter().any(|it| alike(it, last))
            || alike(it, last) && near.iter().take(1).any(|it| alike(it, first))
    })
}

/// Whether a line that names someone names her in part: "Mrs. Varga", "O. Varga".
fn belongs(hers: &[String], named: &str) -> bool {
    let parts = plain(named);
    parts.iter().all(|it| {
        hers.iter().any(|own| alike(own, it) || it.len() == 1 && own.starts_with(it.as_str()))
    })
}

/// The name that stands behind "Patient:" and the like: two words or more, each with a capital.
fn labelled(line: &str) -> Option<String> {
    let (before, after) = line.split_once(':')?;
    let label = tokens::parts(before.rsplit("  ").next().unwrap_or(before)).join(" ");
    if !BEFORE.contains(&label.as_str()) {
        return None;
    }
    let after = after.trim_start().split("  ").next().unwrap_or_default();
    let words: Vec<&str> = after.split_whitespace().take(5).collect();
    let name: Vec<&str> = words.into_iter().take_while(|it| is_name(it)).collect();
    let long =
        name.iter().filter(|it| it.chars().filter(|it| it.is_alphabetic()).count() > 1).count();
    (long >= 2).then(|| name.join(" ").trim_end_matches([',', '.']).to_owned())
}

fn is_name(word: &str) -> bool {
    let plain = word.trim_matches([',', '.']);
    plain.starts_with(char::is_uppercase)
        && plain.chars().all(|it| it.is_alphabetic() || "-'’.".contains(it))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(text: &str) -> About {
        let others = ["Ottoline Varga", "Emeric Varga", "Ines Varga"].map(String::from);
        about("Ottoline Varga", &others, text)
    }

    #[test]
    fn her_name_is_found_in_each_order_and_with_a_slip() {
        for text in [
            "Dear Ottoline Varga,",
            "VARGA, OTTOLINE",
            "Patient: Ottoline M. Varga   DOB 9 March 1944",
            "Mrs. Ottoline Varga\n12 Harbor Street",
            "Patient: Ottolime Varga",
            "Member name: Varga, Ottoline",
        ] {
            assert_eq!(of(text), About::Her, "{text}");
        }
    }

    #[test]
    fn another_person_is_said_and_her_own_part_of_a_name_is_not_another() {
        let another = |line: &str| About::Another(line.into());
        assert_eq!(of("Patient: Emeric Varga"), another("Emeric Varga"));
        assert_eq!(of("VARGA, EMERIC born 2 November 1941"), another("Emeric Varga"));
        assert_eq!(of("Patient Name: Rosalind Ames  Room 4"), another("Rosalind Ames"));
        let both = of("To Ottoline Varga\nRe: Emeric Varga");
        assert_eq!(both, About::HerAnd("Emeric Varga".into()));
        assert!(both.is_doubtful() && both.says("Ottoline").contains("“Emeric Varga”"));
        assert_eq!(of("Customer: Mrs. O. Varga"), About::FamilyName);
        assert_eq!(of("The Varga Household"), About::FamilyName);
        assert_eq!(of("Name: as on the card\nRe: Your claim of March"), About::Nobody);
        assert_eq!(of(""), About::Nobody);
    }
}
