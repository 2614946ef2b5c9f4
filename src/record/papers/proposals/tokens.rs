//! The words of a text, for counting and for finding names.

/// Words that stand on papers of every kind, and say nothing of any.
const EVERYWHERE: &str = " the and for you your are was were that this with have has had not from but they she her his him its our out \
    any all can may will would should been being which who what when where there their them then than these those upon \
    into also only here about such other per via mrs ms mr dr ";

/// Each word of three letters or more, in lower case, as often as it stands there. Numbers are left out:
/// an amount or a day is another on each paper.
pub fn words(text: &str) -> impl Iterator<Item = String> + '_ {
    let parts = text.split(|it: char| !it.is_alphabetic() && it != '\'' && it != '’');
    let plain = parts.map(|it| it.trim_matches(['\'', '’']).to_lowercase());
    let plain = plain.map(|it| it.replace(['\'', '’'], ""));
    plain.filter(|it| {
        (3..=24).contains(&it.chars().count()) && !EVERYWHERE.contains(&format!(" {it} "))
    })
}

/// The parts of a name or a line, letters and digits only, in lower case.
pub fn parts(text: &str) -> Vec<String> {
    let all = text.split(|it: char| !it.is_alphanumeric() && it != '\'' && it != '’');
    let plain = all.map(|it| it.replace(['\'', '’'], "").to_lowercase());
    plain.filter(|it| !it.is_empty()).collect()
}

/// Whether these stand in a row among those. In a longer word one letter may be another, or missing: a
/// program that reads pictures takes an l for an i.
pub fn stand_in(wanted: &[String], among: &[String]) -> bool {
    !wanted.is_empty()
        && among.windows(wanted.len()).any(|row| wanted.iter().zip(row).all(|(a, b)| alike(a, b)))
}

/// The same, or, from five letters on, with one letter other, missing or too many.
pub fn alike(a: &str, b: &str) -> bool {
    if a == b {
        return true;
    }
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let (short, long) = if a.len() <= b.len() { (a, b) } else { (b, a) };
    if short.len() < 5 || long.len() - short.len() > 1 || long.iter().any(char::is_ascii_digit) {
        return false;
    }
    let same = short.iter().zip(&long).take_while(|(a, b)| a == b).count();
    let rest = if short.len() == long.len() { same + 1 } else { same };
    short[rest.min(short.len())..] == long[same + 1..]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_counted_and_numbers_are_not() {
        let read: Vec<String> =
            words("The AMOUNT due: $41.20 by 3/4/2026. Amount, patient’s").collect();
        assert_eq!(read, ["amount", "due", "amount", "patients"]);
    }

    #[test]
    fn a_name_is_found_with_one_letter_wrong_in_a_longer_word() {
        let text = parts("LAKESH0RE\nLakeshare Hospital, 12 Harbor St");
        assert!(stand_in(&parts("Lakeshore Hospital"), &text));
        assert!(!stand_in(&parts("Lakeshore Clinic"), &text));
        assert!(!stand_in(&[], &text));
        for (a, b) in [("varga", "varg"), ("hospital", "hospitai"), ("hospital", "hospitall")] {
            let found = alike(a, b);
            assert_eq!(found, a.len().min(b.len()) >= 5, "{a} {b}");
        }
        for (a, b) in [("bram", "gram"), ("harbor", "harvest"), ("5550101", "5550102"), ("ab", "")]
        {
            assert!(!alike(a, b), "{a} {b}");
        }
    }
}
