//! Numbers as labels and lists write them: one spelling for each, or none where it cannot be read
//! for sure.
//!
//! A point in front stays a point: ".5" is 0.5 and never 5. A comma separates thousands only before
//! three digits; "1,5" could mean two things and has no spelling. ISMP's list of error-prone
//! notations and the Joint Commission's "Do Not Use" list ask for the zero in front of a point and
//! for none at the end.

/// Fractions of one letter.
pub const FRACTIONS: [char; 7] = ['½', '¼', '¾', '⅓', '⅔', '⅛', '⅕'];

/// "1,000.0" is "1000", ".50" is "0.5"; none for what is no number, or could be two.
pub fn spelled(text: &str) -> Option<String> {
    let (whole, rest) = text.split_once('.').unwrap_or((text, "0"));
    let digits = |it: &str| !it.is_empty() && it.bytes().all(|it| it.is_ascii_digit());
    let whole = if whole.contains(',') { joined(whole)? } else { whole.to_owned() };
    if !(digits(&whole) || whole.is_empty() && text.starts_with('.')) || !digits(rest) {
        return None;
    }
    let (whole, rest) = (whole.trim_start_matches('0'), rest.trim_end_matches('0'));
    let whole = if whole.is_empty() { "0" } else { whole };
    Some(if rest.is_empty() { whole.to_owned() } else { format!("{whole}.{rest}") })
}

/// "4,000" without its commas, where they part thousands.
fn joined(whole: &str) -> Option<String> {
    let mut groups = whole.split(',');
    let first = groups.next().unwrap_or_default();
    let sound = (1..=3).contains(&first.len()) && !first.starts_with('0');
    (sound && groups.all(|it| it.len() == 3)).then(|| whole.replace(',', ""))
}

/// Every number of a text in its one spelling, in order; one that has none, as it is written.
pub fn all(text: &str) -> Vec<String> {
    let letters: Vec<char> = text.chars().collect();
    let mut found = Vec::new();
    let mut at = 0;
    while at < letters.len() {
        let end = end(&letters, at);
        if end > at {
            let written: String = letters[at..end].iter().collect();
            found.push(spelled(&written).unwrap_or(written));
        }
        at = end.max(at + 1);
    }
    found
}

/// Where the number ends that begins here.
fn end(letters: &[char], at: usize) -> usize {
    let digit = |at: usize| letters.get(at).is_some_and(char::is_ascii_digit);
    if FRACTIONS.contains(&letters[at]) {
        return at + 1;
    }
    let mut end = at;
    while digit(end) || matches!(letters.get(end), Some('.' | ',')) && digit(end + 1) {
        // A comma begins no number.
        if end == at && letters[end] == ',' {
            return at;
        }
        end += 1;
    }
    end
}

/// ".5 mg" as "0.5 mg": every number that begins with its point gets the zero. All else stays.
pub fn with_zeros(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let mut shown = String::new();
    for (at, letter) in letters.iter().enumerate() {
        let number = letters.get(at + 1).is_some_and(char::is_ascii_digit);
        let apart =
            at == 0 || !(letters[at - 1].is_alphanumeric() || ".,".contains(letters[at - 1]));
        if *letter == '.' && number && apart {
            shown.push('0');
        }
        shown.push(*letter);
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn one_spelling_for_each_number() {
        for (written, is) in [
            ("5", "5"),
            ("5.0", "5"),
            (".5", "0.5"),
            ("0.50", "0.5"),
            (".05", "0.05"),
            ("0.0625", "0.0625"),
            ("007", "7"),
            ("1,000", "1000"),
            ("1,000,000.50", "1000000.5"),
            ("0", "0"),
        ] {
            assert_eq!(spelled(written).as_deref(), Some(is), "{written}");
        }
        for unclear in [
            "", ".", "5.", "1,5", "0,500", "10,00", "1.2.3", "1..2", ",5", "½", "x", "-1", "1e3",
            "5 ",
        ] {
            assert_eq!(spelled(unclear), None, "{unclear}");
        }
    }

    #[test]
    fn the_numbers_of_a_text() {
        let text = "Take .5 mL (2.50 mg), 1½ at 8:30, q4-6h, 1,000 units. Ends 3.";
        assert_eq!(all(text).join(" "), "0.5 2.5 1 ½ 8 30 4 6 1000 3");
        assert_eq!(all("Digoxin.125, B12 ,5 ...").join(" "), "0.125 12 5");
    }

    #[test]
    fn a_point_in_front_gets_its_zero_and_nothing_else_changes() {
        for (written, shown) in [
            (".5 mg", "0.5 mg"),
            ("25/.5 mg and (.25)", "25/0.5 mg and (0.25)"),
            ("5.0 mg. Daily", "5.0 mg. Daily"),
            ("p.o. 0.5", "p.o. 0.5"),
            ("...5", "...5"),
            ("p.5", "p.5"),
        ] {
            assert_eq!(with_zeros(written), shown, "{written}");
        }
    }

    proptest! {
        #[test]
        fn a_zero_in_front_changes_no_value(text in "[a-z0-9., /½-]{0,20}") {
            prop_assert_eq!(all(&with_zeros(&text)), all(&text));
        }
    }
}
