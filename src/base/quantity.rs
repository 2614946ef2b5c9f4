//! Amounts of tablets, drops, milliliters: exact decimals, to a thousandth. Never a float.
//!
//! Reads what people and labels write: "2", "1.5", "1 1/2", "½", "4,000". A comma is taken for a
//! separator of thousands only where it stands before three digits; "1,5" could mean two things
//! and is not guessed at. Shown without a trailing zero and never with a naked point, as the lists
//! of error-prone notations ask: 5, not 5.0; 0.5, not .5 (ISMP; Joint Commission).

use std::{
    fmt,
    ops::{Add, Sub},
};

/// In thousandths; never below zero.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, sqlx::Type)]
#[sqlx(transparent)]
pub struct Quantity(i64);

/// More than any bottle holds: what is above was mistyped.
const MOST: i64 = 1_000_000;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuantityError {
    /// Not a number as people write it.
    Unclear,
    /// A comma that may be a decimal point or a separator of thousands.
    Comma,
    /// Not kept exactly by thousandths, like a third.
    Inexact,
    TooLarge,
}

impl fmt::Display for QuantityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            QuantityError::Unclear => "Write a number, like 2, 1.5 or 1 1/2.",
            QuantityError::Comma => "Write the number with a point, like 1.5.",
            QuantityError::Inexact => {
                "This cannot be kept exactly. Write it in thousandths at most, like 0.333."
            }
            QuantityError::TooLarge => "This is more than a million.",
        })
    }
}

impl Quantity {
    pub const ONE: Quantity = Quantity(1000);

    pub const fn whole(count: i64) -> Quantity {
        Quantity(count * 1000)
    }

    pub const fn thousandths(count: i64) -> Quantity {
        Quantity(count)
    }

    pub const fn in_thousandths(self) -> i64 {
        self.0
    }

    pub const fn is_zero(self) -> bool {
        self.0 == 0
    }

    pub fn times(self, count: i64) -> Quantity {
        Quantity(self.0.saturating_mul(count))
    }

    /// How many whole times `each` goes into it; none into zero parts.
    pub fn portions(self, each: Quantity) -> Option<i64> {
        (!each.is_zero()).then(|| self.0 / each.0)
    }

    /// `None` for an empty text.
    pub fn parse(typed: &str) -> Result<Option<Quantity>, QuantityError> {
        let typed = typed.trim();
        if typed.is_empty() {
            return Ok(None);
        }
        let typed = spelled(typed);
        let mut sum = 0_i64;
        for (at, part) in typed.split_whitespace().enumerate() {
            let value = match part.split_once('/') {
                Some((over, under)) => fraction(over, under)?,
                // A whole number may stand before a fraction, and nothing else may follow.
                None if at == 0 => decimal(part)?,
                None => return Err(QuantityError::Unclear),
            };
            let follows = at == 1 && (sum % 1000 != 0 || value >= 1000);
            if at > 1 || follows {
                return Err(QuantityError::Unclear);
            }
            sum += value;
        }
        if sum > MOST * 1000 { Err(QuantityError::TooLarge) } else { Ok(Some(Quantity(sum))) }
    }
}

/// The one-letter fractions as they are spelled out.
fn spelled(typed: &str) -> String {
    let mut text = String::new();
    for letter in typed.chars() {
        match letter {
            '½' => text.push_str(" 1/2"),
            '¼' => text.push_str(" 1/4"),
            '¾' => text.push_str(" 3/4"),
            '⅛' => text.push_str(" 1/8"),
            '⁄' => text.push('/'),
            other => text.push(other),
        }
    }
    text
}

fn fraction(over: &str, under: &str) -> Result<i64, QuantityError> {
    let number = |text: &str| text.parse::<i64>().ok().filter(|it| (1..=1000).contains(it));
    let (over, under) = number(over).zip(number(under)).ok_or(QuantityError::Unclear)?;
    if over * 1000 % under != 0 {
        return Err(QuantityError::Inexact);
    }
    Ok(over * 1000 / under)
}

