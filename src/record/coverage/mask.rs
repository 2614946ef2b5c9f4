//! A number as it stands on a page that anyone may look over a shoulder at: its last four.

/// "•••• 4567"; all of it, where there are no more than four.
pub fn masked(number: &str) -> String {
    let letters: Vec<char> = number.chars().filter(|it| !it.is_whitespace()).collect();
    match letters.len() {
        0..=4 => "••••".to_owned(),
        many => format!("•••• {}", letters[many - 4..].iter().collect::<String>()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_four_stand_and_no_more() {
        assert_eq!(masked("0AA0-AA0-AA00"), "•••• AA00");
        assert_eq!(masked("004336"), "•••• 4336");
        for short in ["", "7", "MEDD"] {
            assert_eq!(masked(short), "••••", "a short number is not given away: {short}");
        }
        assert_eq!(masked("12 34"), "••••", "a blank does not make it longer");
    }
}
