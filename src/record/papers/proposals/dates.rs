//! The days that stand in a text, and which of them is the paper's own.
//!
//! Numbers with slashes are read as they are written and never guessed at: 3/4/2026 is the fourth of
//! March on a paper of the United States and the third of April on one of elsewhere, so it is two days
//! and a person says which. Which of several is the paper's own is told by what stands before it.

use crate::base::day;
use time::{Date, Month};

/// What a date in a text can mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meant {
    Day(Date),
    /// Month first, or day first.
    Either(Date, Date),
}

impl Meant {
    fn has(self, wanted: impl Fn(Date) -> bool) -> bool {
        match self {
            Meant::Day(it) => wanted(it),
            Meant::Either(a, b) => wanted(a) || wanted(b),
        }
    }
}

/// What stands before a date.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// "Date:", "Statement date"
    Own,
    /// Nothing else on its line.
    Alone,
    Plain,
    /// A birth, a visit, a day by which something is due, the end of something.
    Other,
}

/// A date as it stands in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    pub written: String,
    pub meant: Meant,
    pub role: Role,
    /// The words before it on its line.
    before: String,
}

/// Which one is the paper's own, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dated {
    pub meant: Meant,
    pub written: String,
    pub why: String,
    /// How many other days stand there.
    pub others: usize,
}

/// Words before the date of the paper itself.
const OWN: [&str; 14] = [
    "date",
    "dated",
    "statement date",
    "date of letter",
    "letter date",
    "invoice date",
    "date issued",
    "issue date",
    "date of issue",
    "issued",
    "issued on",
    "printed",
    "report date",
    "bill date",
];
/// Words that stand before a date of something else.
const OTHER: [&str; 28] = [
    "birth",
    "born",
    "dob",
    "d o b",
    "due",
    "by",
    "until",
    "through",
    "expires",
    "expiration",
    "expiry",
    "exp",
    "before",
    "appointment",
    "visit",
    "admitted",
    "admission",
    "discharged",
    "discharge date",
    "service",
    "reported",
    "collected",
    "received",
    "effective",
    "since",
    "purchase",
    "purchased",
    "renewal",
];

/// Every date in a text, in its order.
pub fn all(text: &str) -> Vec<Found> {
    text.lines().flat_map(line).collect()
}

/// The paper's own, of those that are not to come (that is a plan on it) and are not the person's birth.
pub fn own(text: &str, born: Option<Date>, today: Date) -> Option<Dated> {
    let all = all(text);
    let can = |it: &&Found| it.meant.has(|on| on <= today) && !it.meant.has(|on| Some(on) == born);
    let of = |role: Role| all.iter().filter(can).find(|it| it.role == role);
    let (it, why) = if let Some(it) = of(Role::Own) {
        (it, format!("it stands behind “{}”", it.before))
    } else if let Some(it) = of(Role::Alone) {
        (it, "it stands alone on its line".to_owned())
    } else {
        (of(Role::Plain)?, "it is the first date in the text that is nothing else’s".to_owned())
    };
    let meant = match it.meant {
        // What is to come cannot be meant.
        Meant::Either(a, b) if b > today => Meant::Day(a),
        Meant::Either(a, b) if a > today => Meant::Day(b),
        meant => meant,
    };
    let why = match (it.meant, meant) {
        (Meant::Either(..), Meant::Day(_)) => {
            format!("{why}, and read the other way it is still to come")
        }
        _ => why,
    };
    let others = all.iter().filter(|other| other.meant != it.meant).count();
    Some(Dated { meant, written: it.written.clone(), why, others })
}

/// A piece of a line: letters, or digits, with where it begins and ends.
struct Piece<'a> {
    text: &'a str,
    from: usize,
    to: usize,
}

fn pieces(line: &str) -> Vec<Piece<'_>> {
    let mut found: Vec<Piece> = Vec::new();
    let mut kind = None;
    for (at, one) in line.char_indices() {
        let now = match one {
            _ if one.is_ascii_digit() => Some('0'),
            _ if one.is_alphabetic() => Some('a'),
            _ => None,
        };
        let to = at + one.len_utf8();
        match (now, found.last_mut()) {
            (Some(_), Some(last)) if now == kind && last.to == at => {
                last.to = to;
                last.text = &line[last.from..to];
            }
            (Some(_), _) => found.push(Piece { text: &line[at..to], from: at, to }),
            (None, _) => {}
        }
        kind = now;
    }
    found
}

