//! Abbreviations in what was typed off a label that have been misread: what was typed, and what it
//! usually means. Only told; nothing typed is ever changed, and what can mean two things is to be
//! asked.
//!
//! Sources: Joint Commission, official "Do Not Use" list (QD, QOD, U, IU, trailing zero, no leading
//! zero, MSO4, MgSO4); ISMP List of Error-Prone Abbreviations (the others; from memory but for µg,
//! cc and HS). Only for what is typed of a medicine: a result of "7.0" is not a dose.

use super::model::Medicine;
use crate::base::quantity::Quantity;

/// One place in the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    pub typed: String,
    pub means: String,
}

impl Found {
    /// `typed "QD": usually means daily; write it out after asking whoever wrote it`
    pub fn says(&self) -> String {
        let Found { typed, means } = self;
        format!(
            "typed \"{typed}\": usually means {means}; write it out after asking whoever wrote it"
        )
    }
}

/// In any letters; none of these is a word.
const ANY: [(&str, &str); 16] = [
    ("qd", "daily"),
    ("q1d", "daily"),
    ("qod", "every other day"),
    ("qhs", "every night at bedtime"),
    ("hs", "half-strength or at bedtime: ask"),
    ("tiw", "3 times a week"),
    ("biw", "2 times a week"),
    ("iu", "units"),
    ("cc", "mL"),
    ("µg", "mcg"),
    ("μg", "mcg"),
    ("d/c", "discharge or discontinue: ask"),
    ("i/d", "1 daily"),
    ("subq", "under the skin"),
    ("mso4", "morphine sulfate"),
    ("mgso4", "magnesium sulfate"),
];

/// In capitals only: in small letters some are words ("as needed").
const CAPITALS: [(&str, &str); 10] = [
    ("OD", "right eye or once daily: ask"),
    ("OS", "left eye"),
    ("OU", "each eye"),
    ("AD", "right ear"),
    ("AS", "left ear"),
    ("AU", "each ear"),
    ("SC", "under the skin"),
    ("SQ", "under the skin"),
    ("BT", "bedtime"),
    ("UD", "as directed"),
];

/// Everything of the kind in a text, in its order.
pub fn find(text: &str) -> Vec<Found> {
    let piece = |it: char| it.is_alphanumeric() || matches!(it, '.' | ',' | '/');
    let pieces: Vec<_> = text.split(|it| !piece(it)).filter(|it| !it.is_empty()).collect();
    let mut found = Vec::new();
    let mut after_number = false;
    for (at, piece) in pieces.iter().enumerate() {
        let (number, word) = apart(piece);
        let next = pieces.get(at + 1).filter(|it| it.starts_with(char::is_alphabetic));
        let unit = if word.is_empty() { next.copied() } else { Some(word) };
        found.extend(misread_number(number, unit));
        found.extend(abbreviation(word, after_number || !number.is_empty()));
        after_number = !number.is_empty() && word.is_empty();
    }
    found
}

/// "10U" is a number and a word.
fn apart(piece: &str) -> (&str, &str) {
    let digits = |it: char| it.is_ascii_digit() || matches!(it, '.' | ',');
    let end = piece.find(|it| !digits(it)).unwrap_or(piece.len());
    let (number, word) = piece.split_at(end);
    let number = number.trim_end_matches(['.', ',']);
    let word = word.trim_end_matches(['.', ',', '/']);
    if number.contains(|it: char| it.is_ascii_digit()) { (number, word) } else { ("", word) }
}

/// 5.0 has been read as 50, and .5 as 5. A zero at the end counts before a unit.
fn misread_number(number: &str, unit: Option<&str>) -> Option<Found> {
    let naked = number.starts_with('.');
    let zero = number.contains('.') && number.ends_with('0') && unit.is_some();
    let read = Quantity::parse(number).ok().flatten().filter(|_| naked || zero)?;
    let with = |number: &str| match unit {
        Some(unit) => format!("{number} {}", unit.trim_end_matches('.')),
        None => number.to_owned(),
    };
    Some(Found { typed: with(number), means: with(&read.to_string()) })
}

fn abbreviation(word: &str, after_number: bool) -> Option<Found> {
    let plain = word.replace('.', "");
    let any = ANY.iter().find(|(it, _)| plain.to_lowercase() == *it);
    let known = any.or_else(|| CAPITALS.iter().find(|(it, _)| plain == *it));
    let units = ("U", "units");
    let known = known.or((after_number && plain.eq_ignore_ascii_case("u")).then_some(&units));
    known.map(|(_, means)| Found { typed: word.to_owned(), means: (*means).to_owned() })
}

impl Medicine {
    /// What is told below the label's words.
    pub fn abbreviations(&self) -> Vec<String> {
        let typed = [&self.strength, &self.dose, &self.times, &self.label_limit];
        let found = typed.into_iter().flatten().flat_map(|it| find(it.as_str()));
        found.map(|it| it.says()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(text: &str) -> String {
        let found = find(text).into_iter().map(|it| format!("{} -> {}", it.typed, it.means));
        found.collect::<Vec<_>>().join("; ")
    }

    /// ISMP List of Error-Prone Abbreviations; Joint Commission "Do Not Use" list.
    #[test]
    fn each_is_told_with_what_it_usually_means() {
        for (text, says) in [
            ("1 tablet QD", "QD -> daily"),
            ("1 tablet q.d.", "q.d -> daily"),
            ("QOD", "QOD -> every other day"),
            ("10 U", "U -> units"),
            ("10U at bedtime", "U -> units"),
            ("400 IU", "IU -> units"),
            ("5.0 mg", "5.0 mg -> 5 mg"),
            ("5.0mg", "5.0 mg -> 5 mg"),
            (".5 mg", ".5 mg -> 0.5 mg"),
            ("75 µg", "µg -> mcg"),
            ("75μg", "μg -> mcg"),
            ("5 cc", "cc -> mL"),
            ("1 tablet HS", "HS -> half-strength or at bedtime: ask"),
            ("1 drop OS", "OS -> left eye"),
            ("1.50 mg TIW", "1.50 mg -> 1.5 mg; TIW -> 3 times a week"),
        ] {
            assert_eq!(told(text), says, "{text}");
        }
    }

    #[test]
    fn a_plain_text_and_a_value_alone_are_not_told() {
        for text in [
            "7.0",
            "1 tablet in the morning, as needed",
            "0.5 mg",
            "10 mg, 2 units, 5 mL",
            "25/100 mg",
            "after supper. 1 tablet",
            "u",
            "Vitamin U",
            "1,000 mg",
            "",
        ] {
            assert_eq!(told(text), "", "{text}");
        }
    }

    #[test]
    fn it_is_told_as_a_proposal_to_ask() {
        let says = find("QD")[0].says();
        assert_eq!(
            says,
            "typed \"QD\": usually means daily; write it out after asking whoever wrote it"
        );
    }
}
