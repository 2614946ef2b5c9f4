//! Whether the numbers of a line can be read for sure. A list that was photographed and read by a
//! program loses points, parts numbers and takes letters for digits; a tenth then becomes one. So a
//! number that could be another one is told, and its line is not understood until a person has
//! looked at the paper. Common practice, no source; a point in front, a zero at the end and a name
//! that runs into its number are on ISMP's list of error-prone notations.

use super::words::{is_counted, is_form, is_unit, sure_unit};
use crate::base::number::{self, FRACTIONS};

/// Why a number of this line cannot be read for sure; none where every one can.
pub fn unsure(line: &str) -> Option<String> {
    let words = words(line);
    (0..words.len()).find_map(|at| wrong(&words, at))
}

/// One word of the line, without the marks around it.
struct Word<'a> {
    whole: &'a str,
    text: &'a str,
    /// A mark parts it from the next: a comma, a bracket, a column.
    ends: bool,
    /// A mark parts it from the one before.
    begins: bool,
}

const AROUND: [char; 16] =
    [',', ';', ':', '(', ')', '[', ']', '"', '“', '”', '\'', '’', '*', '!', '?', '='];

fn words(line: &str) -> Vec<Word<'_>> {
    let mut words = Vec::new();
    for cell in line.split(['\t', '|']) {
        let last = words.len();
        for whole in cell.split_whitespace() {
            let text = whole.trim_matches(AROUND);
            let begins = !whole.starts_with(text) || words.len() == last && last > 0;
            // A dash in front of a number parts it from the name: "Warfarin -5 mg".
            let bare = text.trim_start_matches(['-', '–', '—', '•']);
            let text = if bare.starts_with(begins_number) { bare } else { text };
            words.push(Word { whole, text, ends: !whole.ends_with(text), begins });
        }
        if let Some(it) = words.last_mut() {
            it.ends = true;
        }
    }
    words
}

fn wrong(words: &[Word], at: usize) -> Option<String> {
    let word = &words[at];
    let next = words.get(at + 1);
    let looked =
        |says: &str| Some(format!("{says}. Look at the paper, and type it as it is there"));
    if let Some(odd) = odd(word.text) {
        return looked(&format!("\"{}\" {odd}", word.text));
    }
    let joined = || next.filter(|it| !word.ends && !it.begins || are_thousands(word, it));
    if let Some(next) = joined().filter(|_| is_parted(words, at)) {
        return looked(&format!("\"{} {}\" may be one number or two", word.text, next.text));
    }
    // "5. mg": what stood behind the point is lost. A line's own "2." in front is none.
    let open = word.text.ends_with('.') && word.text.chars().any(is_numeric);
    let expected = |next: &str| sure_unit(next) || at > 0 && follows_number(next);
    if let Some(next) = joined().filter(|it| open && expected(it.text)) {
        return looked(&format!("\"{} {}\" has nothing behind its point", word.text, next.text));
    }
    let before = at.checked_sub(1).map(|at| words[at].text);
    if sure_unit(word.text) && !before.is_none_or(stands_before_unit) {
        let before = before.unwrap_or_default();
        return looked(&format!("\"{before} {}\" has no number that can be read", word.text));
    }
    None
}

/// "1, 000" and "1 ,000" may be a thousand.
fn are_thousands(one: &Word, next: &Word) -> bool {
    let before = one.whole.strip_suffix(',').is_some_and(|it| it.ends_with(is_numeric));
    let three = next.text.chars().take_while(char::is_ascii_digit).count() == 3;
    let after =
        !one.ends && next.whole.strip_prefix(',').is_some_and(|it| it.starts_with(is_numeric));
    before && three || after
}

