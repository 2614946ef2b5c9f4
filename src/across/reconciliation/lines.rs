//! Reads the lines of a pasted list of medicines: name, strength, form, the rest.
//!
//! It reads what stands there and completes nothing: an unknown unit stays as it is, words that
//! fit nowhere stay with how it is taken. The line's own words are kept beside whatever was
//! understood, and each can be put right by hand. A line counts as stopped only where it says so
//! plainly ("STOP", "stopped", "discontinued"); "stop after 7 days" does not.
//!
//! A number keeps its value or the line is not understood: every number of the line must be found
//! again in what was understood, and one that may be another (`numbers`) is left to a person.

mod numbers;
mod words;

#[cfg(test)]
mod tests;

use crate::base::{
    number::{self, FRACTIONS},
    text::Line,
};
pub use numbers::unsure;
use words::{is_form, is_how_taken, is_quality, is_unit, says_stopped};

/// At most so many lines of one list.
pub const MOST: usize = 200;

/// How one line was understood.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Understood {
    pub name: String,
    pub strength: Option<String>,
    pub form: Option<String>,
    /// How it is taken, in the line's own words.
    pub directions: Option<String>,
    pub stopped: bool,
    /// Why it is not understood: then no part of it but the name is.
    pub unclear: Option<String>,
}

/// What cannot be kept, and in which line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    pub line: usize,
    pub says: String,
}

/// The lines of a text, each as it stands there and as it was understood; empty ones fall away.
pub fn read(text: &str) -> Result<Vec<(Line, Understood)>, Unreadable> {
    let mut lines = Vec::new();
    for (at, raw) in text.lines().enumerate() {
        let refused = |says: String| Unreadable { line: at + 1, says };
        let Some(words) = Line::parse(raw).map_err(|e| refused(e.to_string()))? else { continue };
        if lines.len() == MOST {
            return Err(refused(format!("There are more than {MOST} lines.")));
        }
        lines.push((words, understood(raw)));
    }
    Ok(lines)
}

/// How one line is understood.
pub fn understood(raw: &str) -> Understood {
    let (rest, stopped) = without_stop(without_mark(raw.trim()));
    let read = Understood { stopped, ..taken_apart(&rest, raw) };
    let unclear = numbers::unsure(raw).or_else(|| lost(&rest, &read));
    match unclear {
        None => read,
        Some(why) => {
            let (name, unclear) = (name_alone(&rest, &read.name), Some(why));
            Understood { name, stopped, unclear, ..Understood::default() }
        }
    }
}

/// Whether every number of a part is one of the whole.
pub fn has_numbers(whole: &str, part: &str) -> bool {
    let mut whole = number::all(whole);
    number::all(part).into_iter().all(|it| {
        let at = whole.iter().position(|has| *has == it);
        at.map(|at| whole.swap_remove(at)).is_some()
    })
}

/// What to say where a number of the line is not among what was understood.
fn lost(rest: &str, read: &Understood) -> Option<String> {
    let sorted = |text: &str| {
        let mut all = number::all(text);
        all.sort();
        all
    };
    let parts =
        [Some(&read.name), read.strength.as_ref(), read.form.as_ref(), read.directions.as_ref()];
    let parts: Vec<_> = parts.into_iter().flatten().map(String::as_str).collect();
    let says =
        "Its numbers could not all be placed. Look at the paper, and type them as they are there";
    (sorted(rest) != sorted(&parts.join(" "))).then(|| says.to_owned())
}

/// The words before the first number: all that is said of a line that is not understood.
fn name_alone(rest: &str, name: &str) -> String {
    let numbered = |it: &&str| it.contains(char::is_numeric) || it.chars().all(|it| it == '.');
    let words: Vec<_> = rest.split_whitespace().take_while(|it| !numbered(it)).collect();
    let words = words.join(" ").trim_matches(EDGES).to_owned();
    if words.is_empty() { name.to_owned() } else { words }
}

