//! Lines of the texts that calendars and address books exchange: IETF RFC 5545 (2009), 3.1, and RFC 6350 (2011), 3.2, ask for
//! the same. No line is longer than 75 octets, no letter is cut, each ends in CRLF.

/// In octets, without the line break.
const LONGEST: usize = 75;

/// A line and its end; a long one goes on in lines that begin with a blank.
pub fn folded(line: &str) -> String {
    let (mut out, mut long) = (String::with_capacity(line.len() + 8), 0);
    for one in line.chars() {
        if long + one.len_utf8() > LONGEST {
            out.push_str("\r\n ");
            long = 1;
        }
        out.push(one);
        long += one.len_utf8();
    }
    out.push_str("\r\n");
    out
}

/// A text that is the whole value of a line of a card: RFC 6350, 3.4. A semicolon may be escaped where a value has no parts,
/// but not every reader takes the escape off there.
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for one in text.chars() {
        match one {
            '\\' | ',' => out.extend(['\\', one]),
            '\n' => out.push_str("\\n"),
            _ => out.push(one),
        }
    }
    out
}

/// A text that is one of several parts; and any text of a calendar: RFC 5545, 3.3.11.
pub fn part(text: &str) -> String {
    escaped(text).replace(';', "\\;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_too_long_and_no_letter_is_cut() {
        let line = format!("SUMMARY:{}", "é👩\u{200d}👧".repeat(40));
        let text = folded(&line);
        assert!(text.ends_with("\r\n"));
        assert!(text.trim_end().split("\r\n").all(|it| it.len() <= 75));
        assert_eq!(text.replace("\r\n ", "").trim_end(), line);
        assert_eq!(part("a,b;c\\d\ne"), "a\\,b\\;c\\\\d\\ne");
    }
}