fn line(line: &str) -> Vec<Found> {
    let all = pieces(line);
    let (mut found, mut at, mut after) = (Vec::new(), 0, 0);
    while at < all.len() {
        // "3rd" is two pieces: as many as five make a date.
        let read = (3..=5).rev().filter(|many| at + many <= all.len()).find_map(|many| {
            let (first, last) = (&all[at], &all[at + many - 1]);
            let written = &line[first.from..last.to];
            let apart = stands_apart(line, (first.from, last.to));
            apart.then(|| meant(written))?.map(|meant| (many, written.to_owned(), meant))
        });
        let Some((many, written, meant)) = read else {
            at += 1;
            continue;
        };
        let before = said(&line[after..all[at].from]);
        let ends = all[at + many - 1].to;
        let alone = line[..all[at].from].trim().is_empty() && line[ends..].trim().is_empty();
        found.push(Found { role: role(&before, alone), written, meant, before });
        after = ends;
        at += many;
    }
    found
}

/// Whether it is no part of a longer number.
fn stands_apart(line: &str, (from, to): (usize, usize)) -> bool {
    let before = line[..from].chars().next_back();
    let mut after = line[to..].chars();
    let goes_on = after.next().is_some_and(|it| "/-.".contains(it))
        && after.next().is_some_and(char::is_alphanumeric);
    before.is_none_or(|it| it.is_whitespace() || "(:,;“\"".contains(it)) && !goes_on
}

/// The words right before a date: what stands behind the last wide gap, full stop or semicolon.
fn said(before: &str) -> String {
    let last = before.rsplit(". ").next().unwrap_or_default();
    let last = last.trim_end().rsplit([';', '|']).next().unwrap_or_default();
    let last = last.trim_end().rsplit("  ").next().unwrap_or_default();
    let words: Vec<&str> = last.split_whitespace().collect();
    let kept = words[words.len().saturating_sub(4)..].join(" ");
    kept.trim_matches(|it: char| !it.is_alphanumeric()).to_owned()
}

fn role(before: &str, alone: bool) -> Role {
    let plain = super::tokens::parts(before).join(" ");
    let ends =
        |all: &[&str]| all.iter().any(|it| plain == *it || plain.ends_with(&format!(" {it}")));
    let has = |all: &[&str]| all.iter().any(|it| format!(" {plain} ").contains(&format!(" {it} ")));
    match () {
        _ if alone => Role::Alone,
        _ if OWN.contains(&plain.as_str()) => Role::Own,
        _ if has(&OTHER) => Role::Other,
        _ if ends(&OWN) => Role::Own,
        _ => Role::Plain,
    }
}

/// A date as it can be written on a paper: as people type one, or as three numbers.
fn meant(written: &str) -> Option<Meant> {
    let numbers: Vec<&str> = written.split(['/', '.', '-']).map(str::trim).collect();
    let digits = |it: &str| !it.is_empty() && it.bytes().all(|it| it.is_ascii_digit());
    if let [a, b, year] = numbers[..]
        && [a, b, year].into_iter().all(digits)
        && a.len() <= 2
    {
        return either(a, b, year);
    }
    // Neither a day and a month without a year nor a number in the middle of words is one.
    let plain = written.replace('.', " ");
    let named = plain.split([' ', ',', '-']).filter(|it| !it.is_empty()).count() >= 3;
    let with_dashes = plain.replace('-', " ");
    let read =
        day::parse(written).or_else(|| day::parse(&plain)).or_else(|| day::parse(&with_dashes));
    named.then_some(read?).map(Meant::Day)
}

/// Two numbers and a year: month and day, day and month, or either.
fn either(a: &str, b: &str, year: &str) -> Option<Meant> {
    let year: i32 = match year.len() {
        4 => year.parse().ok()?,
        // Of two digits the century is this one: a paper is seldom older (common practice, no source).
        2 => 2000 + year.parse::<i32>().ok()?,
        _ => return None,
    };
    let (a, b): (u8, u8) = (a.parse().ok()?, b.parse().ok()?);
    let on = |month: u8, day: u8| {
        let month = Month::try_from(month).ok()?;
        Date::from_calendar_date(year, month, day).ok().filter(|_| (1850..=2199).contains(&year))
    };
    match (on(a, b), on(b, a)) {
        (Some(one), Some(other)) if one != other => Some(Meant::Either(one, other)),
        (one, other) => one.or(other).map(Meant::Day),
    }
}

#[cfg(test)]
#[path = "dates_tests.rs"]
mod tests;