fn taken_apart(rest: &str, raw: &str) -> Understood {
    let words = split(rest);
    let end = name_end(&words);
    let name = &words[..end];
    let (strength, after) = strength(&words, end);
    let mut form: Vec<&str> = Vec::new();
    let mut named = name.len();
    // "Metoprolol succinate ER 50 mg tablet": the form stands on both sides of the strength.
    while named > 1 && (is_quality(&words[named - 1].text) || is_form(&words[named - 1].text)) {
        named -= 1;
    }
    form.extend(words[named..end].iter().map(|it| it.text.as_str()));
    let mut at = after;
    while at < words.len() && (is_quality(&words[at].text) || is_form(&words[at].text)) {
        form.push(&words[at].text);
        at += 1;
    }
    let strength = strength.or_else(|| late_strength(&words, &mut at));
    let joined = |words: &[Word]| {
        let all: Vec<&str> = words.iter().map(|it| it.whole.as_str()).collect();
        bare(&all.join(" ")).to_owned()
    };
    let full = |text: String| (!text.is_empty()).then(|| number::with_zeros(&text));
    let name = number::with_zeros(&joined(&words[..named]));
    // A line that says nothing that could be a name stays whole.
    let name =
        if name.is_empty() { raw.split_whitespace().collect::<Vec<_>>().join(" ") } else { name };
    let directions = full(joined(&words[at.min(words.len())..]));
    let (strength, form) = (strength.and_then(full), full(form.join(" ")));
    Understood { name, strength, form, directions, ..Understood::default() }
}

/// "Furosemide tablet 40 mg": the strength after the form.
fn late_strength(words: &[Word], at: &mut usize) -> Option<String> {
    let (found, after) = strength(words, *at);
    *at = after;
    found
}

const EDGES: [char; 8] = [',', ';', ':', '-', '–', '—', '.', '|'];

/// "(40" and "mg)": without the brackets around an amount. Those around a name stay.
fn unbracketed(text: &str) -> &str {
    let inner = text.trim_start_matches(['(', '[']);
    let amount = inner.starts_with(|it: char| it.is_ascii_digit() || it == '.');
    let text = if amount { inner } else { text };
    if text.contains(['(', '[']) { text } else { text.trim_end_matches([')', ']']) }
}

/// Without the marks around it. The point of ".5" is none of them.
fn bare(text: &str) -> &str {
    let text = text.trim_end_matches(|it: char| EDGES.contains(&it) || it == ' ');
    let start = text.trim_start_matches(|it: char| EDGES.contains(&it) || it == ' ');
    let marks = &text[..text.len() - start.len()];
    match start.starts_with(|it: char| it.is_ascii_digit()) && marks.ends_with('.') {
        true => &text[marks.len() - 1..],
        false => start,
    }
}

/// One word: as it stands, and without the marks around it.
struct Word {
    whole: String,
    text: String,
    /// A tab or a mark stands before it.
    apart: bool,
}

fn split(line: &str) -> Vec<Word> {
    let mut words: Vec<Word> = Vec::new();
    for (column, cell) in line.split(['\t', '|']).enumerate() {
        for (at, whole) in cell.split_whitespace().enumerate() {
            let marked = words.last().is_some_and(|it| it.whole.ends_with([',', ';', ':']));
            let text = bare(unbracketed(whole)).to_owned();
            let apart = marked || text.is_empty() || (column > 0 && at == 0);
            if !text.is_empty() || !words.is_empty() {
                words.push(Word { whole: whole.to_owned(), text, apart });
            }
        }
    }
    words
}

/// Takes bullets and numbering off the front: "- ", "• ", "3. ", "[ ] ".
fn without_mark(line: &str) -> &str {
    let mut line = line;
    loop {
        let digits = line.trim_start_matches(|it: char| it.is_ascii_digit());
        let numbered = digits.len() < line.len()
            && digits.starts_with(['.', ')'])
            && digits[1..].starts_with(char::is_whitespace);
        let bullet = line
            .strip_prefix(['-', '*', '•', '–', '—', '·', '▪', '◦', '‣', '●', '☐', '☑', '□', '>']);
        let boxed = ["[ ]", "[x]", "[X]", "()", "( )"].iter().find_map(|it| line.strip_prefix(it));
        let rest = match (numbered, bullet.or(boxed)) {
            (true, _) => &digits[1..],
            (_, Some(rest)) => rest,
            _ => return line,
        };
        line = rest.trim_start();
    }
}