/// What is odd about a word by itself.
fn odd(word: &str) -> Option<&'static str> {
    let numeric = word.chars().any(is_numeric);
    let strange = |it: char| !it.is_ascii() && !is_plain(it) || "<>~+^_".contains(it);
    if numeric && word.chars().any(strange) {
        return Some("has a mark in it that may be a point or a digit");
    }
    if !numeric {
        return None;
    }
    let word = word.trim_end_matches('.');
    match word.starts_with(begins_number) {
        true if is_clock_or_day(word) => None,
        true if word.split(['/', '-', '–', '—', '&', '×']).all(is_sound) => None,
        true => Some("cannot be read for sure"),
        false if runs_together(word) => Some("runs a name and a number together"),
        false => None,
    }
}

/// "5", "0.5mg", "3x", "mL", "1½": a number that can be read, with a known word behind it, or a word alone.
fn is_sound(part: &str) -> bool {
    let part = part.trim_end_matches(['%', '.']);
    if part.is_empty() {
        return false;
    }
    let end = part
        .find(|it: char| !(it.is_ascii_digit() || it == '.' || it == ','))
        .unwrap_or(part.len());
    let (number, behind) = part.split_at(end);
    let behind = behind.trim_start_matches(FRACTIONS);
    let number = if number.is_empty() && behind.len() < part.len() { "1" } else { number };
    match (number.is_empty(), behind.is_empty()) {
        (true, _) => behind.chars().all(char::is_alphabetic),
        (false, true) => number::spelled(number).is_some(),
        (false, false) => number::spelled(number).is_some() && is_behind(behind),
    }
}

/// What stands right behind a number: a unit, a form, "x", "nd", "hr".
fn is_behind(text: &str) -> bool {
    const KNOWN: [&str; 19] = [
        "x", "h", "hr", "hrs", "hour", "hours", "d", "wk", "wks", "mo", "st", "nd", "rd", "th",
        "am", "pm", "a", "p", "fr",
    ];
    let lower = text.to_lowercase();
    is_unit(&lower) || is_form(&lower) || is_counted(&lower) || KNOWN.contains(&lower.as_str())
        // "2x100mg"
        || lower.strip_prefix('x').is_some_and(|it| it.starts_with(begins_number) && is_sound(it))
}

/// "8:30", "8:30am", "24.11.2026": read elsewhere, and no amount.
fn is_clock_or_day(word: &str) -> bool {
    let digits = |it: &str, most: usize| {
        (1..=most).contains(&it.len()) && it.bytes().all(|it| it.is_ascii_digit())
    };
    let clock = word.split_once(':').is_some_and(|(hour, rest)| {
        let minute = rest.trim_end_matches(|it: char| it.is_ascii_alphabetic() || it == '.');
        digits(hour, 2) && minute.len() == 2 && digits(minute, 2)
    });
    let parts: Vec<&str> = word.split('.').collect();
    let day = matches!(parts[..], [one, two, year] if digits(one, 2) && digits(two, 2) && year.len() == 4 && digits(year, 4));
    clock || day
}

/// "Inderal40", "Digoxin.125mg", "l0mg", "O.5": a number that begins with letters. "B12", "Q10"
/// and "q8h" are names and ways to take.
fn runs_together(word: &str) -> bool {
    let Some(at) = word.find(|it: char| it.is_ascii_digit()) else { return false };
    let (letters, number) = word.split_at(at);
    let name = letters.trim_end_matches('-');
    let pointed =
        letters.strip_suffix(['.', ',']).is_some_and(|it| it.ends_with(char::is_alphabetic));
    let behind = number.trim_start_matches(|it: char| it.is_ascii_digit() || ".,/-".contains(it));
    let plain = name.chars().all(char::is_alphabetic);
    let long =
        letters == name && plain && name.chars().count() > 3 && !name.eq_ignore_ascii_case("omega");
    let digit_like =
        name.chars().all(|it| "OoIlSB".contains(it)) && (sure_unit(behind) || number.contains('.'));
    pointed || long || plain && !name.is_empty() && (sure_unit(behind) || digit_like)
}

