//! Reading hours as people type them: "Mon-Fri 8:30-17:00; Sat 9-12", "weekdays 9 to 5",
//! "Fri 22-2", "any time".
//!
//! Where am and pm are left out, an office's day is meant: "9-5" ends in the afternoon, "1-5"
//! begins there, "22-2" ends after midnight, and a leading nought ("05:00") or an hour past 12 is
//! taken as the clock of 24 hours. The page shows the reading in full words, so a wrong guess is
//! seen at once.

use super::{DAY, Span, Week};

/// What a text is made of.
#[derive(Clone, Debug, PartialEq)]
enum Token {
    Days(Vec<u8>),
    Time(Typed),
    To,
    And,
    Always,
    Closed,
}

/// A time as typed.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Typed {
    hour: u16,
    minute: u16,
    half: Option<Half>,
    /// On the clock of 24 hours.
    exact: bool,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Half {
    Am,
    Pm,
}

/// Ways of saying one thing in several words, each made one word before the rest is read.
const SAYINGS: [(&str, &str); 15] = [
    ("24/7", " always "),
    ("24 hours a day", " always "),
    ("24 hours", " always "),
    ("24-hours", " always "),
    ("24-hour", " always "),
    ("24 hrs", " always "),
    ("any time", " always "),
    ("any hour", " always "),
    ("all day", " always "),
    ("day and night", " always "),
    ("around the clock", " always "),
    ("round the clock", " always "),
    ("every day", " daily "),
    ("7 days a week", " daily "),
    ("a.m", "am"),
];

pub fn week(typed: &str) -> Result<Week, String> {
    let tokens = tokens(&plain(typed))?;
    let (mut spans, mut days, mut timed) = (Vec::new(), Vec::new(), false);
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        at += 1;
        match token {
            Token::And => {}
            Token::Days(named) => {
                if std::mem::take(&mut timed) {
                    days.clear();
                }
                match (tokens.get(at), tokens.get(at + 1)) {
                    (Some(Token::To), Some(Token::Days(last))) if named.len() == 1 => {
                        days.extend(run(named[0], last[0]));
                        at += 2;
                    }
                    _ => days.extend(named),
                }
            }
            Token::Closed => timed = true,
            Token::Always => {
                spans.extend(on(&days, (0, DAY)));
                timed = true;
            }
            Token::Time(from) => match (tokens.get(at), tokens.get(at + 1)) {
                (Some(Token::To), Some(Token::Time(to))) => {
                    spans.extend(on(&days, between(*from, *to)?));
                    (at, timed) = (at + 2, true);
                }
                _ => return Err(unread("A time has no end")),
            },
            Token::To => return Err(unread("It is not clear from when until when")),
        }
    }
    if !days.is_empty() && !timed {
        return Err(unread("A day has no hours"));
    }
    if spans.is_empty() {
        return Err(unread("There are no hours in this"));
    }
    Ok(Week::of(spans))
}

fn unread(what: &str) -> String {
    format!("{what}. Write it like Mon-Fri 8:30-17:00; Sat 9-12, or: any time.")
}

fn not_read(piece: &str) -> String {
    unread(&format!("“{piece}” could not be read"))
}

fn on(days: &[u8], (from, to): (u16, u16)) -> Vec<Span> {
    let days = if days.is_empty() { (0..7).collect() } else { days.to_vec() };
    days.into_iter().map(|day| Span { day, from, to }).collect()
}

/// The days from one to another; "Fri to Mon" goes over the weekend.
fn run(first: u8, last: u8) -> Vec<u8> {
    (0..=(last + 7 - first) % 7).map(|it| (first + it) % 7).collect()
}

fn plain(typed: &str) -> String {
    let one = |it: char| match it {
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(it) - 0xfee0).unwrap_or(it),
        '\u{2010}'..='\u{2015}' | '\u{2212}' => '-',
        '\n' => ';',
        it if it.is_whitespace() => ' ',
        it => it,
    };
    let text: String = typed.chars().map(one).collect::<String>().to_lowercase();
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ").replace("p.m", "pm");
    SAYINGS.iter().fold(text, |text, (said, word)| text.replace(said, word))
}

fn tokens(text: &str) -> Result<Vec<Token>, String> {
    let mut found: Vec<Token> = Vec::new();
    let mut rest = text.trim_start();
    while let Some(first) = rest.chars().next() {
        let of = |kind: fn(char) -> bool| rest.find(|it| !kind(it)).unwrap_or(rest.len());
        let long = match first {
            it if it.is_ascii_digit() => of(|it| it.is_ascii_digit() || matches!(it, ':' | '.')),
            it if it.is_alphabetic() => of(char::is_alphabetic),
            it => it.len_utf8(),
        };
        let (piece, after) = rest.split_at(long);
        rest = after.trim_start();
        match first {
            '-' => found.push(Token::To),
            ';' | ',' | '&' | '+' | '/' => found.push(Token::And),
            '.' | ':' | '(' | ')' => {}
            it if it.is_ascii_digit() => found.push(Token::Time(clock(piece)?)),
            _ => word(piece, &mut found)?,
        }
    }
    Ok(found)
}