/// Takes away what says that it was stopped, where it stands plainly: as the first word, as the
/// last, or alone between marks.
fn without_stop(line: &str) -> (String, bool) {
    let mut kept: Vec<&str> = Vec::new();
    let mut stopped = false;
    for part in line.split_inclusive(['(', ')', ';', ',', ':', '\t', '|', '—', '–']) {
        match says_stopped(part) {
            true => stopped = true,
            false => kept.push(part),
        }
    }
    let line = kept.concat();
    let words: Vec<&str> = line.split(' ').collect();
    let plain = |it: &str| it.trim_matches(EDGES).to_lowercase();
    let is_stop =
        |it: &str| ["stop", "stopped", "discontinue", "discontinued"].contains(&plain(it).as_str());
    let first = words.first().is_some_and(|it| is_stop(it)) && words.len() > 1;
    let last = words.len() > 1 && words.last().is_some_and(|it| is_stop(it)) && {
        let before = plain(words[words.len() - 2]);
        !["not", "don't", "don’t", "never", "until"].contains(&before.as_str())
    };
    let mut words = words.as_slice();
    // "STOP after 7 days" without a name is no line of a medicine, and stays as it is.
    if first && !["after", "on", "if", "when"].contains(&plain(words[1]).as_str()) {
        words = &words[1..];
        if words.first().is_some_and(|it| plain(it) == "taking") {
            words = &words[1..];
        }
        stopped = true;
    }
    if last {
        words = &words[..words.len() - 1];
        stopped = true;
    }
    let rest = words.join(" ");
    (rest.replace("()", " ").trim_matches(['(', ' ', ',', ';', '-']).to_owned(), stopped)
}

/// Where the name ends: at a strength, at how it is taken, at the next column.
fn name_end(words: &[Word]) -> usize {
    for at in 1..words.len() {
        let begins = amount(words, at).is_some() || is_how_taken(&words[at].text);
        // "Vitamin B 12 1,000 mcg": a number before the strength belongs to the name.
        let bare = is_number(&words[at].text) && amount(words, at + 1).is_none();
        if begins || bare || words[at].apart || words[at].text.is_empty() {
            return at;
        }
    }
    words.len()
}

/// The strength that begins at this word, in its own words, and where it ends.
fn strength(words: &[Word], from: usize) -> (Option<String>, usize) {
    let from = if words.get(from).is_some_and(|it| it.text.is_empty()) { from + 1 } else { from };
    let Some(mut end) = amount(words, from) else { return (None, from.min(words.len())) };
    // A combination: "25 mg / 100 mg", "160 mg and 5 mg".
    loop {
        let joins = words.get(end).is_some_and(|it| ["/", "+", "and"].contains(&it.whole.as_str()));
        match (joins, amount(words, end + 1)) {
            (true, Some(next)) => end = next,
            _ => break,
        }
    }
    let all: Vec<&str> = words[from..end].iter().map(|it| it.text.as_str()).collect();
    (Some(all.join(" ")), end)
}

/// Where an amount with a unit ends that begins at this word: "40 mg", "40mg", "25/100 mg", "160 mg/5 mL".
fn amount(words: &[Word], at: usize) -> Option<usize> {
    let text = &words.get(at)?.text;
    let numeric = text.starts_with(|it: char| it.is_ascii_digit() || it == '.');
    if !numeric {
        return None;
    }
    if !is_number(text) {
        let unit = text.trim_start_matches(|it: char| !it.is_alphabetic() && it != '%');
        let whole = text.chars().filter(|it| it.is_ascii_digit()).count() > 0;
        // "3x" or "1st" are how it is taken.
        return (whole && is_unit(first_unit(unit))).then_some(at + 1);
    }
    let next = words.get(at + 1).filter(|it| !it.apart)?;
    let unit = first_unit(&next.text);
    let strange = !unit.is_empty()
        && unit.chars().all(char::is_alphabetic)
        && !is_how_taken(unit)
        && !is_form(unit)
        && at > 0
        && !is_number(&next.text);
    if !is_unit(unit) && !strange {
        return None;
    }
    // "160 mg/5 mL": the second unit stands apart.
    let over = next.text.rsplit('/').next().is_some_and(is_number) && next.text.contains('/');
    let under = over && words.get(at + 2).is_some_and(|it| is_unit(&it.text));
    Some(if under { at + 3 } else { at + 2 })
}

/// "mg" of "mg/5".
fn first_unit(text: &str) -> &str {
    text.split(['/', '-']).next().unwrap_or_default()
}

/// "40", "1,000", "0.5", "25/100", "25-100".
fn is_number(text: &str) -> bool {
    text.starts_with(|it: char| it.is_ascii_digit() || it == '.' || FRACTIONS.contains(&it))
        && text.chars().all(|it| {
            it.is_ascii_digit()
                || ['.', ',', '/', '-', '–'].contains(&it)
                || FRACTIONS.contains(&it)
        })
}
