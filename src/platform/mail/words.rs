//! Words that come from outside or go there, made fit for one line: a subject, and what a mail
//! server said.

/// How much of a server's answer is kept.
const MOST: usize = 200;
/// A subject may be longer than a screen, and is never longer than this.
const LONGEST: usize = 160;

/// On one line: line breaks, tabs and other controls become blanks, and blanks are folded. With a
/// line break in it a subject would begin another header.
fn one_line(text: &str, most: usize) -> String {
    let spaced: String = text.chars().map(|it| if it.is_control() { ' ' } else { it }).collect();
    let folded = spaced.split_whitespace().collect::<Vec<_>>().join(" ");
    match folded.char_indices().nth(most) {
        Some((at, _)) => format!("{}…", folded[..at].trim_end()),
        None => folded,
    }
}

pub fn subject(text: &str) -> String {
    one_line(text, LONGEST)
}

pub fn short(text: &str) -> String {
    one_line(text, MOST)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_subject_is_one_line_whatever_stands_in_it() {
        let typed = "Check-up\r\nBcc: x@example.org\u{b}\tat\u{2028}noon\0 ";
        assert_eq!(subject(typed), "Check-up Bcc: x@example.org at noon");
        let long = subject(&"é".repeat(400));
        assert_eq!((long.chars().count(), long.ends_with('…')), (161, true));
    }

    #[test]
    fn what_a_server_says_is_kept_short() {
        assert_eq!(short("550 5.1.1 No such\r\n mailbox here"), "550 5.1.1 No such mailbox here");
        assert!(short(&"no ".repeat(300)).chars().count() <= MOST + 1);
    }
}