/// "9", "09", "8:30", "8.30", "0830".
fn clock(piece: &str) -> Result<Typed, String> {
    let digits = piece.trim_end_matches([':', '.']);
    let (hour, minute) = match digits.split_once([':', '.']) {
        Some((hour, minute)) if minute.len() == 2 && (1..=2).contains(&hour.len()) => {
            (hour, minute)
        }
        None if matches!(digits.len(), 1 | 2) => (digits, "0"),
        None if matches!(digits.len(), 3 | 4) => digits.split_at(digits.len() - 2),
        _ => return Err(not_read(piece)),
    };
    let number = |it: &str| it.parse::<u16>().map_err(|_| not_read(piece));
    let (hours, minutes) = (number(hour)?, number(minute)?);
    let fits = (hours < 24 && minutes < 60) || (hours, minutes) == (24, 0);
    let exact = hours > 12 || hour.starts_with('0');
    let time = Typed { hour: hours, minute: minutes, half: None, exact };
    if fits { Ok(time) } else { Err(not_read(piece)) }
}

fn word(piece: &str, found: &mut Vec<Token>) -> Result<(), String> {
    let time = |hour| Token::Time(Typed { hour, minute: 0, half: None, exact: true });
    let token = match piece {
        "am" | "a" | "pm" | "p" => {
            let half = if piece.starts_with('a') { Half::Am } else { Half::Pm };
            return match found.last_mut() {
                // "17:00 pm" says the same twice.
                Some(Token::Time(it)) if it.half.is_none() => {
                    it.half = (1..=12).contains(&it.hour).then_some(half);
                    Ok(())
                }
                _ => Err(not_read(piece)),
            };
        }
        "h" | "hr" | "hrs" | "hour" | "hours" | "from" | "at" | "on" | "open" | "between" => {
            return Ok(());
        }
        "to" | "until" | "till" | "til" | "through" | "thru" => Token::To,
        "and" => Token::And,
        "noon" | "midday" => time(12),
        "midnight" => time(0),
        "always" | "anytime" => Token::Always,
        "closed" => Token::Closed,
        "daily" | "everyday" => Token::Days((0..7).collect()),
        "weekday" | "weekdays" => Token::Days((0..5).collect()),
        "weekend" | "weekends" => Token::Days(vec![5, 6]),
        _ => Token::Days(vec![day(piece).ok_or_else(|| not_read(piece))?]),
    };
    found.push(token);
    Ok(())
}

/// A day by its name or the beginning of it; of single letters only those that begin one day.
fn day(word: &str) -> Option<u8> {
    let names =
        ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"].into_iter();
    let word = match word {
        "weds" => "wed",
        it => it.strip_suffix('s').filter(|it| it.ends_with("day")).unwrap_or(it),
    };
    let fits = word.len() > 1 || matches!(word, "m" | "w" | "f");
    let at = names.into_iter().position(|it| fits && it.starts_with(word))?;
    u8::try_from(at).ok()
}

/// The minutes of a span; an end that is not after the start is on the next day.
fn between(from: Typed, to: Typed) -> Result<(u16, u16), String> {
    let start = match from.sure() {
        Some(start) => start,
        None => start_of(from, to),
    };
    if start >= DAY {
        return Err(unread("A day begins at 0:00 or at midnight"));
    }
    let ends = to.readings().into_iter().flat_map(|it| [it, it + DAY]);
    // There is one: of a time and the same a day later, one is after the start.
    let end = ends.filter(|it| *it > start).min().unwrap_or(start + DAY);
    Ok((start, end.min(start + DAY)))
}

/// A start without am or pm: in the half that the end says, or in an office's day.
fn start_of(from: Typed, to: Typed) -> u16 {
    let [early, late] =
        [from.hour % 12 * 60 + from.minute, from.hour % 12 * 60 + from.minute + DAY / 2];
    match (to.half, to.sure()) {
        (Some(Half::Pm), Some(end)) if late < end => late,
        (Some(Half::Am), Some(end)) if early >= end => late,
        (Some(_), _) => early,
        (None, Some(_)) => from.hour * 60 + from.minute,
        (None, None) if from.hour < 6 || from.hour == 12 => late,
        (None, None) => early,
    }
}

impl Typed {
    /// The minute it says, where it can be read in one way only.
    fn sure(self) -> Option<u16> {
        let twelve = self.hour % 12 * 60 + self.minute;
        match self.half {
            Some(Half::Am) => Some(twelve),
            Some(Half::Pm) => Some(twelve + DAY / 2),
            None => self.exact.then_some(self.hour * 60 + self.minute),
        }
    }

    fn readings(self) -> Vec<u16> {
        let twelve = self.hour % 12 * 60 + self.minute;
        self.sure().map_or_else(|| vec![twelve, twelve + DAY / 2], |it| vec![it])
    }
}