/// Whether this number and the next may be one that was parted.
fn is_parted(words: &[Word], at: usize) -> bool {
    let (one, next) = (words[at].text, words[at + 1].text);
    let alone =
        one.starts_with(begins_number) && one.chars().all(|it| is_numeric(it) || ".,".contains(it));
    let points = one.chars().all(|it| it == '.');
    if !(alone || points) || !next.starts_with(begins_number) {
        return false;
    }
    let pure = next.trim_start_matches(|it: char| is_numeric(it) || ".,".contains(it));
    // "5-HTP" begins with a number and is a name; 2/3 behind a whole number is the rest of it.
    let name = pure.starts_with('-') && pure[1..].starts_with(char::is_alphabetic);
    let fraction = matches!(next.split_once('/'), Some((over, under)) if over.len() == 1 && under.len() == 1 && over < under)
        || next.starts_with(FRACTIONS);
    let whole = one.bytes().all(|it| it.is_ascii_digit());
    let clock = is_clock_or_day(next) || matches!(pure, "am" | "pm" | "x");
    // "2. Warfarin": the line's own number, where no amount follows.
    let numbering = at == 0 && one.ends_with('.') && !follows_amount(words, at + 1);
    !(name
        || whole && fraction
        || clock
        || numbering
        || is_named(words, at)
        || is_of_a_date(words, at))
}

/// "Vitamin B 12 1,000 mcg", "Omega 3 1000 mg": the number belongs to the name.
fn is_named(words: &[Word], at: usize) -> bool {
    let Some(before) = at.checked_sub(1).map(|it| words[it].text) else { return false };
    let letter = before.chars().count() == 1 && before.starts_with(char::is_uppercase);
    let known = letter || before.eq_ignore_ascii_case("omega");
    let next = words[at + 1].text;
    let two = next.chars().take_while(char::is_ascii_digit).count() > 1 || next.contains(',');
    known && two && !next.starts_with('0')
}

/// "Nov 24 2026"
fn is_of_a_date(words: &[Word], at: usize) -> bool {
    let year = words[at + 1].text;
    let year = year.len() == 4 && (year.starts_with("19") || year.starts_with("20"));
    let month = at.checked_sub(1).is_some_and(|it| super::words::is_month(words[it].text));
    year && month
}

fn follows_amount(words: &[Word], at: usize) -> bool {
    let glued = words[at].text.trim_start_matches(|it: char| is_numeric(it) || ".,/-".contains(it));
    let next = words.get(at + 1).is_some_and(|it| follows_number(it.text));
    sure_unit(glued) || glued.is_empty() && next
}

/// Whether a number is what one expects in front of this word.
fn follows_number(word: &str) -> bool {
    let first = word.split(['/', '-']).next().unwrap_or_default();
    is_unit(first) || is_form(first) || is_counted(first) || word.starts_with(begins_number)
}

/// "5", "one", "per", "of": what may stand in front of a unit.
fn stands_before_unit(word: &str) -> bool {
    const KNOWN: [&str; 27] = [
        "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "half", "a",
        "an", "each", "every", "per", "in", "of", "the", "and", "or", "to", "/", "+", "-",
        "million", "x",
    ];
    let lower = word.to_lowercase();
    let mut parts = word.rsplit(['/', '-', '–', '×']);
    let last = parts.next().unwrap_or_default();
    let number = is_sound(last) && last.starts_with(begins_number) && !last.ends_with('.');
    // "mg/100" in front of "mg" is the second of two; "Inderal-40" is not.
    let number =
        number && parts.all(|it| is_sound(it) && (it.starts_with(begins_number) || is_unit(it)));
    let zero = number::spelled(word).is_some_and(|it| it == "0");
    KNOWN.contains(&lower.as_str()) || number && !zero
}

fn is_numeric(letter: char) -> bool {
    letter.is_numeric()
}

fn begins_number(letter: char) -> bool {
    letter.is_ascii_digit() || letter == '.' || FRACTIONS.contains(&letter)
}

/// Letters of any alphabet, and the marks of print that mean nothing in a number.
fn is_plain(letter: char) -> bool {
    letter.is_alphabetic() || FRACTIONS.contains(&letter) || "–—×®™°“”’µμ".contains(letter)
}

#[cfg(test)]
mod tests;
