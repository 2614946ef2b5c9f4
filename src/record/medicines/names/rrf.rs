//! One line of RXNCONSO.RRF: 18 columns with a bar after each (US National Library of Medicine,
//! RxNorm Technical Documentation, section 12.4; the column order and the term types IN, PIN, MIN,
//! BN and SBD are as given there, the section's number from memory).
//!
//! Kept are English names of RxNorm's own that are not suppressed: of ingredients and brands, and
//! from the names of branded products which ingredients a brand has.

use std::fmt;

/// What a line holds for us.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Entry {
    Ingredient(String),
    Brand(String),
    /// A branded product: its brand, and what is in it.
    Product {
        brand: String,
        ingredients: Vec<String>,
    },
    /// Of another language, another list, another type, or suppressed.
    Skipped,
}

/// Why a line is none of this file's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// Not 18 columns.
    Columns(usize),
    /// The first column holds no number.
    Number,
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unread::Columns(count) => {
                write!(f, "RXNCONSO.RRF has 18 columns with a bar after each; here are {count}")
            }
            Unread::Number => f.write_str("the first column of RXNCONSO.RRF is a number"),
        }
    }
}

const COLUMNS: usize = 18;
const LAT: usize = 1;
const SAB: usize = 11;
const TTY: usize = 12;
const STR: usize = 14;
const SUPPRESS: usize = 16;

pub fn entry(line: &str) -> Result<Entry, Unread> {
    let columns: Vec<_> = line.strip_suffix('|').unwrap_or(line).split('|').collect();
    if columns.len() != COLUMNS {
        return Err(Unread::Columns(columns.len()));
    }
    if columns[0].is_empty() || !columns[0].bytes().all(|it| it.is_ascii_digit()) {
        return Err(Unread::Number);
    }
    let name = columns[STR].trim();
    let ours = (columns[LAT], columns[SAB], columns[SUPPRESS]) == ("ENG", "RXNORM", "N");
    Ok(match columns[TTY] {
        _ if !ours || name.is_empty() => Entry::Skipped,
        "IN" | "PIN" | "MIN" => Entry::Ingredient(name.to_owned()),
        "BN" => Entry::Brand(name.to_owned()),
        "SBD" => product(name).unwrap_or(Entry::Skipped),
        _ => Entry::Skipped,
    })
}

/// "acetaminophen 325 MG / codeine phosphate 30 MG Oral Tablet [Somename]"
fn product(name: &str) -> Option<Entry> {
    let (what, rest) = name.rsplit_once(" [")?;
    let brand = rest.strip_suffix(']')?.trim();
    let ingredients: Vec<_> = what.split(" / ").filter_map(ingredient).collect();
    let told = !brand.is_empty() && !ingredients.is_empty();
    told.then(|| Entry::Product { brand: brand.to_owned(), ingredients })
}

/// The words before the strength; a quantity may stand in front ("12 HR metformin ...").
fn ingredient(part: &str) -> Option<String> {
    let number = |it: &str| it.parse::<f64>().is_ok();
    let mut words = part.split_whitespace().peekable();
    if words.peek().is_some_and(|it| number(it)) {
        words.nth(1);
    }
    let name: Vec<_> = words.take_while(|it| !number(it)).collect();
    (!name.is_empty()).then(|| name.join(" "))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(lat: &str, sab: &str, tty: &str, name: &str, suppress: &str) -> String {
        format!("161|{lat}||||||1||161||{sab}|{tty}|161|{name}||{suppress}|4096|")
    }

    fn of(tty: &str, name: &str) -> Entry {
        entry(&line("ENG", "RXNORM", tty, name, "N")).expect("read")
    }

    #[test]
    fn names_of_ingredients_and_brands_are_kept() {
        for tty in ["IN", "PIN", "MIN"] {
            assert_eq!(of(tty, "Acetaminophen"), Entry::Ingredient("Acetaminophen".into()));
        }
        assert_eq!(of("BN", "Calmadol"), Entry::Brand("Calmadol".into()));
        assert_eq!(of("SCD", "acetaminophen 325 MG Oral Tablet"), Entry::Skipped);
        for (lat, sab, suppress) in
            [("SPA", "RXNORM", "N"), ("ENG", "MTHSPL", "N"), ("ENG", "RXNORM", "O")]
        {
            let skipped = entry(&line(lat, sab, "IN", "Acetaminophen", suppress));
            assert_eq!(skipped, Ok(Entry::Skipped), "{lat} {sab} {suppress}");
        }
    }

    #[test]
    fn a_branded_product_tells_what_its_brand_has_in_it() {
        for (name, brand, ingredients) in [
            ("acetaminophen 325 MG Oral Tablet [Calmadol]", "Calmadol", &["acetaminophen"][..]),
            (
                "acetaminophen 325 MG / codeine phosphate 30 MG Oral Tablet [Calmadol C]",
                "Calmadol C",
                &["acetaminophen", "codeine phosphate"],
            ),
            (
                "24 HR metformin hydrochloride 500 MG Extended Release Oral Tablet [Somex]",
                "Somex",
                &["metformin hydrochloride"],
            ),
        ] {
            let ingredients = ingredients.iter().map(|it| (*it).to_owned()).collect();
            assert_eq!(of("SBD", name), Entry::Product { brand: brand.into(), ingredients });
        }
        assert_eq!(of("SBD", "acetaminophen 325 MG Oral Tablet"), Entry::Skipped);
        assert_eq!(of("SBD", "325 MG [Calmadol]"), Entry::Skipped);
    }

    #[test]
    fn a_line_of_another_file_is_not_read() {
        assert_eq!(entry("name,strength"), Err(Unread::Columns(1)));
        assert_eq!(entry(""), Err(Unread::Columns(1)));
        let named = line("ENG", "RXNORM", "IN", "Acetaminophen", "N").replacen("161", "RXCUI", 1);
        assert_eq!(entry(&named), Err(Unread::Number));
    }
}
