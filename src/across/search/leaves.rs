//! How the fields of an item become the text of a leaf.

use crate::base::text::Phone;

/// The fields that were filled, one after the other.
pub fn joined(parts: impl IntoIterator<Item = Option<String>>) -> String {
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

pub fn opt(field: &Option<impl AsRef<str>>) -> Option<String> {
    field.as_ref().map(|it| it.as_ref().to_owned())
}

/// The words of an item that is called by its first ones: none where its title says them all.
pub fn beyond(title: &str, words: Option<&str>) -> Option<String> {
    words.filter(|it| *it != title).map(str::to_owned)
}

/// What a number is found by, beside its groups as they were typed: all its digits, those without the
/// country (ten in North America), and those without the area (seven).
pub fn called<'a>(phones: impl IntoIterator<Item = Option<&'a Phone>>) -> String {
    let digits = phones.into_iter().flatten().map(|it| {
        let dial = it.dial();
        let number = dial.split(';').next().unwrap_or_default();
        number.chars().filter(char::is_ascii_digit).collect::<String>()
    });
    let ends = digits.flat_map(|all| {
        let end = |most: usize| all.len().checked_sub(most).map(|from| all[from..].to_owned());
        let mut ways = vec![all.clone()];
        ways.extend([end(10), end(7)].into_iter().flatten());
        ways.dedup();
        ways
    });
    ends.collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_found_by_all_its_digits_and_by_the_last_ones() {
        let phone = Phone::parse("+1 (218) 555-0101 ext. 12").expect("a number");
        assert_eq!(called([Some(&phone), None]), "12185550101 2185550101 5550101");
        let short = Phone::parse("988").expect("a number");
        assert_eq!(called([Some(&short)]), "988");
    }

    #[test]
    fn what_is_empty_leaves_no_gap() {
        assert_eq!(joined([Some("a".into()), None, Some("b".into())]), "a · b");
        assert_eq!(joined([None::<String>]), "");
    }
}