fn decimal(text: &str) -> Result<i64, QuantityError> {
    let text = if text.contains(',') { without_commas(text)? } else { text.to_owned() };
    let (whole, rest) = text.split_once('.').unwrap_or((&text, ""));
    let digits = |it: &str| it.bytes().all(|it| it.is_ascii_digit());
    if !digits(whole) || !digits(rest) || (whole.is_empty() && rest.is_empty()) {
        return Err(QuantityError::Unclear);
    }
    let rest = rest.trim_end_matches('0');
    if rest.len() > 3 {
        return Err(QuantityError::Inexact);
    }
    if whole.trim_start_matches('0').len() > 7 {
        return Err(QuantityError::TooLarge);
    }
    let thousandths = format!("{rest:0<3}").parse::<i64>().unwrap_or(0);
    Ok(whole.parse::<i64>().unwrap_or(0) * 1000 + thousandths)
}

/// "4,000" is four thousand; "1,5" is not said.
fn without_commas(text: &str) -> Result<String, QuantityError> {
    let (whole, _) = text.split_once('.').unwrap_or((text, ""));
    let mut groups = whole.split(',');
    let first = groups.next().unwrap_or_default();
    let sound = (1..=3).contains(&first.len()) && !first.starts_with('0');
    match sound && groups.all(|it| it.len() == 3) {
        true => Ok(text.replace(',', "")),
        false => Err(QuantityError::Comma),
    }
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, rest) = (self.0 / 1000, self.0 % 1000);
        let mut digits = whole.to_string();
        for at in
            (1..digits.len()).rev().filter(|at| (digits.len() - at) % 3 == 0).collect::<Vec<_>>()
        {
            digits.insert(at, ',');
        }
        match rest {
            0 => f.write_str(&digits),
            rest => write!(f, "{digits}.{}", format!("{rest:03}").trim_end_matches('0')),
        }
    }
}

impl serde::Serialize for Quantity {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_i64(self.0)
    }
}

impl Add for Quantity {
    type Output = Quantity;
    fn add(self, other: Quantity) -> Quantity {
        Quantity(self.0 + other.0)
    }
}

/// What is left; nothing where more is taken than there is.
impl Sub for Quantity {
    type Output = Quantity;
    fn sub(self, other: Quantity) -> Quantity {
        Quantity((self.0 - other.0).max(0))
    }
}

impl std::iter::Sum for Quantity {
    fn sum<I: Iterator<Item = Quantity>>(all: I) -> Quantity {
        all.fold(Quantity::default(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(typed: &str) -> Result<String, QuantityError> {
        Quantity::parse(typed).map(|it| it.map_or_else(|| "-".into(), |it| it.to_string()))
    }

    #[test]
    fn numbers_as_people_and_labels_write_them() {
        for (typed, kept) in [
            ("", "-"),
            ("2", "2"),
            ("1.5", "1.5"),
            ("1 1/2", "1.5"),
            ("½", "0.5"),
            ("1½", "1.5"),
            ("0", "0"),
            ("4,000", "4,000"),
            ("12,345.25", "12,345.25"),
            ("1/4", "0.25"),
            ("007", "7"),
            ("1,000,000", "1,000,000"),
        ] {
            assert_eq!(read(typed).as_deref(), Ok(kept), "{typed}");
        }
    }

    /// ISMP's list of error-prone notations; Joint Commission "Do Not Use" list.
    #[test]
    fn no_trailing_zero_and_no_naked_point() {
        assert_eq!(read("5.0").as_deref(), Ok("5"));
        assert_eq!(read(".5").as_deref(), Ok("0.5"));
        assert_eq!(read("0.250").as_deref(), Ok("0.25"));
    }

    #[test]
    fn what_is_unclear_is_not_guessed() {
        use QuantityError::{Comma, Inexact, TooLarge, Unclear};
        for (typed, wrong) in [
            ("1,5", Comma),
            ("10,00", Comma),
            ("0,500", Comma),
            ("1/3", Inexact),
            ("0.1234", Inexact),
            ("two", Unclear),
            ("-1", Unclear),
            ("1 2", Unclear),
            ("1/2 1", Unclear),
            ("1.5 1/2", Unclear),
            ("1 3/2", Unclear),
            (".", Unclear),
            ("1e3", Unclear),
            ("99999999", TooLarge),
            ("1000001", TooLarge),
            ("1/0", Unclear),
        ] {
            assert_eq!(read(typed), Err(wrong), "{typed}");
        }
    }

    proptest! {
        #[test]
        fn what_is_shown_reads_back(thousandths in 0..=MOST * 1000) {
            let it = Quantity::thousandths(thousandths);
            prop_assert_eq!(Quantity::parse(&it.to_string()), Ok(Some(it)));
        }

        #[test]
        fn nothing_typed_breaks_it(typed in ".{0,24}") {
            let _ = Quantity::parse(&typed);
        }
    }
}
