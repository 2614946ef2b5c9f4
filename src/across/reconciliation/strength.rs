//! Whether two strengths, forms or names say the same: exactly, and in no other way.
//!
//! 5.0 mg is 5 mg and 75 µg is 75 mcg, because each is another spelling of the same. 1 g is not
//! taken for 1,000 mg here, nor ER for XR: such rows are shown, and a person decides.

use crate::base::number;

/// The one spelling of a strength: numbers without trailing zeros, units in small letters, the
/// unit of a combination at each of its numbers ("25/100 mg" is "25 mg/100 mg").
pub fn strength(text: &str) -> String {
    let mut parts = pieces(&text.to_lowercase());
    let mut unit = String::new();
    for at in (0..parts.len()).rev() {
        let number = parts[at].starts_with(|it: char| it.is_ascii_digit());
        let slash = parts.get(at + 1).is_some_and(|it| it == "/");
        match (number, slash) {
            (true, true) if !unit.is_empty() => parts.insert(at + 1, unit.clone()),
            (false, _) if parts[at] != "/" => unit.clone_from(&parts[at]),
            _ => {}
        }
    }
    parts.join(" ")
}

/// Numbers, words and marks, each in its one spelling.
fn pieces(text: &str) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    let mut last = ' ';
    for letter in text.chars() {
        let kind = match letter {
            it if it.is_ascii_digit() || it == '.' || it == ',' => '1',
            it if it.is_whitespace() => ' ',
            '/' | '-' | '+' => letter,
            _ => 'a',
        };
        match (kind, kind == last && (kind == '1' || kind == 'a'), pieces.last_mut()) {
            (' ', ..) => {}
            (_, true, Some(piece)) => piece.push(letter),
            _ => pieces.push(letter.to_string()),
        }
        last = kind;
    }
    pieces.iter().map(|it| spelled(it)).collect()
}

fn spelled(piece: &str) -> String {
    match piece {
        "µg" | "μg" | "ug" => return "mcg".into(),
        "unit" => return "units".into(),
        "gm" => return "g".into(),
        _ => {}
    }
    number::spelled(piece).unwrap_or_else(|| piece.to_owned())
}

/// The one spelling of a form: small letters, one instead of many, no abbreviation of a plain word.
pub fn form(text: &str) -> String {
    let word = |it: &str| match it {
        "tablets" | "tab" | "tabs" => "tablet".to_owned(),
        "capsules" | "cap" | "caps" => "capsule".to_owned(),
        "er" => "extended-release".to_owned(),
        "dr" => "delayed-release".to_owned(),
        "patches" => "patch".to_owned(),
        other => other.to_owned(),
    };
    let all: Vec<_> = text.to_lowercase().split_whitespace().map(word).collect();
    all.join(" ").replace("extended release", "extended-release")
}

/// The one spelling of how something is taken: small letters, no marks, without "take" in front.
pub fn directions(text: &str) -> String {
    let lower = text.to_lowercase();
    let zeros = number::with_zeros(&lower);
    let trimmed = zeros.split_whitespace().map(|it| it.trim_matches([',', ';', '.', ':']));
    let word = |it: &str| match it {
        "tablets" | "tab" | "tabs" => "tablet".to_owned(),
        "capsules" | "cap" | "caps" => "capsule".to_owned(),
        "one" => "1".to_owned(),
        "two" => "2".to_owned(),
        other => number::spelled(other).unwrap_or_else(|| other.to_owned()),
    };
    let all: Vec<_> = trimmed.filter(|it| !it.is_empty()).map(word).collect();
    all.join(" ").trim_start_matches("take ").to_owned()
}

/// The one spelling of a name. A salt is part of it.
pub fn name(text: &str) -> String {
    let lower = text.to_lowercase();
    lower
        .split_whitespace()
        .map(|it| it.trim_end_matches([',', ';', '.']).trim_start_matches([',', ';']))
        .collect::<Vec<_>>()
        .join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_spellings_of_one_strength() {
        for (one, other) in [
            ("5.0 mg", "5 mg"),
            ("5mg", "5 mg"),
            ("75 µg", "75 mcg"),
            ("75 MCG", "75 ug"),
            ("1,000 units", "1000 unit"),
            (".5 mg", "0.5 mg"),
            ("0.06250 mg", ".0625 mg"),
            ("25/100 mg", "25 mg / 100 mg"),
            ("0.50 %", "0.5%"),
        ] {
            assert_eq!(strength(one), strength(other), "{one}, {other}");
        }
    }

    #[test]
    fn what_is_not_the_same_stays_apart() {
        for (one, other) in [
            ("5 mg", "50 mg"),
            ("5 mg", "5 mcg"),
            ("0.5 mg", "5 mg"),
            (".5 mg", "5 mg"),
            (".0625 mg", "0.625 mg"),
            ("1 0 mg", "10 mg"),
            ("0 .5 mg", "0.5 mg"),
            ("1 g", "1000 mg"),
            ("25/100 mg", "25-100 mg"),
            ("25/100 mg", "100/25 mg"),
            ("160 mg/5 mL", "160 mg"),
            ("300 frobs", "300 mg"),
            ("1,5 mg", "15 mg"),
        ] {
            assert_ne!(strength(one), strength(other), "{one}, {other}");
        }
        assert_ne!(form("XL tablet"), form("ER tablet"));
        assert_ne!(name("Metoprolol succinate"), name("Metoprolol tartrate"));
        assert_ne!(directions("1 tablet daily"), directions("2 tablets daily"));
        assert_ne!(directions(".5 mL daily"), directions("5 mL daily"));
        assert_eq!(directions(".5 mL daily"), directions("0.50 mL, daily"));
    }

    #[test]
    fn forms_and_directions_in_one_spelling() {
        assert_eq!(form("Tabs"), form("tablet"));
        assert_eq!(form("ER tablets"), form("extended-release tablet"));
        assert_eq!(directions("Take one tablet, in the morning."), "1 tablet in the morning");
    }
}
